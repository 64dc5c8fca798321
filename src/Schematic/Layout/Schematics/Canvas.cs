using System.Collections.Immutable;
using Schematic.Drawing;

namespace Schematic.Layout.Schematics;

/// <summary>Collects the marks of one sheet. Texts that name places on other sheets are filled in when all are placed.</summary>
internal sealed class Canvas
{
    private readonly List<Mark> _marks = [];
    private readonly List<(int Index, Func<PlaceDirectory, string> Text)> _late = [];

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

    /// <summary>A text that is known only when every sheet is placed.</summary>
    public void LateText(
        string? owner, Func<PlaceDirectory, string> text, double x, double y, double height, TextAlign align = TextAlign.Start)
    {
        _late.Add((_marks.Count, text));
        Text(owner, "?", x, y, height, align);
    }

    public void Line(MarkRole role, Pen pen, string? owner, params ReadOnlySpan<PointMm> points) =>
        _marks.Add(new LineMark(role, [.. points], pen) { Owner = owner });

    /// <summary>The finished marks.</summary>
    public ImmutableArray<Mark> Finish(PlaceDirectory places)
    {
        foreach (var (index, text) in _late) _marks[index] = (TextMark)_marks[index] with { Text = text(places) };
        return [.. _marks.Where(m => m is not TextMark { Text.Length: 0 })];
    }
}
