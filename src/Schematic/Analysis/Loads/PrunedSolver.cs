using System.Collections.Immutable;
using Schematic.Analysis.Electrical;

namespace Schematic.Analysis.Loads;

/// <summary>
/// Solves a network of which much is idle. Branches that lead to a dead end carry nothing and are set aside first, one by
/// one; only what can carry current goes to <see cref="NodalSolver"/>, and the rest takes its potential from where it hangs.
/// </summary>
internal static class PrunedSolver
{
    /// <summary>Gives what <see cref="NodalSolver.Solve"/> gives for the whole network, but for leakage currents.</summary>
    public static NodalResult Solve(int nodeCount, ImmutableArray<Branch> branches)
    {
        var isIdle = new bool[branches.Length];
        var cut = CutDeadEnds(nodeCount, branches, isIdle);
        var places = new int[nodeCount];
        Array.Fill(places, -1);
        var kept = new List<Branch>();
        var keptIndex = new List<int>();
        var count = 0;
        for (var i = 0; i < branches.Length; i++)
        {
            if (isIdle[i]) continue;
            var branch = branches[i];
            keptIndex.Add(i);
            kept.Add(branch with { From = PlaceOf(branch.From), To = PlaceOf(branch.To) });
        }

        var solved = NodalSolver.Solve(count, kept);
        return Whole(nodeCount, branches, cut, solved, places, keptIndex);

        int PlaceOf(int node) => places[node] >= 0 ? places[node] : places[node] = count++;
    }

    /// <summary>The branches that lead to no dead end, by their place.</summary>
    public static ImmutableArray<int> Live(int nodeCount, ImmutableArray<Branch> branches)
    {
        var isIdle = new bool[branches.Length];
        CutDeadEnds(nodeCount, branches, isIdle);
        return [.. Enumerable.Range(0, branches.Length).Where(i => !isIdle[i])];
    }

    /// <summary>Sets aside, again and again, the only branch of a node; gives them in that order with the node that was left alone.</summary>
    private static List<(int Branch, int Leaf)> CutDeadEnds(int nodeCount, ImmutableArray<Branch> branches, bool[] isIdle)
    {
        var degree = new int[nodeCount];
        var sum = new int[nodeCount];
        for (var i = 0; i < branches.Length; i++)
        {
            var (from, to) = (branches[i].From, branches[i].To);
            if (from == to)
            {
                isIdle[i] = true;
                continue;
            }

            // The sum of the branches at a node names its last branch when only one is left.
            (degree[from], sum[from]) = (degree[from] + 1, sum[from] + i);
            (degree[to], sum[to]) = (degree[to] + 1, sum[to] + i);
        }

        var cut = new List<(int, int)>();
        var leaves = new Stack<int>(Enumerable.Range(0, nodeCount).Where(n => degree[n] == 1).Reverse());
        while (leaves.TryPop(out var leaf))
        {
            if (degree[leaf] != 1) continue;
            var branch = sum[leaf];
            var other = branches[branch].From == leaf ? branches[branch].To : branches[branch].From;
            isIdle[branch] = true;
            cut.Add((branch, leaf));
            (degree[leaf], sum[leaf]) = (0, 0);
            (degree[other], sum[other]) = (degree[other] - 1, sum[other] - branch);
            if (degree[other] == 1) leaves.Push(other);
        }

        return cut;
    }

    private static NodalResult Whole(
        int nodeCount, ImmutableArray<Branch> branches, List<(int Branch, int Leaf)> cut, NodalResult solved, int[] places, List<int> keptIndex)
    {
        var volts = new double[nodeCount];
        var island = new int[nodeCount];
        var amps = new double[branches.Length];
        var isLimited = new bool[branches.Length];
        for (var node = 0; node < nodeCount; node++)
        {
            island[node] = places[node] >= 0 ? solved.Island[places[node]] : nodeCount + node;
            if (places[node] >= 0) volts[node] = solved.Volts[places[node]];
        }

        for (var i = 0; i < keptIndex.Count; i++)
        {
            amps[keptIndex[i]] = solved.Amps[i];
            isLimited[keptIndex[i]] = solved.IsLimited[i];
        }

        for (var i = cut.Count - 1; i >= 0; i--)
        {
            var (index, leaf) = cut[i];
            var branch = branches[index];
            if (branch.Kind == BranchKind.OneWay) continue;
            var other = branch.From == leaf ? branch.To : branch.From;
            volts[leaf] = volts[other] + (branch.From == leaf ? branch.Volts : -branch.Volts);
            island[leaf] = island[other];
        }

        return new NodalResult([.. volts], [.. island], [.. amps], [.. isLimited], solved.IsSettled);
    }
}
