using System.Collections.Immutable;
using Schematic.Bench.Faults;
using Schematic.Analysis;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Bench.RingOut;

/// <summary>The ring-out lists of the pack: of the unit as it was found and of the harness that is built, each where there is one.</summary>
public static class RingOutSheets
{
    /// <summary>With more contacts than this a ring-out is planned part by part, on the command line.</summary>
    private const int MostContacts = 200;

    /// <summary>The tables; what reads alike is left to the command line, to keep paper.</summary>
    public static ImmutableArray<ReportTable> Build(Panel panel) => Build(panel, Plans(panel));

    /// <summary>The tables of plans that are made.</summary>
    internal static ImmutableArray<ReportTable> Build(Panel panel, ImmutableArray<RingOutPlan> plans) =>
    [
        .. plans.Select(WithHidden),
        .. CircuitsOf(panel).Where(c => c.Accessible.Length > MostContacts).Select(TooMany),
    ];

    /// <summary>The plans themselves; none for a side with so many contacts that it is planned part by part.</summary>
    internal static ImmutableArray<RingOutPlan> Plans(Panel panel) =>
        [.. CircuitsOf(panel).Where(c => c.Accessible.Length <= MostContacts).Select(c => RingOutPlanner.Plan(c)).Where(p => !p.Steps.IsEmpty)];

    /// <summary>
    /// Plans that were made of the panel as it was before, where it still has the same contacts and actuators; null where it has not. Whether
    /// they still find everything is not looked at.
    /// </summary>
    internal static ImmutableArray<RingOutPlan>? PlansLike(Panel panel, ImmutableArray<RingOutPlan> before)
    {
        var circuits = CircuitsOf(panel).Where(c => c.Accessible.Length <= MostContacts).ToList();
        return circuits.Count == before.Length && circuits.Zip(before).All(p => IsLike(p.First, p.Second.Circuit)) ? before : null;
    }

    private static bool IsLike(BenchCircuit one, BenchCircuit other) => one.Side == other.Side
        && one.Terminals.SequenceEqual(other.Terminals) && one.Accessible.SequenceEqual(other.Accessible)
        && one.Actuators.Select(NamesOf).SequenceEqual(other.Actuators.Select(NamesOf), StringComparer.Ordinal);

    private static string NamesOf(Actuator actuator) => $"{actuator.Name} {string.Join(' ', actuator.Positions.Select(p => p.Name))}";

    private static List<BenchCircuit> CircuitsOf(Panel panel) =>
        [.. SidesOf(panel).Select(side => BenchCircuit.Read(panel, side)).Where(c => c.Accessible.Length >= 2)];

    private static IEnumerable<BenchSide> SidesOf(Panel panel)
    {
        if (BenchCut.UnitConnectors(panel).Count > 0) yield return BenchSide.Unit;
        if (!panel.Wires.IsEmpty || !panel.Nets.IsEmpty) yield return BenchSide.Harness;
    }

    private static ReportTable WithHidden(RingOutPlan plan)
    {
        var table = PrintedRingOut.Steps(plan);
        var hidden = RingOutList.AmongThemselves(plan).Concat(plan.Hidden.Where(f => f.Kind != FaultKind.Exchange && !RingOutList.IsByCoil(plan, f)).Select(f => f.Words)).ToList();
        return hidden.Count == 0 ? table : table with
        {
            Notes = table.Notes.Add($"No measurement at these contacts shows it when {string.Join("; when ", hidden.Take(8))}{(hidden.Count > 8 ? $"; and {Figures.Count(hidden.Count - 8)} more, which 'schematic ring-out FILE' names" : "")}."),
        };
    }

    private static ReportTable TooMany(BenchCircuit circuit) => new(
        $"Ring-out of {RingOutList.SideWords(circuit)}",
        [new("command", "How to plan it, part by part") { IsWhole = true }, new("part", "PART is one of")],
        [
            [
                $"schematic ring-out FILE --{circuit.Side.ToString().ToLowerInvariant()} --part PART",
                NameList.Compact(circuit.Accessible.Where(t => t != circuit.FrameNumber).Select(t => circuit.Terminals[t].Part).Distinct()),
            ],
        ]);
}
