using Schematic.Analysis.Positions;
using Schematic.Model;
using Schematic.Text;
using Xunit;
using static Schematic.Tests.Analysis.PanelBuilder;

namespace Schematic.Tests.Analysis.Positions;

/// <summary>Circuits whose truth tables every electrician knows (common practice, no source).</summary>
public class TruthTableTests
{
    private static readonly string[] Off = ["off", "on"];

    [Fact]
    public void Two_way_switching_lights_the_lamp_when_both_switches_stand_alike()
    {
        var proof = new PanelBuilder().Supply("PS1").Actuator("TOP", Off).Actuator("BOTTOM", Off).Lamp("DS1")
            .Pole("S1", "TOP", "off", "on").Pole("S2", "BOTTOM", "off", "on")
            .Wire("PS1:+", "S1:C").Wire("S1:off", "S2:off").Wire("S1:on", "S2:on").Wire("S2:C", "DS1:X1").Wire("DS1:X2", "PS1:-").Proof;
        AssertTable(proof, "DS1", ["TOP", "BOTTOM"], (0b00, true), (0b01, false), (0b10, false), (0b11, true));
    }

    [Fact]
    public void An_intermediate_switch_between_two_way_switches_turns_the_lamp_over()
    {
        var proof = new PanelBuilder().Supply("PS1").Actuator("A", Off).Actuator("B", Off).Actuator("C", Off).Lamp("DS1")
            .Pole("S1", "A", "off", "on").Pole("S3", "C", "off", "on").Pole("S2", "B", "off", "on").Pole("S4", "B", "off", "on")
            .Wire("PS1:+", "S1:C").Wire("S1:off", "S2:C").Wire("S1:on", "S4:C")
            .Wire("S2:off", "S3:off").Wire("S2:on", "S3:on").Wire("S4:off", "S3:on").Wire("S4:on", "S3:off")
            .Wire("S3:C", "DS1:X1").Wire("DS1:X2", "PS1:-").Proof;
        // Lit when an even number of the three is over: parity.
        AssertTable(proof, "DS1", ["A", "B", "C"],
            [.. Enumerable.Range(0, 8).Select(n => (n, int.PopCount(n) % 2 == 0))]);
    }

    [Fact]
    public void A_reversing_circuit_turns_the_polarity_and_its_interlock_keeps_both_relays_from_operating()
    {
        var builder = new PanelBuilder().Supply("PS1").Actuator("FWD", "released", "pressed>released").Actuator("REV", "released", "pressed>released")
            .Make("S1", "FWD", "pressed").Make("S2", "REV", "pressed").Relay("K1", sets: 3).Relay("K2", sets: 3)
            .Led("D5").Led("D6").Resistor("R1", 1000).Resistor("R2", 1000)
            .Wire("PS1:+", "S1:1").Wire("S1:2", "K2:11").Wire("K2:12", "K1:A1").Wire("K1:A2", "PS1:-")
            .Wire("PS1:+", "S2:1").Wire("S2:2", "K1:11").Wire("K1:12", "K2:A1").Wire("K2:A2", "PS1:-")
            .Wire("PS1:+", "K1:21").Wire("K1:24", "R1:1").Wire("PS1:-", "K1:31").Wire("K1:34", "R2:1")
            .Wire("PS1:+", "K2:21").Wire("K2:24", "R2:1").Wire("PS1:-", "K2:31").Wire("K2:34", "R1:1")
            .Wire("R1:2", "D5:A", "D6:K").Wire("R2:2", "D5:K", "D6:A");
        var proof = builder.Proof;
        Assert.False(proof.States.CanReach(proof.Circuit.Compile(All(Energised("K1"), Energised("K2")))));
        AssertAlways(proof, Energised("K1"), "D5", true);
        AssertAlways(proof, Energised("K1"), "D6", false);
        AssertAlways(proof, Energised("K2"), "D6", true);
        AssertAlways(proof, Energised("K2"), "D5", false);
        Assert.Empty(builder.FindAll());
    }

