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
    public IEnumerable<Mark> PlacedAt(PointMm at, string owner) =>
        Marks.Select(m => m.Moved(at.X, at.Y) with { Owner = owner });
}
