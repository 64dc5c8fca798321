using System.Collections.Immutable;
using System.Text;
using Schematic.Layout.Shapes;

namespace Schematic.Layout.Wirings;

/// <summary>Designs a sheet from an arrangement: things turn to their partners, are measured, put at their heights and wired.</summary>
internal sealed class SheetDesigner
{
    private readonly WiringMap _map;
    private readonly ShapeMaker _shapes;
    private readonly LinkWidths _widths;
    private readonly double _widthMm;
    private readonly int _units;
    private readonly WiringWeights _weights;
    private readonly Dictionary<Piece, ImmutableArray<(LinkEnd End, Piece Partner)>> _partners;
    private readonly Dictionary<Piece, Shape> _alone;
    private readonly Dictionary<(Piece Piece, Side Front, Side? Loose, string Sides), Shape> _measured = [];
    private readonly Dictionary<Piece, int> _places;
    private readonly Dictionary<string, SheetDesign?>? _designs;

    /// <param name="map">The panel.</param>
    /// <param name="maker">What made the pieces: how they are measured.</param>
    /// <param name="pieces">All pieces.</param>
    /// <param name="widthMm">Width of the drawing space.</param>
    /// <param name="units">Height of the drawing space.</param>
    /// <param name="isAskedTwice">Whether sheets are filled in two ways, of which the second tries much of the first again: designs are kept.</param>
    public SheetDesigner(WiringMap map, PieceMaker maker, ImmutableArray<Piece> pieces, double widthMm, int units, bool isAskedTwice)
    {
        _places = pieces.Select((p, i) => (p, i)).ToDictionary(p => p.p, p => p.i);
        _designs = isAskedTwice ? [] : null;
        (_map, _shapes, _widths, _widthMm, _units, _weights) = (map, maker.Shapes, maker.Widths, widthMm, units, maker.Weights);
        var pieceOf = maker.PlacesOf(pieces);
        _alone = pieces.ToDictionary(p => p, p => _shapes.Measure(p, Facing.Alone));
        _partners = pieces.ToDictionary(p => p, p => _alone[p].Ports.Where(o => o.End is { Link.B: not null })
            .Select(o => (End: o.End!.Value, Partner: pieceOf.GetValueOrDefault(o.End.Value.Other)!)).Where(o => o.Partner is not null).ToImmutableArray());
    }

    /// <summary>The ends of a piece with the pieces that their links lead to.</summary>
    public ImmutableArray<(LinkEnd End, Piece Partner)> PartnersOf(Piece piece) => _partners[piece];

    /// <summary>How much of a sheet a piece covers as it stands alone, in square millimetres.</summary>
    public double AreaOf(Piece piece) => _alone[piece].WidthMm * _alone[piece].Units * Metrics.Unit;

    /// <summary>Width and height of a piece as it stands alone: what <see cref="MayFit"/> and <see cref="HasWidthFor"/> ask of it.</summary>
    public (double WidthMm, int Units) SizeOf(Piece piece) => (_alone[piece].WidthMm, _alone[piece].Units);

    /// <summary>Whether the arrangement can fit at all: heights of things as they stand alone, widths without channels.</summary>
    public bool MayFit(Arrangement arrangement) =>
        arrangement.Columns.All(c => c.Sum(p => _alone[p].Units + _weights.Gap) - _weights.Gap <= _units)
        && arrangement.Columns.Sum(c => c.Max(p => _alone[p].WidthMm)) + ((arrangement.Columns.Length - 1) * _weights.LeastChannelMm) <= _widthMm;

    /// <summary>Whether a sheet has width left for an unrelated piece, in a column or in a new one with its flags.</summary>
    public bool HasWidthFor(SheetDesign design, Piece piece, int? column) => design.WidthMm + (column is { } i
        ? Math.Max(0, _alone[piece].WidthMm - design.ColumnMm[i])
        : _alone[piece].WidthMm + _weights.LeastChannelMm) <= _widthMm;

    /// <summary>The sheet, or null when the arrangement does not fit on it.</summary>
    public SheetDesign? TryDesign(Arrangement arrangement)
    {
        if (!MayFit(arrangement)) return null;
        if (_designs is null) return DesignAnyhow(arrangement);
        var key = KeyOf(arrangement);
        return _designs.TryGetValue(key, out var known) ? known : _designs[key] = DesignAnyhow(arrangement);
    }

    /// <summary>The places of the pieces, column by column.</summary>
    private string KeyOf(Arrangement arrangement)
    {
        var key = new StringBuilder();
        foreach (var column in arrangement.Columns)
        {
            foreach (var piece in column) key.Append((char)_places[piece]);
            key.Append(char.MaxValue);
        }

        return key.ToString();
    }

