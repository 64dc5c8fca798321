using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>
/// Fills sheets one after the other: a sheet begins with what many wires end on, takes what is wired to it, first what has most of
/// its wires as lines there, and then whatever else fits, so that few sheets are printed.
/// </summary>
internal sealed class SheetFiller
{
    private readonly WiringWeights _weights;
    private readonly bool _prefersShare;
    private readonly SheetDesigner _designer;
    private readonly ImmutableArray<Piece> _pieces;
    private readonly ImmutableArray<Piece> _largestFirst;
    private readonly Dictionary<Piece, int> _places = [];
    private readonly Dictionary<Piece, Dictionary<Piece, int>> _links = [];
    private readonly ILookup<Piece, Piece> _linkedTo;
    private readonly Dictionary<Piece, PlaceHint> _hints = [];

    /// <param name="map">The panel.</param>
    /// <param name="designer">Designs sheets.</param>
    /// <param name="pieces">What is to be drawn.</param>
    /// <param name="weights">The weights.</param>
    /// <param name="prefersShare">
    /// Whether a sheet takes first what has the greatest share of its wires as lines there; else what has most wires to it.
    /// </param>
    public SheetFiller(
        WiringMap map, SheetDesigner designer, ImmutableArray<Piece> pieces, WiringWeights weights, bool prefersShare)
    {
        (_weights, _designer, _pieces, _prefersShare) = (weights, designer, pieces, prefersShare);
        _largestFirst = [.. pieces.OrderByDescending(designer.AreaOf)];
        var hints = map.Panel.PlaceHints.DistinctBy(h => h.Part).ToDictionary(h => h.Part, StringComparer.Ordinal);
        foreach (var piece in pieces)
        {
            _places[piece] = _places.Count;
            _links[piece] = designer.PartnersOf(piece).Where(p => p.Partner != piece).GroupBy(p => p.Partner).ToDictionary(g => g.Key, g => g.Count());
            if (piece.Equipment.Parts.Select(p => hints.GetValueOrDefault(p.Designator)).FirstOrDefault(h => h is not null) is { } hint) _hints[piece] = hint;
        }

        _linkedTo = pieces.SelectMany(p => _links[p].Keys.Select(o => (Piece: p, Other: o))).ToLookup(l => l.Other, l => l.Piece);
    }

    /// <summary>The sheets that hold all pieces.</summary>
    public ImmutableArray<SheetDesign> Fill()
    {
        var left = _pieces.ToList();
        var sheets = ImmutableArray.CreateBuilder<SheetDesign>();
        while (left.Count > 0)
        {
            var allowed = left.Where(p => SheetOf(p) is not { } sheet || sheet <= sheets.Count + 1).ToList();
            // Sheets that nothing else fills are not left out for the sake of a hint.
            var sheet = FillSheet(allowed.Count > 0 ? allowed : left);
            sheets.Add(sheet);
            left.RemoveAll(sheet.Arrangement.Columns.SelectMany(c => c).ToHashSet().Contains);
        }

        return sheets.ToImmutable();
    }

    private SheetDesign FillSheet(List<Piece> left)
    {
        var seed = left.Find(p => SheetOf(p) is not null) ?? left.Find(p => p.Equipment.IsTwoSided && _links[p].Values.Sum() > 3) ?? left[0];
        var design = _designer.TryDesign(Arrangement.Of(seed)) ?? throw new InvalidOperationException($"{seed.Equipment.Name} was measured to fit.");
        var rest = left.Where(p => p != seed).ToHashSet();
        var failed = new HashSet<(Piece, Piece?, int)>();
        while (Grow(design, rest, failed) is { } grown)
        {
            design = grown.Design;
            rest.Remove(grown.Piece);
        }

        return design;
    }

