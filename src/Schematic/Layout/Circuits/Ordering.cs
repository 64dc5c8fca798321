using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Layout.Circuits;

/// <summary>
/// Puts pieces side by side in the order in which a reader follows the function: supplies first, a coil before the columns of its
/// contacts, otherwise as the file has them; beside each other what shares a pole or is bridged.
/// </summary>
internal sealed class Ordering(ImmutableArray<CircuitLink> links, ImmutableArray<Piece> bridges)
{
    /// <summary>The piece with everything in it ordered. <paramref name="isRail"/> tells whether a node is a supply line or a return.</summary>
    public Piece Ordered(Piece piece, Func<int, bool> isRail) => piece switch
    {
        Chain chain => new Chain([.. chain.Pieces.Select(p => Ordered(p, isRail))]),
        Bundle bundle => new Bundle(InOrder(bundle, isRail), bundle.From, bundle.To),
        _ => piece,
    };

    private ImmutableArray<Piece> InOrder(Bundle bundle, Func<int, bool> isRail)
    {
        var pieces = bundle.Pieces.Select(p => Ordered(p, isRail)).ToList();
        var isMain = isRail(bundle.From) || isRail(bundle.To);
        pieces = isMain
            ? ByDependence([.. pieces.OrderBy(ColumnKey)])
            : [.. pieces.OrderBy(KindKey).ThenBy(ColumnKey)];
        pieces = Gathered(pieces, bundle);
        return [.. Bridged(pieces)];
    }

    private CircuitLink? LinkOf(int name) => name >= 0 ? links[name] : null;

    private IEnumerable<CircuitLink> LinksOf(Piece piece) => piece.Links.Select(LinkOf).OfType<CircuitLink>();

    /// <summary>Supplies, then columns of the circuit, then inputs of boards; within these the order of the file.</summary>
    private (int Class, int File, int Place) ColumnKey(Piece piece)
    {
        var all = LinksOf(piece).ToList();
        if (all.Count == 0) return (1, 0, 0);
        if (all.Exists(l => l.Kind == LinkKind.Source)) return (0, all.Where(l => l.Kind == LinkKind.Source).Min(l => l.FileOrder), 0);
        if (all.Exists(l => l.Kind is LinkKind.Load or LinkKind.Resistor or LinkKind.Diode))
            return (1, all.Where(l => l.Kind is LinkKind.Load or LinkKind.Resistor or LinkKind.Diode).Min(l => l.FileOrder), 0);
        var input = all.Where(l => l is { Kind: LinkKind.End, Part: Board }).Select(l => (l.FileOrder, Place: PlaceOn((Board)l.Part!, l.From.Name))).Order().FirstOrDefault();
        if (input != default) return (all.Count == 1 ? 3 : 2, input.FileOrder, input.Place);
        return (all.All(l => l.Kind == LinkKind.End) ? 4 : 1, all.Min(l => l.FileOrder), all.Min(l => l.Index));
    }

    private static int PlaceOn(Board board, string terminal)
    {
        for (var i = 0; i < board.Inputs.Length; i++)
        {
            if (board.Inputs[i].Terminal == terminal) return i + 1;
        }

        return board.Inputs.Length + 1;
    }

    /// <summary>The button before the contact that holds it, the coil before its diode, ends last.</summary>
    private LinkKind KindKey(Piece piece) => LinksOf(piece).Select(l => l.Kind).DefaultIfEmpty(LinkKind.Rail).Min();

    /// <summary>A column with a relay's contact comes behind the column with its coil, unless they wait for each other.</summary>
    private List<Piece> ByDependence(List<Piece> pieces)
    {
        var coilIn = new Dictionary<string, Piece>(StringComparer.Ordinal);
        foreach (var piece in pieces)
        {
            foreach (var coil in LinksOf(piece).Where(l => l is { Kind: LinkKind.Load, Part: Relay })) coilIn.TryAdd(coil.Part!.Designator, piece);
        }

        var needs = pieces.ToDictionary(p => p, p => LinksOf(p).Where(l => l.Kind == LinkKind.RelayContact)
            .Select(l => coilIn.GetValueOrDefault(l.Part!.Designator)).OfType<Piece>().Where(c => c != p).ToHashSet(ReferenceEqualityComparer.Instance),
            (IEqualityComparer<Piece>)ReferenceEqualityComparer.Instance);
        var ordered = new List<Piece>();
        var placed = new HashSet<object>(ReferenceEqualityComparer.Instance);
        var waiting = new LinkedList<Piece>(pieces);
        while (waiting.First is { } first)
        {
            var node = first;
            while (node is not null && !needs[node.Value].IsSubsetOf(placed)) node = node.Next;
            node ??= first;
            waiting.Remove(node);
            placed.Add(node.Value);
            ordered.Add(node.Value);
        }

        return ordered;
    }