    private SheetDesign? DesignAnyhow(Arrangement arrangement)
    {
        foreach (var loose in (ReadOnlySpan<LooseSide>)[LooseSide.Inner, LooseSide.Outer, LooseSide.Both])
        {
            if (Design(arrangement, loose) is { } design) return design;
        }

        return null;
    }

    private SheetDesign? Design(Arrangement arrangement, LooseSide loose)
    {
        var columnOf = new Dictionary<Piece, int>();
        for (var i = 0; i < arrangement.Columns.Length; i++)
        {
            foreach (var piece in arrangement.Columns[i]) columnOf[piece] = i;
        }

        var count = arrangement.Columns.Length;
        var fronts = columnOf.ToDictionary(p => p.Key, p => FrontOf(p.Key, p.Value, columnOf, loose, count));
        var measured = columnOf.ToDictionary(p => p.Key, p => Measure(p.Key, columnOf, fronts, loose, count));
        foreach (var column in arrangement.Columns)
        {
            if (column.Sum(p => measured[p].Units + _weights.Gap) - _weights.Gap > _units) return null;
        }

        var placed = new HeightPlacer(_units, _weights).Place([.. arrangement.Columns.Select(c => c.Select(p => measured[p]).ToImmutableArray())]);
        ImmutableArray<double> columns = [.. arrangement.Columns.Select(c => c.Max(p => measured[p].WidthMm))];
        var channels = ImmutableArray.CreateBuilder<WiredChannel>();
        var width = columns.Sum();
        for (var i = 0; i <= columns.Length && width <= _widthMm; i++)
        {
            channels.Add(WiredChannel.Of(_map, _widths, PortsOf(placed, i - 1, Side.Right), PortsOf(placed, i, Side.Left), _weights));
            width += channels[^1].Routes.WidthMm;
        }

        if (width > _widthMm) return null;
        return new SheetDesign(arrangement, placed, columns, channels.ToImmutable());
    }

    private static ImmutableArray<PlacedPort> PortsOf(ImmutableArray<PlacedShape> placed, int column, Side side) =>
        [.. placed.Where(s => s.Column == column).SelectMany(s => s.Shape.Ports.Where(p => p.Side == side).Select(p => new PlacedPort(p, s.Unit + p.Unit)))];

    /// <summary>A one-sided thing looks to the column with more of its partners.</summary>
    private Side FrontOf(Piece piece, int column, Dictionary<Piece, int> columnOf, LooseSide loose, int columns)
    {
        var way = 0;
        foreach (var (_, partner) in _partners[piece])
        {
            if (columnOf.TryGetValue(partner, out var there) && Math.Abs(there - column) == 1) way += there - column;
        }

        if (way != 0) return way > 0 ? Side.Right : Side.Left;
        var inner = InnerSide(column, columns);
        return loose == LooseSide.Inner ? inner : inner.Other();
    }

    private Shape Measure(Piece piece, Dictionary<Piece, int> columnOf, Dictionary<Piece, Side> fronts, LooseSide loose, int columns)
    {
        var column = columnOf[piece];
        var partners = _partners[piece];
        // The same piece with the same sides has the same shape: most of a sheet stands as it did when the next thing is tried.
        Span<char> signature = stackalloc char[partners.Length];
        for (var i = 0; i < partners.Length; i++)
        {
            signature[i] = Wanted(partners[i].Partner) switch { Side.Left => 'l', Side.Right => 'r', _ => '-' };
        }

        var inner = InnerSide(column, columns);
        Side? looseSide = loose switch { LooseSide.Inner => inner, LooseSide.Outer => inner.Other(), _ => null };
        var key = (piece, fronts[piece], looseSide, signature.ToString());
        if (_measured.TryGetValue(key, out var known)) return known;
        var sides = ImmutableDictionary.CreateBuilder<LinkEnd, Side>();
        for (var i = 0; i < partners.Length; i++)
        {
            if (signature[i] != '-') sides[partners[i].End] = signature[i] == 'l' ? Side.Left : Side.Right;
        }

        return _measured[key] = _shapes.Measure(piece, new Facing(fronts[piece], looseSide, sides.ToImmutable()));

        Side? Wanted(Piece partner) => !columnOf.TryGetValue(partner, out var there) ? null : (there - column) switch
        {
            1 when partner.Equipment.IsTwoSided || fronts[partner] == Side.Left => Side.Right,
            -1 when partner.Equipment.IsTwoSided || fronts[partner] == Side.Right => Side.Left,
            0 when partner != piece && !partner.Equipment.IsTwoSided => fronts[partner],
            _ => null,
        };
    }

    private static Side InnerSide(int column, int columns) => column == columns - 1 && columns > 1 ? Side.Left : Side.Right;

    private enum LooseSide
    {
        Inner,
        Outer,
        Both,
    }
}
