using System.Collections.Immutable;
using Schematic.Drawing;

namespace Schematic.Layout.Shapes;

/// <summary>Collects marks while a thing or a sheet is drawn; <see cref="Finish"/> freezes them.</summary>
internal sealed class Canvas
{
    private readonly ImmutableArray<Mark>.Builder _marks = ImmutableArray.CreateBuilder<Mark>();
    private readonly ImmutableArray<PlacedThing>.Builder _things = ImmutableArray.CreateBuilder<PlacedThing>();

    public void Add(Mark mark) => _marks.Add(mark);

    public void Add(IEnumerable<Mark> marks) => _marks.AddRange(marks);

    /// <summary>A conductor; no length, no mark.</summary>
    public void Wire(string owner, params ReadOnlySpan<PointMm> points) => WireOf(null, owner, points);

    /// <summary>A conductor that is that thing.</summary>
    public void WireOf(Thing? subject, string owner, params ReadOnlySpan<PointMm> points)
    {
        var chain = ImmutableArray.CreateBuilder<PointMm>(points.Length);
        foreach (var point in points)
        {
            if (chain.Count == 0 || chain[^1] != point) chain.Add(point);
        }

        if (chain.Count > 1) _marks.Add(new LineMark(MarkRole.Wire, chain.ToImmutable(), Pen.Wide) { Owner = owner, Subject = subject });
    }

    /// <summary>A stroke of a symbol.</summary>
    public void Stroke(string owner, Pen pen, params ReadOnlySpan<PointMm> points) => Line(MarkRole.Symbol, pen, owner, points);

    public void Line(MarkRole role, Pen pen, string? owner, params ReadOnlySpan<PointMm> points) =>
        _marks.Add(new LineMark(role, [.. points], pen) { Owner = owner });

    public void Box(string owner, BoxMm box, Pen pen) =>
        _marks.Add(LineMark.Rectangle(MarkRole.Symbol, box, pen) with { Owner = owner });

    public void Dot(string owner, PointMm at) =>
        _marks.Add(new CircleMark(MarkRole.Junction, at, 0.6, null) { Fill = Ink.Black, Owner = owner });

    /// <summary>A line of lettering.</summary>
    public void Text(
        string? owner, string text, double x, double y, double height = Metrics.NameHeight, TextAlign align = TextAlign.Start,
        bool bold = false, Thing? subject = null, bool quiet = false)
    {
        if (text.Length == 0) return;
        _marks.Add(new TextMark(MarkRole.Label, text, new PointMm(x, y), height)
        {
            Owner = owner,
            Align = align,
            IsBold = bold,
            Ink = quiet ? Ink.Quiet : Ink.Black,
            Subject = subject,
        });
    }

    /// <summary>Lines of quiet words in grey below each other, the first on base line <paramref name="y"/>.</summary>
    public void QuietLines(string? owner, IEnumerable<string> lines, double x, double y, TextAlign align = TextAlign.Start)
    {
        foreach (var line in lines)
        {
            Text(owner, line, x, y, Metrics.QuietHeight, align, quiet: true);
            y += Metrics.QuietStep;
        }
    }

    /// <summary>A text that names where a thing is drawn.</summary>
    public void Reference(
        string? owner, PlaceReference reference, double x, double y, double height = Metrics.NameHeight,
        TextAlign align = TextAlign.Start) =>
        _marks.Add(TextMark.Referring(MarkRole.Label, reference, new PointMm(x, y), height) with
        {
            Owner = owner,
            Align = align,
        });

    /// <summary>Notes that a thing stands here.</summary>
    public void Place(Thing thing, BoxMm box) => _things.Add(new PlacedThing(thing, box));

    /// <summary>The sheet with everything that was drawn.</summary>
    public SheetContent Finish(SheetKind kind, string title) =>
        new(kind, title, _marks.ToImmutable()) { Things = _things.ToImmutable() };
}
