using System.Collections.Immutable;

namespace Schematic.Layout.Circuits;

/// <summary>
/// Turns a decomposition the right way up: every piece begins at its upper node, and what hangs on one node alone stands beside
/// a piece that meets the same node.
/// </summary>
/// <param name="decomposition">What was found between the two nodes.</param>
/// <param name="isRail">Whether a link is a supply line or a return: nothing stands beside it.</param>
/// <param name="isUpperEnd">Whether a link is an end that wants to stand on top.</param>
internal sealed class Assembly(Decomposition decomposition, Func<int, bool> isRail, Func<int, bool> isUpperEnd)
{
    /// <summary>Everything between <paramref name="top"/> and <paramref name="bottom"/>, and the bridges, each as it was taken out.</summary>
    public (Piece? Root, ImmutableArray<Piece> Bridges) Assemble(int top, int bottom)
    {
        IEnumerable<Piece> pieces =
        [
            .. decomposition.Root is { } root ? [Whole(root)] : Array.Empty<Piece>(),
            .. HangingOn(top).Select(Hung),
            .. HangingOn(bottom).Select(h => Hung(h).Turned()),
        ];
        ImmutableArray<Piece> all = [.. pieces];
        Piece? whole = all.IsEmpty ? null : all.Length == 1 ? all[0] : new Bundle(all, top, bottom);
        return (whole, [.. decomposition.Bridges.Select(Whole)]);
    }

    private ImmutableArray<Piece> HangingOn(int node) => decomposition.Hanging.GetValueOrDefault(node, []);

    private Piece Whole(Piece piece) => piece switch
    {
        Chain chain => WholeChain(chain),
        Bundle bundle => new Bundle([.. bundle.Pieces.Select(Whole)], bundle.From, bundle.To),
        _ => piece,
    };

    /// <summary>
    /// What hangs on a node of the chain stands beside all of the chain that is below it, or above it where that is better; never
    /// beside a line.
    /// </summary>
    private Chain WholeChain(Chain chain)
    {
        var pieces = chain.Pieces.Select(Whole).ToList();
        var nodes = chain.Pieces.SkipLast(1).Select(p => p.To).ToList();
        var first = IsRail(pieces[0]) ? 1 : 0;
        for (var i = 0; i < nodes.Count; i++)
        {
            var up = HangingOn(nodes[i]).Where(h => GoesUp(h, chain.Pieces[i], chain.Pieces[i + 1])).Select(h => Hung(h).Turned()).ToList();
            if (up.Count == 0) continue;
            var above = pieces.FindIndex(p => p.To == nodes[i]);
            Replace(pieces, first, above, up);
        }

        for (var i = nodes.Count - 1; i >= 0; i--)
        {
            var down = HangingOn(nodes[i]).Where(h => !GoesUp(h, chain.Pieces[i], chain.Pieces[i + 1])).Select(Hung).ToList();
            if (down.Count == 0) continue;
            var below = pieces.FindIndex(p => p.From == nodes[i]);
            if (below >= 0) Replace(pieces, below, IsRail(pieces[^1]) ? pieces.Count - 2 : pieces.Count - 1, down);
            else if (pieces.FindIndex(p => p is Bundle && Holds(p, nodes[i])) is var within and >= 0) pieces[within] = Beside(pieces[within], nodes[i], down);
        }

        return new Chain([.. pieces]);
    }

    /// <summary>Sets more beside a run of pieces.</summary>
    private static void Replace(List<Piece> pieces, int first, int last, List<Piece> beside)
    {
        var run = pieces.GetRange(first, last - first + 1);
        pieces.RemoveRange(first, last - first + 1);
        pieces.Insert(first, Bundle.Of(run.Count == 1 ? run[0] : new Chain([.. run]), beside));
    }

    /// <summary>Whether the node lies inside a piece, between two pieces of a chain.</summary>
    private static bool Holds(Piece piece, int node) => piece switch
    {
        Chain chain => chain.Pieces.SkipLast(1).Any(p => p.To == node) || chain.Pieces.Any(p => Holds(p, node)),
        Bundle bundle => bundle.Pieces.Any(p => Holds(p, node)),
        _ => false,
    };

    /// <summary>The piece with more hanging on a node inside it.</summary>
    private static Piece Beside(Piece piece, int node, List<Piece> down)
    {
        switch (piece)
        {
            case Bundle bundle:
                return new Bundle([.. bundle.Pieces.Select(p => Holds(p, node) ? Beside(p, node, down) : p)], bundle.From, bundle.To);
            case Chain chain when chain.Pieces.ToList().FindIndex(p => p.From == node) is var below and > 0:
                var pieces = chain.Pieces.ToList();
                Replace(pieces, below, pieces.Count - 1, down);
                return new Chain([.. pieces]);
            case Chain chain:
                return new Chain([.. chain.Pieces.Select(p => Holds(p, node) ? Beside(p, node, down) : p)]);
            default:
                return piece;
        }
    }

    private bool GoesUp(Piece hung, Piece above, Piece below)
    {
        if (IsRail(above)) return false;
        return IsRail(below) || hung.Links.All(isUpperEnd);
    }

    private bool IsRail(Piece piece) => piece is OneLink single && isRail(single.Link);

    /// <summary>A piece that hangs on its first node, with all that hangs on its other nodes.</summary>
    private Piece Hung(Piece piece)
    {
        var whole = Whole(piece);
        var further = HangingOn(piece.To).Select(Hung).ToList();
        if (further.Count == 0) return whole;
        return Chain.Of(whole, further.Count == 1 ? further[0] : new Bundle([.. further], further[0].From, further[0].To));
    }
}
