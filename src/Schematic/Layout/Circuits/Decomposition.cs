using System.Collections.Immutable;

namespace Schematic.Layout.Circuits;

/// <summary>A link of the graph that is decomposed: its name and the nodes at its ends.</summary>
internal readonly record struct GraphLink(int Name, int A, int B);

/// <summary>
/// A circuit between two nodes taken apart into pieces in series and side by side (the idea of Valdes, Tarjan and Lawler, 1982:
/// reduce as long as two links are in series or side by side).
/// </summary>
/// <param name="Root">What lies between the two nodes, or null when nothing joins them.</param>
/// <param name="Hanging">What hangs on one node alone, by that node: each piece begins there and ends at a node of its own.</param>
/// <param name="Bridges">What had to be taken out because the rest is neither in series nor side by side, in the order of taking.</param>
internal sealed record Decomposition(Piece? Root, ImmutableSortedDictionary<int, ImmutableArray<Piece>> Hanging, ImmutableArray<Piece> Bridges)
{
    /// <summary>Whether nothing had to be taken out.</summary>
    public bool IsSeriesParallel => Bridges.IsEmpty;

    /// <summary>
    /// Takes the links apart between <paramref name="top"/> and <paramref name="bottom"/>. Links of which both ends are one node
    /// are not allowed, nor are parts of the graph that hang on neither.
    /// </summary>
    /// <param name="links">The links.</param>
    /// <param name="top">The node where it begins.</param>
    /// <param name="bottom">The node where it ends; another one.</param>
    /// <param name="mayBridge">Which links may be taken out when no other way is left; the least wanted are taken first.</param>
    /// <param name="isLine">Which nodes are supply lines or returns: a bridge rather joins two columns than a column and a line.</param>
    public static Decomposition Of(IEnumerable<GraphLink> links, int top, int bottom, Func<int, bool> mayBridge, Func<int, bool> isLine)
    {
        var reduction = new Reduction(links, top, bottom);
        reduction.Run();
        var bridges = ImmutableArray.CreateBuilder<Piece>();
        while (reduction.IsStuck)
        {
            bridges.Add(reduction.TakeOut(mayBridge, isLine));
            reduction.Run();
        }

        return reduction.Result(bridges.ToImmutable());
    }
}
