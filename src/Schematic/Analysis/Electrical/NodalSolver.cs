using System.Collections.Immutable;

namespace Schematic.Analysis.Electrical;

/// <summary>
/// Nodal analysis of networks of resistances, sources and piecewise linear diodes. Every source has a resistance, so each
/// branch is a conductance with a current beside it and the equations stay symmetric (modified nodal analysis, Ho, Ruehli,
/// Brennan 1975, with its extra rows eliminated). Diodes and current limits are set, solved and set again until they agree.
/// </summary>
public static class NodalSolver
{
    /// <summary>The leakage of a blocking diode, in siemens: it keeps nodes between two of them defined.</summary>
    public const double LeakSiemens = 1e-8;

    private const int MostTries = 400;
    private const int TriesAllAtOnce = 20;

    /// <summary>Solves a network of nodes 0 to <paramref name="nodeCount"/> - 1.</summary>
    public static NodalResult Solve(int nodeCount, IReadOnlyList<Branch> branches)
    {
        var active = new bool[branches.Count];
        var volts = new double[nodeCount];
        var settled = false;
        for (var attempt = 0; attempt < MostTries && !settled; attempt++)
        {
            volts = SolveLinear(nodeCount, branches, active);
            settled = !Reset(branches, active, volts, oneOnly: attempt >= TriesAllAtOnce);
        }

        return new NodalResult(
            [.. volts],
            IslandsOf(nodeCount, branches, active),
            [.. branches.Select((b, i) => AmpsOf(b, active[i], volts))],
            [.. branches.Select((b, i) => b.Kind == BranchKind.Source && active[i])],
            settled);
    }

    /// <summary>
    /// Turns diodes that are in the wrong mode, and sources beyond or below their limit; false when all were right. One by
    /// one, the worst first, when turning all at once did not end.
    /// </summary>
    private static bool Reset(IReadOnlyList<Branch> branches, bool[] active, double[] volts, bool oneOnly)
    {
        var (worst, excess) = (-1, 0.0);
        var changed = false;
        for (var i = 0; i < branches.Count; i++)
        {
            var wrong = Excess(branches[i], active[i], volts);
            if (wrong <= 0) continue;
            changed = true;
            if (wrong > excess) (worst, excess) = (i, wrong);
            if (!oneOnly) active[i] = !active[i];
        }

        if (oneOnly && worst >= 0) active[worst] = !active[worst];
        return changed;
    }

    /// <summary>By how many volts a branch stands on the wrong side of the bend in its characteristic; zero when right.</summary>
    private static double Excess(Branch branch, bool active, double[] volts)
    {
        var between = volts[branch.From] - volts[branch.To];
        var beyond = branch.Kind switch
        {
            BranchKind.OneWay => between - branch.Volts,
            BranchKind.Source => branch.Volts - branch.LimitAmps * branch.Ohms - between,
            _ => double.NegativeInfinity,
        };
        const double tolerance = 1e-9;
        return Math.Max(0, (active ? -beyond : beyond) - tolerance);
    }

    private static double AmpsOf(Branch branch, bool active, double[] volts) =>
        (volts[branch.From] - volts[branch.To]) * Conductance(branch, active) - Offset(branch, active);

    private static double Conductance(Branch branch, bool active) => branch.Kind switch
    {
        BranchKind.OneWay => active ? 1 / branch.Ohms : LeakSiemens,
        BranchKind.Source => active ? 0 : 1 / branch.Ohms,
        _ => 1 / branch.Ohms,
    };

    /// <summary>The current that flows from To to From when both are at one potential.</summary>
    private static double Offset(Branch branch, bool active) => branch.Kind switch
    {
        BranchKind.OneWay => active ? branch.Volts / branch.Ohms : 0,
        BranchKind.Source => active ? branch.LimitAmps : branch.Volts / branch.Ohms,
        _ => branch.Volts / branch.Ohms,
    };

    private static double[] SolveLinear(int nodeCount, IReadOnlyList<Branch> branches, bool[] active)
    {
        var system = new ConductanceSystem(nodeCount);
        for (var i = 0; i < branches.Count; i++)
        {
            var branch = branches[i];
            if (branch.From == branch.To) continue;
            system.Add(branch.From, branch.To, Conductance(branch, active[i]), Offset(branch, active[i]));
        }

        return system.Solve();
    }

    private static ImmutableArray<int> IslandsOf(int nodeCount, IReadOnlyList<Branch> branches, bool[] active)
    {
        var sets = new DisjointSets(nodeCount);
        for (var i = 0; i < branches.Count; i++)
            if (branches[i].Kind != BranchKind.OneWay || active[i]) sets.Join(branches[i].From, branches[i].To);
        return [.. sets.Numbered(out _)];
    }
}
