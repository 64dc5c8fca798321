using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using Schematic.Analysis;
using Schematic.Analysis.Electrical;
using Schematic.Analysis.Loads;
using Schematic.Analysis.States;
using Schematic.Binding;
using Schematic.Model;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Analysis.Loads;

/// <summary>
/// Worst cases against arithmetic by hand, and against every position tried one by one with a dense solution: node voltages
/// and branch currents all unknown, one equation each, solved by MathNet's LU; diodes by trying both of their modes.
/// </summary>
public sealed class WorstCaseTests
{
    private const string OneCoil = """
        actuator KEY { off rest ; on }
        limits { ambient 20 degC  insulation 105 degC  bundle 33 }
        supply PS1 28 V adjustable 22..29 V limit 3 A source 0.1 ohm
        switch S1 make on KEY when on rated 28 V 5 A
        solenoid L1 28 V 0.7 A operates 20 V suppressed
        wire W1 22 AWG red   5 m  PS1:+ -> S1:1
        wire W2 22 AWG red   5 m  S1:2 -> L1:A1
        wire W3 22 AWG black 10 m L1:A2 -> PS1:-
        """;

    [Fact]
    public void One_coil_on_long_wires_comes_out_as_by_hand()
    {
        var worst = Worst(OneCoil);

        // First round at 20 degrees: 20 m of 53.15 mohm/m (table 11-9), 0.1 ohm and two ideal milliohms beside 40 ohm.
        var coldOhms = 20 * 16.20 / 304.8;
        var first = 28 / (40 + coldOhms + 0.1 + 0.001);
        // 3 A in bundles at 70 degrees, so 3 x sqrt(85 / 35) at 20; the copper then at 20 + 85 sqrt(I / Imax).
        var capacity = 3 * Math.Sqrt(85.0 / 35);
        var celsius = 20 + (85 * Math.Sqrt(first / capacity));
        var hotOhms = coldOhms * (234.5 + celsius) / 254.5;
        var amps = 28 / (40 + hotOhms + 0.1 + 0.001);

        var coil = worst.Loads.Single();
        Assert.Equal(amps * 40, coil.LeastVolts!.Value, 1e-6);
        Assert.Equal("KEY on", coil.LeastVolts.Position);
        Assert.Equal(amps, coil.MostAmps!.Value, 1e-8);
        Assert.Equal(amps * (hotOhms + 0.001), coil.Drop!.Value, 1e-6);
        Assert.Equal(1, coil.AllowedDrop);
        Assert.All(worst.Wires, w => Assert.Equal(amps, w.Amps.Value, 1e-8));
        Assert.Equal(capacity, worst.Wires[0].Capacity!.Amps, 1e-9);
        Assert.Equal(celsius, worst.Wires[0].Celsius, 1e-6);
        Assert.Equal(amps * hotOhms / 4, worst.Wires[0].DropVolts, 1e-8);
        Assert.Equal(amps * amps * hotOhms / 2, worst.Wires[2].Watts, 1e-8);
        Assert.Equal(amps, worst.Supplies.Single().Amps.Value, 1e-8);
        Assert.Equal(amps * 4, worst.Contacts.Single().RequiredAmps.Value, 1e-8);

        // Warm operate voltage at 20 + 60 degrees, carried back through the divider.
        var warm = 20 * (234.5 + 80) / 254.5;
        var setting = worst.Supplies.Single().Setting;
        Assert.Equal(warm * 28 / (amps * 40), setting.Lowest.Volts, 1e-4);
        Assert.Equal(29, setting.Highest.Volts);
        Assert.Equal(28.9, setting.Recommended!.Value, 1e-9);
    }

    [Theory]
    [InlineData("lever-frame/lever.panel")]
    [InlineData("relay-latch/latch.panel")]
    [InlineData("engine-order/engine-order.panel")]
    public void Every_case_agrees_with_a_dense_solution(string example)
    {
        var context = Example(example);
        var network = Network(context);
        var random = new Random(20261125);
        for (var i = 0; i < 12; i++)
        {
            var state = new SwitchingCase(
                Diagram.Always, [.. network.Circuit.Contacts.Select(_ => random.Next(2) == 0)], [.. network.Circuit.Supplies.Select(_ => true)]);
            var dense = DenseAmps(network.NodeCount, network.Branches(state));
            var solution = network.Solve(state);
            for (var w = 0; w < context.Panel.Wires.Length; w++) Assert.Equal(Math.Abs(dense[w]), solution.WireAmps(w), 1e-5);
        }
    }

