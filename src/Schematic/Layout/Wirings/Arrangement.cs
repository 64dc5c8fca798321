using System.Collections.Immutable;

namespace Schematic.Layout.Wirings;

/// <summary>Which pieces stand on a sheet, by columns from left to right.</summary>
internal sealed record Arrangement(ImmutableArray<ImmutableArray<Piece>> Columns)
{
    /// <summary>A sheet with one piece.</summary>
    public static Arrangement Of(Piece piece) => new([[piece]]);

    /// <summary>The arrangement with a piece at the foot of a column.</summary>
    public Arrangement With(Piece piece, int column) => new(Columns.SetItem(column, Columns[column].Add(piece)));

    /// <summary>The arrangement with a piece in a new column before column <paramref name="index"/>.</summary>
    public Arrangement WithColumn(Piece piece, int index) => new(Columns.Insert(index, [piece]));
}

/// <summary>A shape in its place: column and height, in units from the top of the drawing space.</summary>
internal sealed record PlacedShape(Shape Shape, int Column, int Unit);

/// <summary>The end of a link where it leaves a shape, in units from the top of the drawing space.</summary>
internal sealed record PlacedPort(Port Port, int Unit);
