using Xunit;
using static Schematic.Tests.Analysis.PanelBuilder;

namespace Schematic.Tests.Analysis.States;

/// <summary>Relay circuits that grow: a chain costs its length.</summary>
public class DerivedCoilTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_chain_of_a_hundred_relays_is_proved_in_few_steps(bool isBackwards)
    {
        var builder = new PanelBuilder().Supply("PS1").Actuator("START", "off", "on").Make("S1", "START", "on").Wire("PS1:+", "S1:1");
        var order = Enumerable.Range(1, 100).ToList();
        if (isBackwards) order.Reverse();
        foreach (var i in order) builder.Relay($"K{i}", sets: 1).Wire($"K{i}:A2", "PS1:-").Wire("PS1:+", $"K{i}:11");
        for (var i = 1; i <= 100; i++) builder.Wire(i == 1 ? "S1:2" : $"K{i - 1}:14", $"K{i}:A1");
        var proof = builder.Proof;
        Assert.True(proof.States.CanReach(proof.Circuit.Compile(Energised("K100"))));
        var split = proof.Circuit.Store.And(proof.Circuit.Compile(Energised("K100")), proof.Circuit.Compile(Energised("K99", false)));
        Assert.False(proof.States.CanReach(split)); // On the way only: at rest all stand alike.
        Assert.InRange(proof.Circuit.Store.Steps, 0, 2_000_000);
    }

    /// <summary>Each relay feeds the next through a lever of its own and the last feeds the first: once the ring is closed it holds itself.</summary>
    [Fact]
    public void A_ring_of_relays_is_proved_in_few_steps()
    {
        const int size = 20;
        var builder = new PanelBuilder().Supply("PS1").Actuator("START", "off", "on").Make("S0", "START", "on").Wire("PS1:+", "S0:1").Wire("S0:2", "S1:1");
        for (var i = 1; i <= size; i++)
        {
            builder.Actuator($"A{i}", "off", "on").Make($"S{i}", $"A{i}", "on").Relay($"K{i}", sets: 1)
                .Wire($"S{i}:2", $"K{i}:A1").Wire($"K{i}:A2", "PS1:-").Wire("PS1:+", $"K{i}:11").Wire($"K{i}:14", $"S{(i % size) + 1}:1");
        }

        var proof = builder.Proof;
        var (store, circuit) = (proof.Circuit.Store, proof.Circuit);
        Assert.True(proof.States.CanReach(store.And(circuit.Compile(At("START", "off")), circuit.Compile(Energised($"K{size}")))));
        Assert.InRange(store.Steps, 0, 2_000_000);
    }

    [Fact]
    public void A_relay_that_others_follow_into_a_latch_keeps_its_races()
    {
        // K1 opens before K2 does, or after: in between its contacts give L a pulse, and L holds itself.
        var builder = new PanelBuilder().Supply("PS1").Actuator("A", "off", "on").Make("S1", "A", "on")
            .Relay("K1", sets: 2).Relay("K2", sets: 2).Relay("L", sets: 1)
            .Wire("PS1:+", "S1:1", "K1:11", "L:11").Wire("S1:2", "K1:A1", "K2:A1").Wire("K1:12", "K2:11").Wire("K2:14", "L:A1", "L:14")
            .Wire("PS1:-", "K1:A2", "K2:A2", "L:A2");
        var proof = builder.Proof;
        Assert.True(proof.States.CanReach(proof.Circuit.Compile(Energised("L"))));
    }
}
