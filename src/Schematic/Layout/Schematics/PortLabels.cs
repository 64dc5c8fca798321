using System.Globalization;
using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Model;

namespace Schematic.Layout.Schematics;

/// <summary>What stands on the stub of a strand: wire number with colour and gauge, the net's name, a reference.</summary>
internal sealed class PortLabels(CircuitMap map, Brevity brevity)
{
    private const double MaxName = 30;
    private const double StubBlank = 1;

    private readonly List<LabelPiece> _pieces = [];
    private WireEdge? _reference;
    private string _remark = "";

    /// <summary>The cable whose core stands here, or null.</summary>
    public string? Cable { get; private set; }

    public void AddWire(WireEdge edge)
    {
        if (edge.Wire is not { } wire)
        {
            if (edge.Remark.Length > 0) _pieces.Add(new LabelPiece(edge.Remark, Metrics.QuietHeight));
            return;
        }

        Cable = wire.Cable;
        _pieces.Add(new LabelPiece(Lettering.Fit(wire.Designator, Metrics.NameHeight, MaxName), Metrics.NameHeight));
        if (brevity >= Brevity.Numbers) return;
        var data = string.Join(' ', new[] { wire.Colour?.Code, wire.Gauge?.Text.Replace("mm2", "mm²", StringComparison.Ordinal) }.Where(t => !string.IsNullOrEmpty(t)));
        if (data.Length > 0) _pieces.Add(new LabelPiece(data, Metrics.QuietHeight));
    }

    public void AddName(string net) =>
        _pieces.Add(new LabelPiece(Lettering.Fit(net, Metrics.NameHeight, MaxName, bold: true), Metrics.NameHeight, IsBold: true));

    /// <summary>The stub ends in a reference to the edge's far end.</summary>
    public void AddReference(WireEdge edge)
    {
        AddWire(edge);
        _reference = edge;
    }

    /// <summary>A word where the stub would begin, no wire being there.</summary>
    public void AddRemark(string word) => _remark = word;

    /// <summary>Length of stub that the lettering above it needs.</summary>
    public double StubWidth => _remark.Length > 0 ? (2 * StubBlank) + Lettering.WidthMm(_remark, Metrics.QuietHeight)
        : _pieces.Count == 0 && _reference is null ? 0
        : (2 * StubBlank) + _pieces.Sum(p => p.Width + Metrics.TextGap) - (_pieces.Count > 0 ? Metrics.TextGap : 0);

    /// <summary>Room that a reference at the stub's end needs behind it.</summary>
    public double FlagWidth => _reference is null ? 0 : Flags.Width(Reserve(_reference), Metrics.NameHeight) + StubBlank;

    /// <summary>
    /// Draws everything above the stub that leaves <paramref name="from"/> and, where it ends, its reference behind
    /// <paramref name="stub"/>; <paramref name="way"/> is the sign of x.
    /// </summary>
    public void Draw(Canvas canvas, SheetContext context, ItemPort port, PointMm from, int way, double stub)
    {
        var x = from.X + (way * StubBlank);
        var align = way > 0 ? TextAlign.Start : TextAlign.End;
        canvas.Text(port.Place.ToString(), _remark, x, from.Y + (Metrics.QuietHeight / 2), Metrics.QuietHeight, align);
        foreach (var piece in way > 0 ? _pieces : Enumerable.Reverse(_pieces))
        {
            canvas.Text(port.Place.ToString(), piece.Text, x, from.Y - Metrics.Rise, piece.Height, align, piece.IsBold);
            x += way * (piece.Width + Metrics.TextGap);
        }

        if (_reference is not { } edge) return;
        NotePlace(canvas, port, edge, from.Moved(way * stub, 0));
        var owner = "ref:" + edge.Index.ToString(CultureInfo.InvariantCulture);
        Flags.DrawEnd(canvas, owner, from, way, Math.Max(2, stub), Words(port, edge), Metrics.NameHeight);
    }

    private void NotePlace(Canvas canvas, ItemPort port, WireEdge edge, PointMm at)
    {
        foreach (var end in (ReadOnlySpan<TerminalId>)[edge.A, edge.B])
        {
            if (map.PlaceOf(end) == port.Place) canvas.Place(edge.EndAt(end), at);
        }
    }

    private string Reserve(WireEdge edge) => Lettering.WidthMm(edge.A.ToString(), Metrics.NameHeight) > Lettering.WidthMm(edge.B.ToString(), Metrics.NameHeight)
        ? To(edge, edge.A).WidestText : To(edge, edge.B).WidestText;

    /// <summary>The terminal that the wire goes to, its sheet and zone.</summary>
    private PlaceReference Words(ItemPort port, WireEdge edge) => To(edge, map.PlaceOf(edge.A) == port.Place ? edge.B : edge.A);

    private PlaceReference To(WireEdge edge, TerminalId far) => new(edge.EndAt(far)) { Before = brevity == Brevity.Least ? "" : far + " " };
}
