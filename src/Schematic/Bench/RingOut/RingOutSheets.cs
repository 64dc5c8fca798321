using System.Collections.Immutable;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Bench.RingOut;

/// <summary>The ring-out lists of the pack: of the unit as it was found and of the harness that is built, each where there is one.</summary>
public static class RingOutSheets
{
    /// <summary>With more contacts than this a ring-out is planned part by part, on the command line.</summary>
    private const int MostContacts = 200;

    /// <summary>The tables; what reads alike is left to the command line, to keep paper.</summary>
    public static ImmutableArray<ReportTable> Build(Panel panel)
    {
        var tables = ImmutableArray.CreateBuilder<ReportTable>();
        foreach (var side in SidesOf(panel))
        {
            var circuit = BenchCircuit.Read(panel, side);
            if (circuit.Accessible.Length < 2) continue;
            if (circuit.Accessible.Length > MostContacts)
            {
                tables.Add(TooMany(circuit));
                continue;
            }

            var plan = RingOutPlanner.Plan(circuit);
            if (plan.Steps.IsEmpty) continue;
            tables.Add(RingOutList.Before(plan));
            tables.Add(WithHidden(plan));
        }

        return tables.ToImmutable();
    }

    private static IEnumerable<BenchSide> SidesOf(Panel panel)
    {
        if (BenchCut.UnitConnectors(panel).Count > 0) yield return BenchSide.Unit;
        if (!panel.Wires.IsEmpty || !panel.Nets.IsEmpty) yield return BenchSide.Harness;
    }

    private static ReportTable WithHidden(RingOutPlan plan)
    {
        var table = RingOutList.Steps(plan);
        return plan.Hidden.IsEmpty ? table : table with
        {
            Notes = table.Notes.Add($"No measurement at these contacts shows it when {string.Join("; when ", plan.Hidden.Take(8).Select(f => f.Words))}{(plan.Hidden.Length > 8 ? "; and more" : "")}."),
        };
    }

    private static ReportTable TooMany(BenchCircuit circuit) => new(
        $"Ring-out of {RingOutList.SideWords(circuit)}",
        [new("part", "Part"), new("command", "How to plan its ring-out")],
        [
            .. circuit.Accessible.Where(t => t != circuit.FrameNumber).Select(t => circuit.Terminals[t].Part).Distinct()
                .Select(p => ImmutableArray.Create(p, $"schematic ring-out FILE --{circuit.Side.ToString().ToLowerInvariant()} --part {p}")),
        ]);
}
