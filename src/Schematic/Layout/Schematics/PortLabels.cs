using System.Globalization;
using Schematic.Drawing;
using Schematic.Fonts;

namespace Schematic.Layout.Schematics;

/// <summary>One piece of lettering above a stub.</summary>
internal sealed record LabelPiece(string Text, double Height, bool IsBold = false)
{
    public double Width => Lettering.WidthMm(Text, Height, IsBold);
}

/// <summary>What stands on the stub of a port: wire numbers with colour and gauge, the net's name, references.</summary>
internal sealed class PortLabels(CircuitMap map)
{
    private const double MaxName = 30;
    private const double StubBlank = 1;

    private readonly List<LabelPiece> _pieces = [];
    private readonly List<WireEdge> _references = [];

    /// <summary>Whether the stub ends in its references, no line going on.</summary>
    public bool EndsHere { get; set; }

    public bool IsEmpty => _pieces.Count == 0 && _references.Count == 0;

    public void AddWire(WireEdge edge)
    {
        if (edge.Wire is not { } wire)
        {
            if (edge.Remark.Length > 0 && _pieces.All(p => p.Text != edge.Remark)) _pieces.Add(new LabelPiece(edge.Remark, Metrics.QuietHeight));
            return;
        }

        var name = wire.Cable is { } cable ? $"{cable}:{wire.Core ?? "screen"}" : wire.Designator;
        _pieces.Add(new LabelPiece(Lettering.Fit(name, Metrics.NameHeight, MaxName), Metrics.NameHeight));
        var data = string.Join(' ', new[] { wire.Colour?.Code, wire.Gauge?.Text.Replace("mm2", "mm²", StringComparison.Ordinal) }.Where(t => !string.IsNullOrEmpty(t)));
        if (data.Length > 0) _pieces.Add(new LabelPiece(data, Metrics.QuietHeight));
    }

    public void AddName(string net) =>
        _pieces.Add(new LabelPiece(Lettering.Fit(net, Metrics.NameHeight, MaxName, bold: true), Metrics.NameHeight, IsBold: true));

    public void AddReference(WireEdge edge) => _references.Add(edge);

    /// <summary>Length of the stub that the labels and references need.</summary>
    public double Width
    {
        get
        {
            if (IsEmpty) return 0;
            var width = StubBlank + PiecesWidth;
            if (_references.Count == 0) return width + StubBlank;
            return width + (EndsHere ? Flags.Width(Reserve(), Metrics.NameHeight) : Flags.MarkWidth(Reserve()) + StubBlank) + StubBlank;
        }
    }

    private double PiecesWidth => _pieces.Sum(p => p.Width + Metrics.TextGap);

    /// <summary>Draws everything above the stub that leaves <paramref name="from"/>; <paramref name="way"/> is the sign of x.</summary>
    public void Draw(Canvas canvas, SheetContext context, ItemPort port, PointMm from, int way)
    {
        var x = from.X + (way * StubBlank);
        foreach (var piece in way > 0 ? _pieces : Enumerable.Reverse(_pieces))
        {
            canvas.Text(
                port.Place.ToString(), piece.Text, x, from.Y - Metrics.Rise, piece.Height, way > 0 ? TextAlign.Start : TextAlign.End, piece.IsBold);
            x += way * (piece.Width + Metrics.TextGap);
        }

        if (_references.Count == 0) return;
        foreach (var edge in _references) NotePlace(context, port, edge, new PointMm(x, from.Y));
        var owner = "ref:" + string.Join(',', _references.Select(e => e.Index.ToString(CultureInfo.InvariantCulture)));
        if (EndsHere) Flags.DrawEnd(canvas, owner, from, way, Math.Max(2, Math.Abs(x - from.X)), p => Words(p, port), Metrics.NameHeight);
        else Flags.DrawMark(canvas, owner, new PointMm(x + (way * 0.9), from.Y), p => Words(p, port), way);
    }

    private static void NotePlace(SheetContext context, ItemPort port, WireEdge edge, PointMm at)
    {
        if (context.Map.PlaceOf(edge.A) == port.Place) context.Places.Note(PlaceDirectory.KeyOf(edge, edge.A), context.SheetNumber, at);
        if (context.Map.PlaceOf(edge.B) == port.Place) context.Places.Note(PlaceDirectory.KeyOf(edge, edge.B), context.SheetNumber, at);
    }

    private string Reserve() => _references.Count == 1
        ? Longest(_references[0]) + " " + map.WidestPlace
        : (_references[0].Net ?? "") + " " + map.WidestPlace + ", " + map.WidestPlace + (_references.Count > 2 ? " …" : "");

    private static string Longest(WireEdge edge)
    {
        var (a, b) = (edge.A.ToString(), edge.B.ToString());
        return Lettering.WidthMm(a, Metrics.NameHeight) > Lettering.WidthMm(b, Metrics.NameHeight) ? a : b;
    }

    /// <summary>One reference names the terminal it goes to; several name their net.</summary>
    private string Words(PlaceDirectory places, ItemPort port)
    {
        string PlaceOf(WireEdge edge) => places.Of(PlaceDirectory.KeyOf(edge, FarEnd(edge, port)));
        if (_references.Count == 1) return $"{FarEnd(_references[0], port)} {PlaceOf(_references[0])}";
        var words = string.Join(", ", _references.Take(2).Select(PlaceOf)) + (_references.Count > 2 ? " …" : "");
        return _references[0].Net is { } net ? $"{net} {words}" : words;
    }

    private Model.TerminalId FarEnd(WireEdge edge, ItemPort port) =>
        map.PlaceOf(edge.A) == port.Place ? edge.B : edge.A;
}
