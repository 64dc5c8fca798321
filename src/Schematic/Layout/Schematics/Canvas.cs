using System.Collections.Immutable;
using Schematic.Drawing;

namespace Schematic.Layout.Schematics;

/// <summary>Collects the marks of one sheet and the things that stand on it.</summary>
internal sealed class Canvas
{
    private readonly List<Mark> _marks = [];
    private readonly List<PlacedThing> _things = [];

    public void Add(Mark mark) => _marks.Add(mark);

    public void Add(IEnumerable<Mark> marks) => _marks.AddRange(marks);

    /// <summary>A conductor; no length, no mark.</summary>
    public void Wire(string owner, params ReadOnlySpan<PointMm> points)
    {
        var chain = ImmutableArray.CreateBuilder<PointMm>(points.Length);
        foreach (var point in points)
        {
            if (chain.Count == 0 || chain[^1] != point) chain.Add(point);
        }

        if (chain.Count > 1) _marks.Add(new LineMark(MarkRole.Wire, chain.ToImmutable(), Pen.Wide) { Owner = owner });
    }

    public void Dot(string owner, PointMm at) =>
        _marks.Add(new CircleMark(MarkRole.Junction, at, 0.6, null) { Fill = Ink.Black, Owner = owner });

    public void Text(
        string? owner, string text, double x, double y, double height = Metrics.NameHeight, TextAlign align = TextAlign.Start,
        bool bold = false)
    {
        if (text.Length == 0) return;
        _marks.Add(new TextMark(MarkRole.Label, text, new PointMm(x, y), height)
        {
            Owner = owner,
            Align = align,
            IsBold = bold,
            Ink = height < Metrics.NameHeight ? Ink.Quiet : Ink.Black,
        });
    }

    /// <summary>A text that names where a thing is drawn.</summary>
    public void Reference(
        string? owner, PlaceReference reference, double x, double y, double height, TextAlign align = TextAlign.Start) =>
        _marks.Add(TextMark.Referring(MarkRole.Label, reference, new PointMm(x, y), height) with
        {
            Owner = owner,
            Align = align,
            Ink = height < Metrics.NameHeight ? Ink.Quiet : Ink.Black,
        });

    /// <summary>Notes that a thing stands here.</summary>
    public void Place(Thing thing, BoxMm box) => _things.Add(new PlacedThing(thing, box));

    /// <summary>Notes that a thing stands at a point.</summary>
    public void Place(Thing thing, PointMm at) => Place(thing, new BoxMm(at.X, at.Y, at.X, at.Y));

    public void Line(MarkRole role, Pen pen, string? owner, params ReadOnlySpan<PointMm> points) =>
        _marks.Add(new LineMark(role, [.. points], pen) { Owner = owner });

    /// <summary>The sheet with everything that was drawn.</summary>
    public SheetContent Finish(string title) => new(SheetKind.Wiring, title, [.. _marks]) { Things = [.. _things] };
}
