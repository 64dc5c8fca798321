using Schematic.Analysis.Positions;
using Schematic.Analysis.States;
using Schematic.Diagnostics;
using Schematic.Model;
using Xunit;
using static Schematic.Tests.Analysis.PanelBuilder;

namespace Schematic.Tests.Analysis.States;

public class StateSpaceTests
{
    [Fact]
    public void Moves_go_from_neighbour_to_neighbour_and_a_momentary_position_is_held()
    {
        var proof = new PanelBuilder().Actuator("GRIP", "left-stop>left", "left", "centre*", "right", "right-stop>right").Proof;
        Assert.Equal(["move GRIP to left", "hold GRIP at left-stop"], Lines(proof, At("GRIP", "left-stop"), merge: false));
        Assert.Equal(["hold GRIP at left-stop"], Lines(proof, At("GRIP", "left-stop")));
    }

    [Fact]
    public void An_endless_actuator_takes_the_short_way_round()
    {
        var proof = new PanelBuilder().Endless("KNOB", "a", "b", "c", "d", "e").Proof;
        Assert.Single(proof.States.Nearest(proof.Circuit.Compile(At("KNOB", "e")))!.Moves);
        var stopped = new PanelBuilder().Actuator("KNOB", "a", "b", "c", "d", "e").Proof;
        Assert.Equal(4, stopped.States.Nearest(stopped.Circuit.Compile(At("KNOB", "e")))!.Moves.Length);
    }

    [Fact]
    public void A_lock_holds_the_lever_until_the_button_feeds_its_coil()
    {
        var proof = Locked().Make("S1", "BUTTON", "pressed").Wire("PS1:+", "S1:1").Wire("S1:2", "L1:A1").Wire("L1:A2", "PS1:-").Proof;
        Assert.Equal(["hold BUTTON at pressed", "move LEVER to reverse"], Lines(proof, At("LEVER", "reverse")));
    }

    [Fact]
    public void A_lock_whose_coil_is_never_fed_is_never_passed()
    {
        var proof = Locked().Make("S1", "LEVER", "reverse").Wire("PS1:+", "S1:1").Wire("S1:2", "L1:A1").Wire("L1:A2", "PS1:-").Proof;
        Assert.False(proof.States.CanReach(proof.Circuit.Compile(At("LEVER", "reverse"))));
        Assert.Single(proof.StuckLocks);
    }

    [Fact]
    public void A_holding_contact_makes_a_latch_with_two_states_of_rest()
    {
        var proof = Latch().Proof;
        Assert.Equal("K1", Assert.Single(proof.States.Latches));
        Assert.Equal(
            ["hold START at pressed", "let START go: it springs to released"],
            Lines(proof, All(Energised("K1"), At("START", "released"))));
        Assert.False(proof.States.CanReach(proof.Circuit.Compile(All(Energised("K1"), At("STOP", "pressed")))));
        Assert.Empty(proof.States.RestlessGroups());
    }

    [Fact]
    public void A_relay_that_opens_its_own_feed_chatters()
    {
        var panel = new PanelBuilder().Supply("PS1").Actuator("START", "released", "pressed>released")
            .Make("S1", "START", "pressed").Relay("K1")
            .Wire("PS1:+", "S1:1").Wire("S1:2", "K1:11").Wire("K1:12", "K1:A1").Wire("K1:A2", "PS1:-");
        var finding = Assert.Single(panel.FindAll());
        Assert.Equal("relay-chatter", finding.Rule);
        Assert.Equal(
            [
                "Hold START pressed",
                "fact K1",
                "path PS1:+ [W1] S1:1 S1:2 [W2] K1:11 K1:12 [W3] K1:A1",
                "path K1:A2 [W4] PS1:-",
                "fact K1",
                "fact",
            ],
            TraceData.Of(finding));
        Assert.Equal(
            ["K1 operates", "K1 releases, its feed being open", "and so on for ever"],
            finding.Trace.OfType<FactStep>().Select(f => f.Words));
    }

    [Fact]
    public void Two_relays_that_lock_each_other_out_settle_one_way_or_the_other()
    {
        // Interlock with both feeds closed by one move: whichever relay is faster wins (common practice).
        var proof = new PanelBuilder().Supply("PS1").Actuator("A", "off", "on").Make("S1", "A", "on").Relay("K1").Relay("K2")
            .Wire("PS1:+", "S1:1").Wire("S1:2", "K2:11", "K1:11")
            .Wire("K2:12", "K1:A1").Wire("K1:12", "K2:A1").Wire("K1:A2", "K2:A2", "PS1:-").Proof;
        bool Reaches(bool first, bool second) =>
            proof.States.CanReach(proof.Circuit.Compile(All(At("A", "on"), Energised("K1", first), Energised("K2", second))));
        Assert.True(Reaches(true, false));
        Assert.True(Reaches(false, true));
        Assert.False(Reaches(true, true));
        Assert.False(Reaches(false, false));
        Assert.Empty(proof.States.RestlessGroups());
    }

    [Fact]
    public void Independent_actuators_do_not_multiply()
    {
        var builder = new PanelBuilder().Supply("PS1");
        for (var i = 0; i < 60; i++)
            builder.Actuator($"A{i}", "off", "on").Make($"S{i}", $"A{i}", "on").Wire("PS1:+", $"S{i}:1");
        var proof = builder.Proof;
        var everyOn = proof.Circuit.Store.All(Enumerable.Range(0, 60).Select(i => proof.Circuit.Compile(At($"A{i}", "on"))));
        Assert.Equal(60, proof.States.Nearest(everyOn)!.Moves.Length);
        Assert.True(proof.Circuit.Store.NodeCount < 20_000);
    }

    private static AllCondition All(params Condition[] parts) => new([.. parts], Text.SourceSpan.None);

    private static PanelBuilder Locked() => new PanelBuilder().Supply("PS1")
        .Actuator("LEVER", "normal", "reverse").Actuator("BUTTON", "released", "pressed>released")
        .Solenoid("L1").Lock("LEVER", "normal", Energised("L1"));

    private static PanelBuilder Latch() => new PanelBuilder().Supply("PS1")
        .Actuator("START", "released", "pressed>released").Actuator("STOP", "released", "pressed>released")
        .Make("S1", "START", "pressed").Make("S2", "STOP", "released").Relay("K1")
        .Wire("PS1:+", "S2:1").Wire("S2:2", "S1:1", "K1:11").Wire("S1:2", "K1:A1", "K1:14").Wire("K1:A2", "PS1:-");

    private static IEnumerable<string> Lines(PositionProof proof, Condition condition, bool merge = true)
    {
        var moves = proof.States.Nearest(proof.Circuit.Compile(condition))!.Moves;
        var steps = merge
            ? MoveText.Steps(proof.Circuit.Variables, moves)
            : moves.SelectMany(m => MoveText.Steps(proof.Circuit.Variables, [m]));
        return steps.Select(s => s.ToString());
    }
}
