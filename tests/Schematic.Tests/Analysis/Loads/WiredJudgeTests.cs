using System.Collections.Immutable;
using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using Schematic.Analysis;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.Electrical;
using Schematic.Analysis.Loads;
using Schematic.Analysis.States;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Analysis.Loads;

/// <summary>
/// When a load works behind its wires, against every state tried one by one with a dense solution of the whole wired network
/// (MathNet's LU). Where cool and hot copper disagree the state is left out: the judge's own temperature lies between.
/// </summary>
public sealed class WiredJudgeTests
{
    [Fact]
    public void Every_load_works_in_the_states_in_which_the_whole_network_says_so() => Panels.Holds(
        text =>
        {
            var context = LoadPanels.Context(text);
            var circuit = context.Positions.Circuit;
            var (cool, hot) = (Network(context, context.Panel.Limits.AmbientCelsius), Network(context, context.Panel.Limits.InsulationCelsius));
            foreach (var values in States(circuit))
            {
                if (circuit.Store.Holds(circuit.AnyShort, values)) continue;
                var (atCool, atHot) = (Volts(cool, circuit, values), Volts(hot, circuit, values));
                foreach (var load in circuit.Circuit.Loads)
                {
                    var (one, other) = (Works(cool, load, atCool), Works(hot, load, atHot));
                    if (one is null || one != other) continue;
                    Assert.Equal(one, circuit.Store.Holds(circuit.Attracted(load), values));
                }
            }
        },
        count: 250, print: t => t);

    /// <summary>One supply, up to three switches and a relay, loads that share wires of any length, resistors in series.</summary>
    internal static Gen<string> Panels =>
        from lengths in Gen.OneOf(Gen.Double[0.1, 5], Gen.Double[5, 400]).Array[14]
        from kinds in Gen.Int[0, 3].Array[4]
        from source in Gen.OneOf(Gen.Const(0.0), Gen.Double[0.01, 20])
        from places in Gen.Int[0, 2].Array[4]
        from series in Gen.OneOf(Gen.Const(0.0), Gen.Double[1, 800]).Array[4]
        select Text(lengths, kinds, source, places, series);

    private static string Text(double[] lengths, int[] kinds, double source, int[] places, double[] series)
    {
        var wire = 0;
        string Wire(string from, string to) => FormattableString.Invariant($"wire W{++wire} {(wire % 3 == 0 ? 28 : 22)} AWG {lengths[wire % lengths.Length]:0.00} m {from} -> {to}\n");
        var text = FormattableString.Invariant($"supply PS1 24 V source {source:0.000} ohm\nterminals X1 {{ 1..4 }}\n") + Wire("PS1:+", "X1:1") + Wire("X1:4", "PS1:-")
            + "actuator A0 { off rest ; on }\nactuator A1 { off rest ; on }\nactuator A2 { off rest ; on }\n"
            + "switch S0 make on A0 when on\nswitch S1 make on A1 when on\nswitch S2 make on A2 when on\n";
        for (var i = 0; i < 3; i++) text += Wire("X1:1", $"S{i}:1");
        for (var i = 0; i < kinds.Length; i++)
        {
            var (name, plus, minus, statement) = kinds[i] switch
            {
                0 => ($"DS{i}", "X1", "X2", $"lamp DS{i} 24 V 80 mA"),
                1 => ($"L{i}", "A1", "A2", $"solenoid L{i} 24 V 0.3 A operates 18 V suppressed"),
                2 => ($"K{i}", "A1", "A2", $"relay K{i} 24 V 400 ohm operates 17 V releases 4 V suppressed {{ make }}"),
                _ => ($"DL{i}", "A", "K", $"led DL{i} 2 V 20 mA"),
            };
            var ohms = kinds[i] == 3 ? series[i] + 1000 : series[i];
            text += statement + "\n" + (ohms > 0 ? FormattableString.Invariant($"resistor R{i} {ohms:0.0} ohm\n") : "");
            var end = ohms > 0 ? $"R{i}:1" : $"{name}:{plus}";
            text += Wire($"S{places[i]}:2", end) + (ohms > 0 ? Wire($"R{i}:2", $"{name}:{plus}") : "") + Wire($"{name}:{minus}", "X1:4");
        }

        return text;
    }

    private static IEnumerable<int[]> States(ConditionalCircuit circuit)
    {
        var sizes = circuit.Variables.All.Select(v => v.Values.Length).ToArray();
        for (var n = 0; n < sizes.Aggregate(1, (a, b) => a * b); n++)
        {
            var rest = n;
            yield return [.. sizes.Select(s => { var value = rest % s; rest /= s; return value; })];
        }
    }

    private static WiredNetwork Network(AnalysisContext context, double celsius) =>
        new(context, context.Positions.Circuit.Circuit, context.Panel.Wires, _ => celsius);

    private static double[] Volts(WiredNetwork network, ConditionalCircuit circuit, int[] values) => Dense(network.NodeCount, network.Branches(new SwitchingCase(
        Diagram.Always, [.. network.Circuit.Contacts.Select(c => circuit.Store.Holds(circuit.Closed(c), values))], [true])));

    /// <summary>Whether a load works; null where what it gets is too near to what it needs.</summary>
    private static bool? Works(WiredNetwork network, Element load, double[] volts)
    {
        var across = volts[network.NodeOf(load.From)] - volts[network.NodeOf(load.To)];
        var amps = load.IsOneWay ? Math.Max(0, (across - load.Volts) / load.CountedOhms) : across / load.CountedOhms;
        var (low, high) = (LoadLimits.IsEnergised(load, across * 0.9995, amps * 0.9995), LoadLimits.IsEnergised(load, across * 1.0005, amps * 1.0005));
        return low == high ? low : null;
    }

    private static double[] Dense(int nodes, ImmutableArray<Branch> branches)
    {
        int[] diodes = [.. Enumerable.Range(0, branches.Length).Where(i => branches[i].Kind == BranchKind.OneWay && branches[i].From != branches[i].To)];
        for (var modes = 0; modes < 1 << diodes.Length; modes++)
        {
            bool IsOn(int branch) => Array.IndexOf(diodes, branch) is var d && (d < 0 || (modes >> d & 1) == 1);
            var a = Matrix<double>.Build.Dense(nodes, nodes);
            var b = Vector<double>.Build.Dense(nodes);
            for (var n = 0; n < nodes; n++) a[n, n] = 1e-11;
            for (var i = 0; i < branches.Length; i++)
            {
                var branch = branches[i];
                if (branch.From == branch.To || !IsOn(i)) continue;
                var siemens = 1 / branch.Ohms;
                a[branch.From, branch.From] += siemens;
                a[branch.To, branch.To] += siemens;
                a[branch.From, branch.To] -= siemens;
                a[branch.To, branch.From] -= siemens;
                b[branch.From] += siemens * branch.Volts;
                b[branch.To] -= siemens * branch.Volts;
            }

            var volts = a.LU().Solve(b);
            if (diodes.All(d => IsOn(d) == (volts[branches[d].From] - volts[branches[d].To] > branches[d].Volts))) return [.. volts];
        }

        throw new InvalidOperationException("No mode of the diodes fits.");
    }
}
