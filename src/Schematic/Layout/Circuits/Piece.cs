using System.Collections.Immutable;

namespace Schematic.Layout.Circuits;

/// <summary>A part of a circuit between two nodes, as the decomposition finds it.</summary>
/// <param name="From">The node at its upper end once the circuit is turned the right way up.</param>
/// <param name="To">The node at its lower end.</param>
internal abstract record Piece(int From, int To)
{
    /// <summary>The links of the piece, from left to right and from top to bottom.</summary>
    public abstract IEnumerable<int> Links { get; }

    /// <summary>The same piece seen from its other end.</summary>
    public abstract Piece Turned();

    /// <summary>The piece, turned if need be, so that it begins at <paramref name="node"/>.</summary>
    public Piece Beginning(int node) => From == node ? this : Turned();
}

/// <summary>One link.</summary>
internal sealed record OneLink(int Link, int From, int To) : Piece(From, To)
{
    public override IEnumerable<int> Links => [Link];

    public override Piece Turned() => new OneLink(Link, To, From);
}

/// <summary>Pieces one after the other, at least two: each begins where the one before it ends.</summary>
internal sealed record Chain(ImmutableArray<Piece> Pieces) : Piece(Pieces[0].From, Pieces[^1].To)
{
    public override IEnumerable<int> Links => Pieces.SelectMany(p => p.Links);

    public override Piece Turned() => new Chain([.. Pieces.Reverse().Select(p => p.Turned())]);

    /// <summary>Two pieces in series; chains are drawn into one.</summary>
    public static Chain Of(Piece upper, Piece lower) => new([.. Flat(upper), .. Flat(lower)]);

    private static ImmutableArray<Piece> Flat(Piece piece) => piece is Chain chain ? chain.Pieces : [piece];
}

/// <summary>
/// Pieces side by side. Those of the circuit join both nodes; one that hangs on the upper node alone, or on the lower alone,
/// has a node of its own at its free end.
/// </summary>
internal sealed record Bundle(ImmutableArray<Piece> Pieces, int From, int To) : Piece(From, To)
{
    public override IEnumerable<int> Links => Pieces.SelectMany(p => p.Links);

    public override Piece Turned() => new Bundle([.. Pieces.Select(p => p.Turned())], To, From);

    /// <summary>Pieces side by side between the ends of the first; bundles are drawn into one.</summary>
    public static Piece Of(Piece first, IEnumerable<Piece> others)
    {
        ImmutableArray<Piece> all = [.. Flat(first, first.From, first.To), .. others.SelectMany(o => Flat(o, first.From, first.To))];
        return all.Length == 1 ? all[0] : new Bundle(all, first.From, first.To);
    }

    private static ImmutableArray<Piece> Flat(Piece piece, int from, int to) =>
        piece is Bundle bundle && bundle.From == from && bundle.To == to ? bundle.Pieces : [piece];
}