    [Fact]
    public void The_worst_of_the_main_example_is_that_of_all_thirty_positions_tried_one_by_one()
    {
        var context = Example("lever-frame/lever.panel");
        var network = Network(context);
        var most = new double[context.Panel.Wires.Length];
        foreach (var lever in context.Panel.Actuators[0].Positions)
        foreach (var grip in context.Panel.Actuators[1].Positions)
        foreach (var button in context.Panel.Actuators[2].Positions)
        {
            string[] stand = [lever.Name, grip.Name, button.Name];
            var closed = network.Circuit.Contacts.Select(c => c.When is PositionCondition p
                && p.Positions.Contains(stand[context.Panel.Actuators.ToList().FindIndex(a => a.Name == p.Actuator)]));
            var dense = DenseAmps(network.NodeCount, network.Branches(new SwitchingCase(Diagram.Always, [.. closed], [true])));
            for (var w = 0; w < most.Length; w++) most[w] = Math.Max(most[w], Math.Abs(dense[w]));
        }

        Assert.Equal(18, context.Worst.CaseCount);
        for (var w = 0; w < most.Length; w++) Assert.Equal(most[w], context.Worst.Wires[w].Amps.Value, 1e-6);
    }

    [Fact]
    public void A_selector_never_lights_two_lamps_at_once()
    {
        var worst = Example("engine-order/engine-order.panel").Worst;
        Assert.False(worst.IsBound);
        var supply = worst.Supplies.Single();
        Assert.Equal(["L1"], supply.Shares.Select(s => s.Load).Where(n => n[0] == 'L'));
        Assert.Single(supply.Shares, s => s.Load.StartsWith("DS", StringComparison.Ordinal));
        Assert.InRange(supply.Amps.Value, 0.36, 0.38);
    }

    [Fact]
    public void With_too_many_combinations_the_sum_is_a_bound_and_close()
    {
        var text = "supply PS1 24 V limit 20 A source 0.01 ohm\n" + string.Concat(Enumerable.Range(1, 12).Select(i =>
            $"actuator K{i}x {{ off rest ; on }}\nswitch S{i} make on K{i}x when on\nlamp DS{i} 24 V 100 mA\n"
            + $"wire A{i} 22 AWG 300 mm PS1:+ -> S{i}:1\nwire B{i} 22 AWG 300 mm S{i}:2 -> DS{i}:X1\nwire C{i} 22 AWG 300 mm DS{i}:X2 -> PS1:-\n"));
        var worst = Worst(text);
        Assert.True(worst.IsBound);
        Assert.Equal(0, worst.RegionsLeftOut);
        var ohms = 240 + 0.001 + worst.Wires.Take(3).Sum(w => w.Ohms);
        var exact = 24 / ((ohms / 12) + 0.01);
        Assert.InRange(worst.Supplies.Single().Amps.Value, exact - 1e-6, exact * 1.01);
        var leastExact = 24 * 240 / ohms * (1 - (exact * 0.01 / 24));
        Assert.InRange(worst.Loads[0].LeastVolts!.Value, leastExact * 0.99, leastExact + 1e-6);
    }

    [Fact]
    public void A_sum_counts_only_positions_that_can_hold_together()
    {
        // Twelve lamps with keys of their own, and a selector that lights one of four heaters at a time.
        var text = "supply PS1 24 V source 0.01 ohm\nactuator SEL { off rest ; a ; b ; c ; d }\n"
            + string.Concat(Enumerable.Range(1, 12).Select(i =>
                $"actuator K{i}x {{ off rest ; on }}\nswitch S{i} make on K{i}x when on\nlamp DS{i} 24 V 100 mA\n"
                + $"net P{i} PS1:+ S{i}:1\nnet Q{i} S{i}:2 DS{i}:X1\n"))
            + string.Concat("abcd".Select(c => $"switch T{c} make on SEL when {c}\nresistor R{c} 24 ohm 50 W\nnet U{c} T{c}:2 R{c}:1\n"))
            + $"net RTN PS1:- {string.Join(' ', Enumerable.Range(1, 12).Select(i => $"DS{i}:X2"))} {string.Join(' ', "abcd".Select(c => $"R{c}:2"))}\n"
            + $"net FEED PS1:+ {string.Join(' ', "abcd".Select(c => $"T{c}:1"))}\n";
        var supply = Worst(text).Supplies.Single();
        Assert.InRange(supply.Amps.Value, 2.1, 2.25);
        Assert.Contains("SEL a", supply.Amps.Position, StringComparison.Ordinal);
        Assert.Equal(13, supply.Shares.Length + 1);
    }

    [Fact]
    public void A_part_with_too_many_combinations_is_told_and_not_passed_over()
    {
        var keys = Enumerable.Range(1, 14).ToList();
        var text = "supply PS1 24 V limit 2 A\nlamp DS1 24 V 80 mA\nnet RTN PS1:- DS1:X2\n"
            + string.Concat(keys.Select(i => $"actuator K{i}x {{ off rest ; on }}\nswitch S{i} make on K{i}x when on\n"))
            + $"net FEED PS1:+ {string.Join(' ', keys.Select(i => $"S{i}:1"))}\nnet LIT DS1:X1 {string.Join(' ', keys.Select(i => $"S{i}:2"))}\n";
        var context = Context(text);
        Assert.Equal(1, context.Worst.RegionsLeftOut);
        Assert.Contains(PanelChecker.Check(context.Panel), d => d.Rule == "loads-not-solved");
    }

