using System.Collections.Immutable;
using Schematic.Drawing;

namespace Schematic.Symbols;

/// <summary>A symbol while it is drawn: strokes are added one by one, then <see cref="Done"/> freezes it.</summary>
internal sealed class SymbolDrawing(SymbolKind kind)
{
    /// <summary>Radius of a small open circle that stands for a contact point, in millimetres.</summary>
    public const double PointRadius = 0.6;

    private readonly ImmutableArray<Mark>.Builder _marks = ImmutableArray.CreateBuilder<Mark>();
    private readonly ImmutableArray<SymbolPort>.Builder _ports = ImmutableArray.CreateBuilder<SymbolPort>();

    public SymbolDrawing Port(string name, double x, double y, PortSide side)
    {
        _ports.Add(new SymbolPort(name, new PointMm(x, y), side));
        return this;
    }

    /// <summary>A port on the left at the origin and one on the right at <paramref name="width"/>.</summary>
    public SymbolDrawing InLine(string left, string right, double width = 10) =>
        Port(left, 0, 0, PortSide.Left).Port(right, width, 0, PortSide.Right);

    /// <summary>A chain of straight strokes through the points x, y, x, y …</summary>
    public SymbolDrawing Line(params ReadOnlySpan<double> xy) => Add(Chain(xy, Pen.Wide));

    /// <summary>As <see cref="Line"/>, in the narrow line, for details.</summary>
    public SymbolDrawing Fine(params ReadOnlySpan<double> xy) => Add(Chain(xy, Pen.Narrow));

    /// <summary>As <see cref="Line"/>, closed.</summary>
    public SymbolDrawing Outline(params ReadOnlySpan<double> xy) => Add(Chain(xy, Pen.Wide) with { IsClosed = true });

    /// <summary>A filled area.</summary>
    public SymbolDrawing Filled(params ReadOnlySpan<double> xy) =>
        Add(Chain(xy, Pen.Narrow) with { IsClosed = true, Fill = Ink.Black });

    public SymbolDrawing Box(double left, double top, double right, double bottom) =>
        Add(LineMark.Rectangle(MarkRole.Symbol, new BoxMm(left, top, right, bottom), Pen.Wide));

    public SymbolDrawing Circle(double x, double y, double radius) =>
        Add(new CircleMark(MarkRole.Symbol, new PointMm(x, y), radius, Pen.Wide));

    /// <summary>A contact point: a small circle that covers the end of the line under it.</summary>
    public SymbolDrawing ContactPoint(double x, double y, double radius = PointRadius) =>
        Add(new CircleMark(MarkRole.Symbol, new PointMm(x, y), radius, Pen.Wide) { Fill = Ink.White });

    public SymbolDrawing Dot(double x, double y, double radius) =>
        Add(new CircleMark(MarkRole.Symbol, new PointMm(x, y), radius, Pen.Narrow) { Fill = Ink.Black });

    public SymbolDrawing Arc(double x, double y, double radius, double startDegrees, double sweepDegrees) =>
        Add(new ArcMark(MarkRole.Symbol, new PointMm(x, y), radius, startDegrees, sweepDegrees, Pen.Wide));

    /// <summary>A letter whose middle stands at (x, y).</summary>
    public SymbolDrawing Letter(string text, double x, double y, double height = 2.5) =>
        Add(new TextMark(MarkRole.Symbol, text, new PointMm(x, y + (height / 2)), height) { Align = TextAlign.Middle });

    public Symbol Done() => new(kind, _marks.ToImmutable(), _ports.ToImmutable());

    private SymbolDrawing Add(Mark mark)
    {
        _marks.Add(mark);
        return this;
    }

    private static LineMark Chain(ReadOnlySpan<double> xy, Pen pen)
    {
        var points = ImmutableArray.CreateBuilder<PointMm>(xy.Length / 2);
        for (var i = 0; i + 1 < xy.Length; i += 2) points.Add(new PointMm(xy[i], xy[i + 1]));
        return new LineMark(MarkRole.Symbol, points.MoveToImmutable(), pen);
    }
}
