using System.Globalization;
using Schematic.Analysis.Circuits;
using Schematic.Tests.Analysis.Loads;
using Xunit;

namespace Schematic.Tests.Analysis.Circuits;

/// <summary>What may be joined inside units that nobody has traced: which terminals, with which others, in how many ways.</summary>
public sealed class NotTracedTests
{
    // Four terminals can be in two groups of joined ones at most, five too, six in three.
    [Theory]
    [InlineData(2, 1)]
    [InlineData(4, 2)]
    [InlineData(5, 2)]
    [InlineData(6, 3)]
    [InlineData(7, 3)]
    public void Up_to_seven_terminals_every_way_to_join_them_is_told_apart(int count, int groups)
    {
        var open = Open(count);
        Assert.Equal(count, open.Length);
        Assert.All(open, t => Assert.Equal(groups, t.Joints.Length));
        Assert.All(open, t => Assert.False(t.HasOtherWays));
        Assert.Equal(groups, open.SelectMany(t => t.Joints).Select(j => j.ThrowNode).Distinct().Count());
    }

    [Fact]
    public void Of_eight_terminals_two_groups_are_told_apart_and_all_other_ways_are_one()
    {
        var open = Open(8);
        Assert.All(open, t => Assert.Equal(2, t.Joints.Length));
        Assert.All(open, t => Assert.True(t.HasOtherWays));
    }

    [Fact]
    public void One_terminal_alone_is_joined_to_nothing() => Assert.Empty(Open(1));

    [Fact]
    public void Terminals_on_which_nothing_hangs_and_those_that_a_wire_joins_count_once() => Assert.Equal(
        ["J1:1", "J1:3"],
        Names("""
            connector J1 { pins ; strip 6 pitch 5 mm ; not-traced 1..6 }
            supply PS1 24 V
            lamp DS1 24 V 40 mA
            net A PS1:+ J1:1 J1:2
            net B J1:3 DS1:X1
            net C DS1:X2 PS1:-
            """));

    [Fact]
    public void Each_connector_is_a_unit_of_its_own_and_hidden_nodes_are_not_shared()
    {
        var open = Circuit("""
            connector J1 { pins ; strip 2 pitch 5 mm ; not-traced 1 2 }
            connector J2 { pins ; strip 2 pitch 5 mm ; not-traced 1 2 }
            supply PS1 24 V
            lamp DS1 24 V 40 mA
            lamp DS2 24 V 40 mA
            net A PS1:+ J1:1 J2:1
            net B J1:2 DS1:X1
            net C J2:2 DS2:X1
            net D DS1:X2 DS2:X2 PS1:-
            """).Untraced;
        Assert.Equal(["J1", "J1", "J2", "J2"], open.Select(t => t.Unit));
        Assert.Equal(2, open.SelectMany(t => t.Joints).Select(j => j.ThrowNode).Distinct().Count());
        Assert.Equal([1, 1, 1, 1], open.SelectMany(t => t.Joints).Select(j => j.HiddenGroup));
    }

    // A switch whose contact is not known may sit in any unit: all are then looked at as one.
    [Fact]
    public void A_terminal_that_may_sit_in_any_unit_makes_all_units_one()
    {
        var open = Circuit("""
            actuator KEY { off rest ; on }
            connector J1 { pins ; strip 2 pitch 5 mm ; not-traced 1 2 }
            supply PS1 24 V
            lamp DS1 24 V 40 mA
            switch S1 make on KEY when on { J1:1 ? }
            net A PS1:+ J1:1
            net B J1:2 DS1:X1
            net C DS1:X2 PS1:-
            """).Untraced;
        Assert.All(open, t => Assert.Equal("the unit", t.Unit));
        Assert.Contains(open, t => t.Terminal.Part == "S1");
    }

    // 1 and 2 are measured, 3 is open to 1: it may be joined to 2 and to 4, and 4 to all.
    [Fact]
    public void Terminals_of_a_device_may_be_joined_only_where_nothing_is_stated_of_them()
    {
        var open = Circuit("""
            device U1 "box" { terminals 1 2 3 4 ; ohms 1 2 120 ohm ; open 1 3 }
            supply PS1 24 V
            lamp DS1 24 V 40 mA
            lamp DS2 24 V 40 mA
            lamp DS3 24 V 40 mA
            net A PS1:+ U1:1
            net B U1:2 DS1:X1
            net C U1:3 DS2:X1
            net D U1:4 DS3:X1
            net E PS1:- DS1:X2 DS2:X2 DS3:X2
            """).Untraced;
        Assert.Equal(["U1:1 inside never with ", "U1:2 inside never with U1:1 inside", "U1:3 inside never with U1:1 inside", "U1:4 inside never with "], open.Select(t => $"{t.Name} never with {string.Join(' ', t.NeverWith)}"));
    }

    [Fact]
    public void A_device_of_which_all_is_stated_hides_nothing() => Assert.Empty(Names("""
        device U1 "box" { terminals 1 2 3 ; ohms 1 2 120 ohm ; open rest }
        supply PS1 24 V
        lamp DS1 24 V 40 mA
        net A PS1:+ U1:1
        net B U1:2 DS1:X1 U1:3
        net C PS1:- DS1:X2
        """));

    [Fact]
    public void A_wire_that_nobody_has_followed_leads_anywhere()
    {
        var open = Assert.Single(Circuit("""
            supply PS1 24 V
            lamp DS1 24 V 40 mA
            net A PS1:+ DS1:X1
            net B PS1:- DS1:X2
            wire W1 22 AWG 1 m DS1:X1 -> ?
            """).Untraced);
        Assert.True(open.LeadsAnywhere);
        Assert.True(open.HasOtherWays);
        Assert.Empty(open.Joints);
    }

    private static UntracedTerminal[] Open(int count)
    {
        var lamps = Enumerable.Range(1, count).ToList();
        return [.. Circuit(string.Create(CultureInfo.InvariantCulture, $$"""
            connector J1 { pins ; strip 10 pitch 5 mm ; not-traced 1..{{count}} ; spare {{count + 1}}..10 }
            supply PS1 24 V
            lamp DS1..DS{{count}} 24 V 40 mA
            {{string.Join('\n', lamps.Select(i => $"net N{i}x J1:{i} DS{i}:X1"))}}
            net M PS1:- {{string.Join(' ', lamps.Select(i => $"DS{i}:X2"))}}
            """)).Untraced];
    }

    private static IEnumerable<string> Names(string text) => Circuit(text).Untraced.Select(t => t.Name);

    private static Circuit Circuit(string text) => new(LoadPanels.Context(text));
}