    [Fact]
    public void A_reversing_circuit_without_its_interlock_shorts_the_supply()
    {
        var builder = new PanelBuilder().Supply("PS1").Actuator("FWD", "released", "pressed>released").Actuator("REV", "released", "pressed>released")
            .Make("S1", "FWD", "pressed").Make("S2", "REV", "pressed").Relay("K1").Relay("K2").Lamp("M1")
            .Wire("PS1:+", "S1:1").Wire("S1:2", "K1:A1").Wire("K1:A2", "PS1:-")
            .Wire("PS1:+", "S2:1").Wire("S2:2", "K2:A1").Wire("K2:A2", "PS1:-")
            .Wire("PS1:+", "K1:11").Wire("K1:14", "M1:X1").Wire("PS1:-", "K1:21").Wire("K1:24", "M1:X2")
            .Wire("PS1:+", "K2:11").Wire("K2:14", "M1:X2").Wire("PS1:-", "K2:21").Wire("K2:24", "M1:X1");
        var finding = Assert.Single(builder.FindAll());
        Assert.Equal("supply-shorted", finding.Rule);
        Assert.Equal(["Hold FWD pressed", "Hold REV pressed", "state K1 operated, K2 operated"], TraceData.Of(finding).Take(3));
    }

    [Fact]
    public void Start_wins_or_stop_wins_by_where_the_stop_contact_lies()
    {
        // Stop in the common feed: stop wins. Stop in the holding branch only: start wins.
        PanelBuilder Build(bool stopWins) => new PanelBuilder().Supply("PS1")
            .Actuator("START", "released", "pressed>released").Actuator("STOP", "released", "pressed>released")
            .Make("S1", "START", "pressed").Make("S2", "STOP", "released").Relay("K1")
            .Wire("PS1:+", "S2:1").Wire("S2:2", "K1:11").Wire(stopWins ? "S2:2" : "PS1:+", "S1:1")
            .Wire("S1:2", "K1:14", "K1:A1").Wire("K1:A2", "PS1:-");
        var both = All(At("START", "pressed"), At("STOP", "pressed"));
        AssertAlways(Build(stopWins: true).Proof, both, "K1", false);
        AssertAlways(Build(stopWins: false).Proof, both, "K1", true);
    }

    [Fact]
    public void A_changeover_relay_follows_its_coil_one_lamp_or_the_other()
    {
        var proof = new PanelBuilder().Supply("PS1").Actuator("A", Off).Make("S1", "A", "on").Relay("K1").Lamp("DS1").Lamp("DS2")
            .Wire("PS1:+", "S1:1").Wire("S1:2", "K1:A1").Wire("K1:A2", "PS1:-")
            .Wire("PS1:+", "K1:11").Wire("K1:12", "DS1:X1").Wire("K1:14", "DS2:X1").Wire("DS1:X2", "DS2:X2", "PS1:-").Proof;
        AssertTable(proof, "DS1", ["A"], (0, true), (1, false));
        AssertTable(proof, "DS2", ["A"], (0, false), (1, true));
    }

    private static AllCondition All(params Condition[] parts) => new([.. parts], SourceSpan.None);

    /// <summary>The first actuator is the lowest bit; a set bit is "on".</summary>
    private static void AssertTable(PositionProof proof, string load, string[] actuators, params (int Bits, bool Lit)[] rows)
    {
        foreach (var (bits, lit) in rows)
            AssertAlways(proof, All([.. actuators.Select((a, i) => At(a, Off[bits >> i & 1]))]), load, lit);
    }

    private static void AssertAlways(PositionProof proof, Condition when, string load, bool energised)
    {
        var asked = proof.Circuit.Compile(when);
        Assert.True(proof.States.CanReach(asked));
        var holds = proof.Circuit.Energised(proof.Circuit.Circuit.ElementOf(load)!);
        var other = energised ? proof.Circuit.Store.Not(holds) : holds;
        Assert.False(proof.States.CanReach(proof.Circuit.Store.And(asked, other)), $"{load} when {when}");
    }
}
