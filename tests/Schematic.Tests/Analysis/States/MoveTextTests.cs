using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Analysis.States;
using Schematic.Diagnostics;
using Schematic.Tests.Analysis.Loads;
using Xunit;

namespace Schematic.Tests.Analysis.States;

/// <summary>How moves are told: a hand passes on through positions where an actuator stays, and does the rest one thing after the other.</summary>
public sealed class MoveTextTests
{
    private const string Panel = """
        actuator LEVER { a rest ; b ; c ; d springs-to c }
        actuator KNOB push-to-turn { off rest ; half ; full springs-to half }
        actuator KEY { off rest ; on }
        supply PS1 24 V switched
        switch S1 make on LEVER when c
        switch S2 make on KNOB when full
        switch S3 make on KEY when on
        relay K1 24 V 800 ohm on-delay 2 s suppressed { delayed-make ; changeover make-before-break }
        resistor R1 100..200 ohm varies
        lamp DS1 24 V 40 mA
        net A PS1:+ S1:1 S2:1 S3:1
        net B S1:2 K1:A1
        net C PS1:- K1:A2 DS1:X2
        net D S2:2 R1:1
        net E R1:2 DS1:X1
        """;

    private static readonly StateVariables Variables = LoadPanels.Context(Panel).Positions.Circuit.Variables;

    [Fact]
    public void An_actuator_moved_on_through_positions_where_it_stays_is_one_step() => Tells(
        "move LEVER to c", Of("LEVER", 0, 1), Of("LEVER", 1, 2));

    [Fact]
    public void It_may_end_where_it_has_to_be_held() => Tells(
        "hold LEVER at d", Of("LEVER", 1, 2), Of("LEVER", 2, 3, MoveKind.Hold));

    [Fact]
    public void To_let_it_go_is_a_step_of_its_own() => Tells(
        "hold LEVER at d, let LEVER go: it springs to c", Of("LEVER", 2, 3, MoveKind.Hold), Of("LEVER", 3, 2, MoveKind.LetGo));

    [Fact]
    public void There_and_back_is_two_steps() => Tells("move LEVER to b, move LEVER to a", Of("LEVER", 0, 1), Of("LEVER", 1, 0));

    [Fact]
    public void Another_actuator_between_parts_the_steps() => Tells(
        "move LEVER to b, move KEY to on, move LEVER to c", Of("LEVER", 0, 1), Of("KEY", 0, 1), Of("LEVER", 1, 2));

    [Fact]
    public void A_knob_that_is_pushed_to_be_turned_is_pushed_but_not_to_let_it_go() => Tells(
        "push KNOB and turn it to full, let KNOB go: it springs to half", Of("KNOB", 0, 1), Of("KNOB", 1, 2, MoveKind.Hold), Of("KNOB", 2, 1, MoveKind.LetGo));

    [Fact]
    public void Supplies_delays_and_what_varies_have_words_of_their_own() => Tells(
        "switch PS1 off, wait until K1 is delayed-operated, R1 comes to stand at 200 ohm",
        new Move(Variables.IndexOf(StateVariableKind.Supply, "PS1"), 1, 0, MoveKind.Switch), new Move(Variables.IndexOf(StateVariableKind.Delay, "K1"), 0, 1, MoveKind.Wait),
        new Move(Variables.IndexOf(StateVariableKind.Value, "R1"), 0, 1, MoveKind.Vary));

    [Fact]
    public void No_moves_are_rest() => Tells("everything at rest");

    [Fact]
    public void A_moment_names_what_moves_and_between_what()
    {
        Assert.Equal("while LEVER moves from b to c", MoveText.Passing(Variables, Of("LEVER", 1, 2)).ToString());
        Assert.Equal("while K1 changes from released to operated", MoveText.Passing(Variables, new Move(Variables.IndexOf(StateVariableKind.Coil, "K1"), 0, 1, MoveKind.Move)).ToString());
    }

    [Fact]
    public void A_moment_is_about_the_actuator_or_the_relay_that_moves()
    {
        Assert.Equal(About.Actuator("LEVER"), Assert.Single(((FactStep)MoveText.Passing(Variables, Of("LEVER", 1, 2))).Subjects));
        Assert.Equal(
            About.Part("K1"), Assert.Single(((FactStep)MoveText.Passing(Variables, new Move(Variables.IndexOf(StateVariableKind.Coil, "K1"), 0, 1, MoveKind.Move))).Subjects));
    }

    // A state names what is not at rest, and all that varies; the contacts of a relay are not named beside its coil.
    [Fact]
    public void A_state_names_what_is_not_at_rest_and_how_all_that_varies_stands()
    {
        var values = Variables.RestValues.ToBuilder();
        values[Variables.IndexOf(StateVariableKind.Actuator, "LEVER")] = 2;
        values[Variables.IndexOf(StateVariableKind.Coil, "K1")] = 1;
        values[Variables.IndexOf(StateVariableKind.Changeover, "K1")] = 1;
        values[Variables.IndexOf(StateVariableKind.Supply, "PS1")] = 0;
        var words = MoveText.Describe(Variables, new PanelState(values.ToImmutable())).ToString();
        Assert.Equal(["K1 operated", "LEVER c", "PS1 off", "R1 at 100 ohm"], words.Split(", ").Order(StringComparer.Ordinal));
    }

    [Fact]
    public void States_are_equal_by_their_values()
    {
        PanelState one = new([0, 1, 2]), same = new([0, 1, 2]), other = new([0, 2, 1]);
        Assert.Equal(one, same);
        Assert.Equal(one.GetHashCode(), same.GetHashCode());
        Assert.NotEqual(one, other);
        Assert.NotEqual(one.GetHashCode(), other.GetHashCode());
        Assert.False(one.Equals(null));
    }

    private static void Tells(string expected, params ImmutableArray<Move> moves) =>
        Assert.Equal(expected, string.Join(", ", MoveText.Steps(Variables, moves).Select(s => s.ToString())));

    private static Move Of(string actuator, int from, int to, MoveKind kind = MoveKind.Move) =>
        new(Variables.IndexOf(StateVariableKind.Actuator, actuator), from, to, kind);
}