    /// <summary>Throws of one pole that meet the same end of the bundle stand side by side, in the order of the pole.</summary>
    private List<Piece> Gathered(List<Piece> pieces, Bundle bundle)
    {
        var gathered = new List<Piece>();
        var left = new List<Piece>(pieces);
        var polesOf = pieces.ToDictionary(p => p, p => PolesAt(p, bundle).ToHashSet(), (IEqualityComparer<Piece>)ReferenceEqualityComparer.Instance);
        while (left.Count > 0)
        {
            var group = new List<Piece> { left[0] };
            left.RemoveAt(0);
            for (var i = 0; i < group.Count; i++)
            {
                var poles = polesOf[group[i]];
                if (poles.Count == 0) continue;
                var more = left.Where(p => polesOf[p].Overlaps(poles)).ToList();
                group.AddRange(more);
                if (more.Count > 0) left.RemoveAll(more.Contains);
            }

            gathered.AddRange(group.Count == 1 ? group : group.OrderBy(p => ThrowAt(p, bundle)));
        }

        return gathered;
    }

    private IEnumerable<int> PolesAt(Piece piece, Bundle bundle) => EndLinks(piece, bundle).Where(l => l.Pole is not null).Select(l => l.Pole!.Index);

    private (int Pole, int Throw) ThrowAt(Piece piece, Bundle bundle) =>
        EndLinks(piece, bundle).Where(l => l.Pole is not null).Select(l => (l.Pole!.Index, l.Throw)).DefaultIfEmpty().Min();

    /// <summary>The links of a piece whose common meets an end of the bundle.</summary>
    private IEnumerable<CircuitLink> EndLinks(Piece piece, Bundle bundle) =>
        Outer(piece, first: true).Where(l => l.FromNode == bundle.From || l.FromNode == bundle.To)
            .Concat(Outer(piece, first: false).Where(l => l.FromNode == bundle.From || l.FromNode == bundle.To)).Distinct();

    private IEnumerable<CircuitLink> Outer(Piece piece, bool first) => piece switch
    {
        OneLink single => LinkOf(single.Link) is { } link ? [link] : [],
        Chain chain => Outer(first ? chain.Pieces[0] : chain.Pieces[^1], first),
        Bundle bundle => bundle.Pieces.SelectMany(p => Outer(p, first)),
        _ => [],
    };

    /// <summary>Pieces that a bridge joins stand side by side.</summary>
    private List<Piece> Bridged(List<Piece> pieces)
    {
        if (bridges.IsEmpty || pieces.Count < 3) return pieces;
        var nodes = pieces.ToDictionary(p => p, p => InnerNodes(p).ToHashSet(), (IEqualityComparer<Piece>)ReferenceEqualityComparer.Instance);
        foreach (var bridge in bridges)
        {
            var a = pieces.FindIndex(p => nodes[p].Contains(bridge.From));
            var b = pieces.FindIndex(p => nodes[p].Contains(bridge.To));
            if (a < 0 || b < 0 || Math.Abs(a - b) < 2) continue;
            var (to, from) = (Math.Min(a, b) + 1, Math.Max(a, b));
            var moved = pieces[from];
            pieces.RemoveAt(from);
            pieces.Insert(to, moved);
        }

        return pieces;
    }

    private static IEnumerable<int> InnerNodes(Piece piece) => piece switch
    {
        Chain chain => chain.Pieces.SelectMany(InnerNodes).Concat(chain.Pieces.SkipLast(1).Select(p => p.To)),
        Bundle bundle => bundle.Pieces.SelectMany(InnerNodes),
        _ => [],
    };
}
