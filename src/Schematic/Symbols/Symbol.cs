using System.Collections.Immutable;
using Schematic.Drawing;

namespace Schematic.Symbols;

/// <summary>
/// A graphic symbol around its own origin: its first port lies at (0, 0) and it extends to the right, or down from it.
/// </summary>
/// <param name="Kind">Which symbol.</param>
/// <param name="Marks">Lines, circles and letters, all with the role Symbol.</param>
/// <param name="Ports">Where conductors meet it.</param>
public sealed record Symbol(SymbolKind Kind, ImmutableArray<Mark> Marks, ImmutableArray<SymbolPort> Ports)
{
    /// <summary>The smallest box around all marks and ports.</summary>
    public BoxMm Bounds { get; } = Marks.Select(m => m.Bounds)
        .Concat(Ports.Select(p => new BoxMm(p.At.X, p.At.Y, p.At.X, p.At.Y)))
        .Aggregate((a, b) => a.Union(b));

    /// <summary>The port of that name.</summary>
    public SymbolPort Port(string name) => Ports.First(p => p.Name == name);

    /// <summary>The marks with their origin moved to <paramref name="at"/>, owned by <paramref name="owner"/>.</summary>
    public IEnumerable<Mark> PlacedAt(PointMm at, string owner, DrawnPole? pole = null) =>
        Marks.Select(m => m.Moved(at.X, at.Y) with { Owner = owner, Pole = pole });

    /// <summary>The contact set that it shows, its throws meeting the ports named.</summary>
    public DrawnPole PoleOf(string common, IEnumerable<(string Terminal, string Port)> throws) =>
        new(common, [.. throws.Select(t => new DrawnThrow(t.Terminal, Port(t.Port).At))]);

    /// <summary>The same symbol seen in a mirror: left and right change places; letters stay readable.</summary>
    public Symbol Mirrored() => Changed(
        p => new PointMm(-p.X, p.Y),
        a => a with { StartDegrees = 180 - a.StartDegrees, SweepDegrees = -a.SweepDegrees },
        side => side switch { PortSide.Left => PortSide.Right, PortSide.Right => PortSide.Left, _ => side });

    /// <summary>The same symbol turned a quarter clockwise: what was left is on top; letters stay upright.</summary>
    public Symbol Turned() => Changed(
        p => new PointMm(-p.Y, p.X),
        a => a with { StartDegrees = a.StartDegrees + 90 },
        side => side switch
        {
            PortSide.Left => PortSide.Top,
            PortSide.Top => PortSide.Right,
            PortSide.Right => PortSide.Bottom,
            _ => PortSide.Left,
        });

    private Symbol Changed(Func<PointMm, PointMm> place, Func<ArcMark, ArcMark> sweep, Func<PortSide, PortSide> side)
    {
        Mark Change(Mark mark) => mark switch
        {
            LineMark line => line with { Points = [.. line.Points.Select(place)] },
            CircleMark circle => circle with { Centre = place(circle.Centre) },
            ArcMark arc => sweep(arc with { Centre = place(arc.Centre) }),
            TextMark text => text with { Anchor = place(text.Anchor.Moved(0, -text.HeightMm / 2)).Moved(0, text.HeightMm / 2) },
            _ => mark,
        };
        return new Symbol(
            Kind, [.. Marks.Select(Change)], [.. Ports.Select(p => p with { At = place(p.At), Side = side(p.Side) })]);
    }
}
