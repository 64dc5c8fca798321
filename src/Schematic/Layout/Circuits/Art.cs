using System.Collections.Immutable;
using Schematic.Drawing;

namespace Schematic.Layout.Circuits;

/// <summary>Something measured and drawn around its own origin, which lies on the column's line.</summary>
/// <param name="Marks">The marks.</param>
/// <param name="Height">Its length along the column, in millimetres.</param>
internal sealed record Art(ImmutableArray<Mark> Marks, double Height)
{
    /// <summary>Things that references may name, with the box of each one's symbol.</summary>
    public ImmutableArray<PlacedThing> Things { get; init; } = [];

    /// <summary>Where its lower conductor meets it; the words beside a symbol may reach further down.</summary>
    public double LowerPort { get; init; } = Height;

    /// <summary>The boxes of its marks, for keeping columns apart.</summary>
    public ImmutableArray<BoxMm> Boxes { get; } = [.. Marks.Select(m => m.Bounds)];

    /// <summary>The marks at their place.</summary>
    public IEnumerable<Mark> At(double x, double y) => Marks.Select(m => m.Moved(x, y));

    /// <summary>The things at their place.</summary>
    public IEnumerable<PlacedThing> ThingsAt(double x, double y) => Things.Select(t => t with { Box = t.Box.Moved(x, y) });
}

/// <summary>Art while it is drawn.</summary>
internal sealed class ArtDrawing(CircuitMeasures measures)
{
    private readonly ImmutableArray<Mark>.Builder _marks = ImmutableArray.CreateBuilder<Mark>();

    public ArtDrawing Add(Mark mark)
    {
        _marks.Add(mark);
        return this;
    }

    /// <summary>A piece of conductor; no length, no mark.</summary>
    public ArtDrawing Wire(string owner, params ReadOnlySpan<PointMm> points) => WireOf(null, owner, points);

    /// <summary>A piece of conductor that is that thing.</summary>
    public ArtDrawing WireOf(Thing? subject, string owner, params ReadOnlySpan<PointMm> points)
    {
        var chain = ImmutableArray.CreateBuilder<PointMm>(points.Length);
        foreach (var point in points)
        {
            if (chain.Count == 0 || Math.Abs(chain[^1].X - point.X) + Math.Abs(chain[^1].Y - point.Y) > 1e-9) chain.Add(point);
        }

        return chain.Count < 2 ? this : Add(new LineMark(MarkRole.Wire, chain.ToImmutable(), Pen.Wide) { Owner = owner, Subject = subject });
    }

    /// <summary>A name: 2.5 mm, black.</summary>
    public ArtDrawing Name(string owner, string text, double x, double y, TextAlign align = TextAlign.Start, bool bold = false, Thing? subject = null) =>
        Text(owner, text, x, y, measures.Name, Ink.Black, align, bold, subject);

    /// <summary>The name of a terminal.</summary>
    public ArtDrawing Name(Model.TerminalId terminal, string text, double x, double y, TextAlign align) =>
        Name(terminal.ToString(), text, x, y, align, subject: Thing.Terminal(terminal.ToString()));

    /// <summary>Small lettering: ratings and descriptions.</summary>
    public ArtDrawing Small(string owner, string text, double x, double y, TextAlign align = TextAlign.Start) =>
        Text(owner, text, x, y, measures.Small, Ink.Quiet, align, bold: false, null);

    /// <summary>Small lettering in black: words that a reader of the function needs.</summary>
    public ArtDrawing Words(string owner, string text, double x, double y, TextAlign align = TextAlign.Start) =>
        Text(owner, text, x, y, measures.Small, Ink.Black, align, bold: false, null);

    /// <summary>Words and the sheet and zone of the thing that they refer to.</summary>
    public ArtDrawing Refer(string owner, string words, Thing target, double x, double y, TextAlign align = TextAlign.Start) =>
        Add(TextMark.Referring(MarkRole.Label, new PlaceReference(target) { Before = words.Length == 0 ? "" : words + " ", On = SheetKind.Circuit }, new PointMm(x, y), measures.Small) with
        {
            Owner = owner,
            Align = align,
        });

    public Art Done(double height) => new(_marks.ToImmutable(), height);

    private ArtDrawing Text(string owner, string text, double x, double y, double height, Ink ink, TextAlign align, bool bold, Thing? subject) =>
        text.Length == 0 ? this : Add(new TextMark(MarkRole.Label, text, new PointMm(x, y), height)
        {
            Owner = owner, Align = align, IsBold = bold, Ink = ink, Subject = subject,
        });
}
