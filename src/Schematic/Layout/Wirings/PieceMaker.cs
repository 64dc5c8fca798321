using System.Collections.Immutable;
using Schematic.Layout.Shapes;

namespace Schematic.Layout.Wirings;

/// <summary>The pieces that equipment is drawn in.</summary>
/// <param name="Pieces">All pieces in order.</param>
/// <param name="Torn">Equipment that is drawn in pieces although it should not be: the sheet is too small for it.</param>
/// <param name="TooLarge">Equipment that fits on no sheet at all.</param>
internal sealed record Division(ImmutableArray<Piece> Pieces, ImmutableArray<Equipment> Torn, ImmutableArray<Equipment> TooLarge);

/// <summary>Divides what is larger than a sheet.</summary>
internal sealed class PieceMaker(WiringMap map, WiringWeights weights, double widthMm, int units)
{
    private readonly ShapeMaker _shapes = new(map, weights);
    private readonly LinkWidths _widths = new(map.Links, weights.NumbersWiresOnly);

    /// <summary>The weights that everything is measured with.</summary>
    public WiringWeights Weights => weights;

    /// <summary>What measures pieces.</summary>
    public ShapeMaker Shapes => _shapes;

    /// <summary>How wide what is written on the links is.</summary>
    public LinkWidths Widths => _widths;

    /// <summary>The pieces of everything.</summary>
    public Division Divide()
    {
        var pieces = ImmutableArray.CreateBuilder<Piece>();
        var torn = ImmutableArray.CreateBuilder<Equipment>();
        var tooLarge = ImmutableArray.CreateBuilder<Equipment>();
        foreach (var equipment in map.Equipment)
        {
            var whole = new Piece(equipment, 1, 1, 0, int.MaxValue);
            if (Fits(whole))
            {
                pieces.Add(whole);
                continue;
            }

            var cut = Cut(equipment);
            if (cut.IsEmpty || !equipment.IsDivisible) (cut.IsEmpty && (cut = CutByEnds(equipment)).IsEmpty ? tooLarge : torn).Add(equipment);
            if (cut.IsEmpty) pieces.Add(whole with { IsPlaceHolder = true });
            else pieces.AddRange(cut);
        }

        return new Division(pieces.ToImmutable(), torn.ToImmutable(), tooLarge.ToImmutable());
    }

    /// <summary>Which piece shows each end.</summary>
    public Dictionary<LinkEnd, Piece> PlacesOf(IEnumerable<Piece> pieces)
    {
        var places = new Dictionary<LinkEnd, Piece>();
        foreach (var piece in pieces)
        {
            foreach (var port in _shapes.Measure(piece, Facing.Alone).Ports)
            {
                if (port.End is { } end) places.TryAdd(end, piece);
            }
        }

        return places;
    }

    /// <summary>As much on each piece as fits, cut between blocks where that keeps it well filled; empty when something fits nowhere.</summary>
    private ImmutableArray<Piece> Cut(Equipment equipment)
    {
        var count = _shapes.CountOf(equipment);
        var cuts = new List<int> { 0 };
        while (cuts[^1] < count)
        {
            var from = cuts[^1];
            // A piece is measured as one of two, the last, so that the words above it and its notes are counted.
            bool FitsTo(int to) => Fits(new Piece(equipment, 2, 2, from, to));
            var low = from;
            var high = count;
            while (low < high)
            {
                var middle = (low + high + 1) / 2;
                if (FitsTo(middle)) low = middle;
                else high = middle - 1;
            }

            if (low == from) return [];
            var boundary = low;
            while (boundary > from && boundary < count && !_shapes.IsBoundary(equipment, boundary)) boundary--;
            cuts.Add(low < count && boundary - from >= (low - from) / 2 && boundary > from ? boundary : low);
        }

        var n = cuts.Count - 1;
        ImmutableArray<Piece> even = [.. Enumerable.Range(0, n).Select(i => new Piece(equipment, i + 1, n, count * i / n, count * (i + 1) / n))];
        return equipment is not UnitEquipment && even.All(Fits)
            ? even
            : [.. Enumerable.Range(0, n).Select(i => new Piece(equipment, i + 1, n, cuts[i], cuts[i + 1]))];
    }

    /// <summary>
    /// The last resort for a thing of few terminals with more wires than a sheet is high: some of the wires on each piece.
    /// </summary>
    private ImmutableArray<Piece> CutByEnds(Equipment equipment)
    {
        if (equipment is UnitEquipment or DeviceEquipment or GangEquipment) return [];
        var ends = equipment.Parts.SelectMany(p => p.Terminals.Select(t => p.At(t.Name))).SelectMany(map.EndsAt).ToList();
        for (var n = 2; n <= ends.Count; n++)
        {
            Piece PieceOf(int i) => new(equipment, i + 1, n, 0, int.MaxValue)
            {
                Only = ends[(ends.Count * i / n)..(ends.Count * (i + 1) / n)].ToLookup(e => e.Terminal),
            };
            ImmutableArray<Piece> pieces = [.. Enumerable.Range(0, n).Select(PieceOf).TakeWhile(Fits)];
            if (pieces.Length == n) return pieces;
        }

        return [];
    }

    private bool Fits(Piece piece)
    {
        var shape = _shapes.Measure(piece, Facing.Alone);
        if (shape.Units > units) return false;
        ImmutableArray<PlacedPort> At(Side side) => [.. shape.Ports.Where(p => p.Side == side).Select(p => new PlacedPort(p, p.Unit))];
        return WiredChannel.Of(map, _widths, [], At(Side.Left), weights).Routes.WidthMm + shape.WidthMm
            + WiredChannel.Of(map, _widths, At(Side.Right), [], weights).Routes.WidthMm <= widthMm;
    }
}
