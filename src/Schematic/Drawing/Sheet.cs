using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Drawing;

/// <summary>A finished sheet: everything that is printed on it.</summary>
/// <param name="Kind">What it shows.</param>
/// <param name="Number">Sheet number, from one.</param>
/// <param name="Title">The sheet's own title, such as "Schematic 2".</param>
/// <param name="Size">Paper.</param>
/// <param name="Marks">All marks in drawing order.</param>
public sealed record Sheet(SheetKind Kind, int Number, string Title, SheetSize Size, ImmutableArray<Mark> Marks)
{
    /// <summary>The things that stand on the sheet.</summary>
    public ImmutableArray<PlacedThing> Things { get; init; } = [];
}
