using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;
using Schematic.Tests.Analysis.Loads;
using Xunit;

namespace Schematic.Tests.Analysis.Circuits;

/// <summary>What leads nowhere carries nothing, however long the way; what is measured at its end leads somewhere.</summary>
public sealed class DeadEndTests
{
    private const string Chain = """
        actuator KEY { off rest ; on }
        supply PS1 24 V
        switch S1 make on KEY when on
        switch S2 make on KEY when on
        switch S3 make on KEY when on
        switch S4 make on KEY when on
        resistor R1 100 ohm
        lamp DS1 24 V 40 mA
        board A1 { inputs IN1 max 30 V ; ground GND }
        net A PS1:+ S1:1 S4:1
        net B S1:2 S2:1 S3:1
        net C S2:2 R1:1
        net D S4:2 DS1:X1
        net E PS1:- DS1:X2 A1:GND

        """;

    [Fact]
    public void A_chain_of_contacts_and_resistors_to_nowhere_is_dead_to_its_beginning() =>
        Assert.Equal(["S4", "DS1"], Live(Chain));

    [Fact]
    public void An_input_at_the_end_of_a_chain_keeps_it_alive() => Assert.Equal(["S1", "S2", "S4", "R1", "DS1"], Live(Chain + "net F R1:2 A1:IN1\n"));

    [Fact]
    public void Two_ways_that_meet_are_no_dead_end() => Assert.Equal(["S1", "S2", "S3", "S4", "R1", "DS1"], Live(Chain + "net F R1:2 S3:2\n"));

    [Fact]
    public void A_way_that_ends_in_a_loop_of_its_own_lives_as_far_as_anybody_can_tell() =>
        Assert.Equal(["S1", "S2", "S3", "S4", "DS1"], Live(Chain.Replace("S2:2 R1:1", "S2:2 S3:2", StringComparison.Ordinal)));

    // The first terminal of the panel is the first node: a dead end like any other.
    [Fact]
    public void A_way_may_end_at_the_first_node() => Assert.Equal(["DS1"], Live("""
        resistor R1 100 ohm
        resistor R2 100 ohm
        supply PS1 24 V
        lamp DS1 24 V 40 mA
        net A R1:2 R2:1
        net B R2:2 PS1:+ DS1:X1
        net C PS1:- DS1:X2
        """));

    /// <summary>The contacts and elements that can carry current, but the supply.</summary>
    private static string[] Live(string text)
    {
        var circuit = new ConditionalCircuit(new Circuit(LoadPanels.Context(text)));
        return
        [
            .. circuit.Circuit.Contacts.Where(circuit.IsLive).Select(c => c.Part.Designator),
            .. circuit.Circuit.Elements.Where(e => e.Kind != ElementKind.Supply && circuit.IsLive(e)).Select(e => e.Name),
        ];
    }
}