    /// <summary>
    /// The sheet with one more piece, or null when it is full. What did not fit once does not fit when the sheet is fuller:
    /// <paramref name="failed"/> remembers it.
    /// </summary>
    private (SheetDesign Design, Piece Piece)? Grow(SheetDesign design, HashSet<Piece> rest, HashSet<(Piece, Piece?, int)> failed)
    {
        SheetDesign? Try(Piece piece, Spot spot)
        {
            var key = (piece, spot.IsNew ? null : design.Arrangement.Columns[spot.Column][0], spot.IsNew ? Math.Sign(spot.Column) : 0);
            if (failed.Contains(key)) return null;
            var tried = _designer.TryDesign(spot.Apply(design.Arrangement, piece));
            if (tried is null) failed.Add(key);
            return tried;
        }

        var linked = design.Arrangement.Columns.SelectMany(c => c).SelectMany(p => _linkedTo[p]).Where(rest.Contains).ToHashSet();
        var related = linked.OrderBy(p => _places[p]).SelectMany(p => Spots(design.Arrangement, p).Select(s => (Piece: p, Spot: s, Gain: GainOf(design.Arrangement, p, s))))
            .Where(c => c.Gain > 0).OrderByDescending(c => c.Gain);
        var best = related.GroupBy(c => c.Piece).Take(_weights.Tries)
            .Select(g => (Piece: g.Key, Design: g.Select(c => Try(c.Piece, c.Spot)).OfType<SheetDesign>()
                .OrderByDescending(d => d.LineCount).ThenBy(d => d.WidthMm).FirstOrDefault()))
            .Where(c => c.Design is not null)
            .OrderByDescending(c => _prefersShare
                ? (double)(c.Design!.LineCount - design.LineCount) / Math.Max(1, _designer.PartnersOf(c.Piece).Length)
                : 0)
            .FirstOrDefault();
        if (best.Design is not null) return (best.Design, best.Piece);

        var tries = 0;
        var unfit = new HashSet<(double WidthMm, int Units, SheetSide? Side)>();
        foreach (var piece in _largestFirst.Where(linked.Contains).Concat(_largestFirst.Where(p => rest.Contains(p) && !linked.Contains(p))))
        {
            // Of many things of one size the first that finds no room speaks for all.
            var size = _designer.SizeOf(piece);
            var kind = (size.WidthMm, size.Units, HintOf(piece)?.Side);
            if (unfit.Contains(kind)) continue;
            var mayFit = false;
            foreach (var spot in Spots(design.Arrangement, piece))
            {
                if (!_designer.MayFit(spot.Apply(design.Arrangement, piece)) || !_designer.HasWidthFor(design, piece, spot.IsNew ? null : spot.Column)) continue;
                mayFit = true;
                if (Try(piece, spot) is { } grown) return (grown, piece);
                if (++tries >= _weights.FillTries) return null;
            }

            if (!mayFit) unfit.Add(kind);
        }

        return null;
    }

    /// <summary>Where a piece may stand: at the foot of a column, or in a new column at either end.</summary>
    private IEnumerable<Spot> Spots(Arrangement arrangement, Piece piece)
    {
        var columns = arrangement.Columns.Length;
        var side = HintOf(piece)?.Side;
        for (var i = 0; i < columns; i++)
        {
            if ((side == SheetSide.Left && i > 0) || (side == SheetSide.Right && i < columns - 1)) continue;
            yield return new Spot(i, false);
        }

        bool IsPinned(int column, SheetSide to) => arrangement.Columns[column].Any(p => HintOf(p)?.Side == to);
        if (side != SheetSide.Left && !IsPinned(columns - 1, SheetSide.Right)) yield return new Spot(columns, true);
        if (side != SheetSide.Right && !IsPinned(0, SheetSide.Left)) yield return new Spot(0, true);
    }

    /// <summary>How many of a piece's links lead to the columns beside it; of one side alone where it looks to one side alone.</summary>
    private int GainOf(Arrangement arrangement, Piece piece, Spot spot)
    {
        int To(int column) => column < 0 || column >= arrangement.Columns.Length ? 0
            : arrangement.Columns[column].Sum(p => _links[piece].GetValueOrDefault(p));
        var (before, after) = (To(spot.Column - 1), To(spot.IsNew ? spot.Column : spot.Column + 1));
        return piece.Equipment.IsTwoSided ? before + after : Math.Max(before, after);
    }

    private PlaceHint? HintOf(Piece piece) => _hints.GetValueOrDefault(piece);

    private int? SheetOf(Piece piece) => HintOf(piece)?.Sheet;

    private sealed record Spot(int Column, bool IsNew)
    {
        public Arrangement Apply(Arrangement arrangement, Piece piece) =>
            IsNew ? arrangement.WithColumn(piece, Column) : arrangement.With(piece, Column);
    }
}
