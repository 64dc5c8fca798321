using Schematic.Analysis.States;
using Schematic.Model;
using Schematic.Text;
using Xunit;
using static Schematic.Tests.Analysis.PanelBuilder;

namespace Schematic.Tests.Analysis.States;

/// <summary>Contacts in parallel and in series are one condition: what counts are electrically different cases, not switches.</summary>
public class LumpingTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(24)]
    public void A_lamp_behind_any_number_of_switch_pairs_has_two_cases(int pairs)
    {
        var proof = Pairs(pairs).Proof;
        var lamp = proof.Circuit.Circuit.ElementOf("DS1")!;
        Assert.True(proof.Circuit.IsDecided(lamp));
        Assert.Equal([0, 24], proof.Circuit.CasesOf(lamp).Select(c => Math.Round(c.Volts ?? 0)).Order());
    }

    [Fact]
    public void A_false_claim_about_a_lamp_behind_many_switches_is_refuted()
    {
        var builder = Pairs(24).Expect(new EnergisedExpectation("DS1", false, Always, SourceSpan.None));
        var finding = Assert.Single(builder.FindAll());
        Assert.Equal("expectation-fails", finding.Rule);
        Assert.Equal(["move A23 to on", "move B23 to on"], finding.Trace.Take(2).Select(t => t.ToString()));
    }

    [Fact]
    public void Switches_in_a_mesh_on_which_nothing_hangs_are_one_condition()
    {
        // A bridge of five switches between supply and lamp: on exactly when a way through is closed.
        var builder = new PanelBuilder().Supply("PS1").Lamp("DS1").Wire("DS1:X2", "PS1:-");
        for (var i = 1; i <= 5; i++) builder.Actuator($"A{i}", "off", "on").Make($"S{i}", $"A{i}", "on");
        var proof = builder.Wire("PS1:+", "S1:1", "S2:1").Wire("S1:2", "S3:1", "S5:1").Wire("S2:2", "S4:1", "S5:2")
            .Wire("S3:2", "S4:2", "DS1:X1").Proof;
        var lamp = proof.Circuit.Circuit.ElementOf("DS1")!;
        Assert.Equal(2, proof.Circuit.CasesOf(lamp).Length);
        Diagram On(int i) => proof.Circuit.Compile(At($"A{i}", "on"));
        var store = proof.Circuit.Store;
        Assert.Equal(
            store.Any([
                store.And(On(1), On(3)), store.And(On(2), On(4)), store.All([On(1), On(5), On(4)]), store.All([On(2), On(5), On(3)])]),
            proof.Circuit.Attracted(lamp));
    }

    [Fact]
    public void Names_of_the_levers_do_not_decide_how_long_a_proof_takes()
    {
        // All first switches are declared before all second ones: asked in that order a diagram would have 2^24 nodes.
        var builder = new PanelBuilder().Supply("PS1").Lamp("DS1").Wire("DS1:X2", "PS1:-");
        for (var i = 0; i < 24; i++) builder.Actuator($"A{i}", "off", "on").Make($"SA{i}", $"A{i}", "on");
        for (var i = 0; i < 24; i++) builder.Actuator($"B{i}", "off", "on").Make($"SB{i}", $"B{i}", "on");
        for (var i = 0; i < 24; i++) builder.Wire("PS1:+", $"SA{i}:1").Wire($"SA{i}:2", $"SB{i}:1").Wire($"SB{i}:2", "DS1:X1");
        var proof = builder.Proof;
        Assert.Equal(2, proof.Circuit.CasesOf(proof.Circuit.Circuit.ElementOf("DS1")!).Length);
        Assert.InRange(proof.Circuit.Store.NodeCount, 0, 20_000);
    }

    [Fact]
    public void A_region_between_rails_has_as_many_cases_as_its_nodes_can_be_joined()
    {
        // Two lamps that twelve pairs of switches feed each, and a region of their own for each.
        var builder = Pairs(12).Lamp("DS2").Wire("DS2:X2", "PS1:-").Actuator("C", "off", "on").Make("SC", "C", "on")
            .Make("SD", "C", "off").Wire("PS1:+", "SC:1").Wire("SC:2", "DS2:X1", "SD:1").Wire("SD:2", "PS1:-");
        var proof = builder.Proof;
        Assert.Equal(2, proof.Circuit.Regions.Length);
        foreach (var region in proof.Circuit.Regions)
        {
            var cases = proof.Circuit.CasesOf(region, Diagram.Always, 100, proof.States.Reachable)!.Value;
            Assert.Equal(2, cases.Length);
            Assert.Equal(Diagram.Always, proof.Circuit.Store.Any(cases.Select(c => c.When)));
            Assert.Contains(cases, c => c.GroupOf[0] == -1); // On the positive rail.
        }

        Assert.Null(proof.Circuit.CasesOf(proof.Circuit.Regions[0], Diagram.Always, 1, proof.States.Reachable));
    }

    private static PanelBuilder Pairs(int pairs)
    {
        var builder = new PanelBuilder().Supply("PS1").Lamp("DS1").Wire("DS1:X2", "PS1:-");
        for (var i = 0; i < pairs; i++)
        {
            builder.Actuator($"A{i}", "off", "on").Make($"SA{i}", $"A{i}", "on").Actuator($"B{i}", "off", "on").Make($"SB{i}", $"B{i}", "on")
                .Wire("PS1:+", $"SA{i}:1").Wire($"SA{i}:2", $"SB{i}:1").Wire($"SB{i}:2", "DS1:X1");
        }

        return builder;
    }
}