    [Fact]
    public void A_wire_without_a_gauge_gets_one_that_its_contact_takes()
    {
        var context = Context("""
            connector J1 "plug" { pins ; size 20 ; solder ; strip 2 pitch 5 mm }
            supply PS1 24 V limit 10 A
            resistor R1 12 ohm 100 W
            wire W1 22 AWG 300 mm PS1:+ -> R1:1
            wire W2 2 m R1:2 -> J1:1
            wire W3 22 AWG 300 mm PS1:- -> J1:2
            net BACK J1:1 J1:2
            """);
        var wire = context.Sized.Panel.Wires[1];
        Assert.True(wire.IsGaugeChosen);
        Assert.InRange(wire.Gauge!.Awg!.Value, 20, 24);
        Assert.NotNull(context.Worst.Wires[1].SizingMethod);

        // Chosen again from the panel that has it, it stays what it was, and the method is still told.
        var again = context.Sized.Worst.Wires[1];
        Assert.Equal(wire.Gauge, again.Wire.Gauge);
        Assert.Equal(context.Worst.Wires[1].SizingMethod, again.SizingMethod);
        Assert.Equal("~20 AWG".Length, Schematic.Reports.WireList.GaugeText(again.Wire).Length);
    }

    [Fact]
    public void A_fuse_guards_up_to_the_loads_and_not_beyond()
    {
        var worst = Worst("""
            actuator KEY { off rest ; on }
            supply PS1 24 V limit 10 A
            fuse F1 2 A
            switch S1 make on KEY when on
            lamp DS1 24 V 80 mA
            wire W1 16 AWG 300 mm PS1:+ -> F1:1
            wire W2 18 AWG 300 mm F1:2 -> S1:1
            wire W3 20 AWG 300 mm S1:2 -> DS1:X1
            wire W4 24 AWG 300 mm DS1:X2 -> PS1:-
            """);
        Assert.Equal("W3", worst.Protectors.Single().Thinnest!.Designator);
        Assert.False(worst.Protectors.Single().IsTooLarge);
    }

    [Fact]
    public void A_panel_without_supply_or_wires_has_empty_worst_cases()
    {
        var worst = new AnalysisContext(new Panel()).Worst;
        Assert.Empty(worst.Wires);
        Assert.Empty(worst.Supplies);
    }

    private static double[] DenseAmps(int nodes, ImmutableArray<Branch> branches)
    {
        int[] diodes = [.. Enumerable.Range(0, branches.Length).Where(i => branches[i].Kind == BranchKind.OneWay && branches[i].From != branches[i].To)];
        for (var modes = 0; modes < 1 << diodes.Length; modes++)
        {
            bool IsOn(int branch) => Array.IndexOf(diodes, branch) is var d && (d < 0 || (modes >> d & 1) == 1);
            var x = SolveDense(nodes, branches, IsOn);
            var fits = diodes.All(d => IsOn(d)
                ? x[nodes + d] >= -1e-9
                : x[branches[d].From] - x[branches[d].To] <= branches[d].Volts + 1e-9);
            if (fits) return [.. x.Skip(nodes)];
        }

        throw new InvalidOperationException("No mode of the diodes fits.");
    }

    private static Vector<double> SolveDense(int nodes, ImmutableArray<Branch> branches, Func<int, bool> isOn)
    {
        const double toEarth = 1e-11;
        var size = nodes + branches.Length;
        var a = Matrix<double>.Build.Dense(size, size);
        var b = Vector<double>.Build.Dense(size);
        for (var n = 0; n < nodes; n++) a[n, n] = toEarth;
        for (var i = 0; i < branches.Length; i++)
        {
            var (branch, row) = (branches[i], nodes + i);
            if (branch.From == branch.To || !isOn(i))
            {
                a[row, row] = 1;
                continue;
            }

            a[branch.From, row] += 1;
            a[branch.To, row] -= 1;
            a[row, branch.From] += 1;
            a[row, branch.To] -= 1;
            a[row, row] = -branch.Ohms;
            b[row] = branch.Volts;
        }

        return a.LU().Solve(b);
    }

    private static WiredNetwork Network(AnalysisContext context) => new(
        context, context.Positions.Circuit.Circuit, context.Panel.Wires, w => context.Worst.Wires[w].Celsius);

    private static WorstCases Worst(string text) => Context(text).Worst;

    private static AnalysisContext Context(string text)
    {
        var loaded = PanelLoader.Load(new SourceText("test.panel", text), MemoryPanelFiles.None);
        Assert.Empty(loaded.Diagnostics.Select(d => d.Message));
        return new AnalysisContext(loaded.Panel);
    }

    private static AnalysisContext Example(string name)
    {
        var loaded = PanelLoader.LoadFile(Repository.PathOf("examples/" + name));
        Assert.Empty(loaded.Diagnostics.Select(d => d.Message));
        return new AnalysisContext(loaded.Panel);
    }
}
