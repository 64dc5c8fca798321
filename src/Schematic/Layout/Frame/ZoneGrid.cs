using System.Collections.Immutable;
using System.Globalization;
using Schematic.Drawing;
using Schematic.Model;

namespace Schematic.Layout.Frame;

/// <summary>
/// The reference zones of a sheet: letters for rows, numbers for columns. ISO sheets count from the upper left in fields of
/// 50 mm from the centring marks, the outer fields taking the remainder (ISO 5457:1999). Letter and Tabloid count from the
/// lower right in an even number of equal fields (habit of ASME Y14.1, from memory).
/// </summary>
internal sealed class ZoneGrid
{
    /// <summary>Length of a field on ISO sheets in millimetres.</summary>
    public const double FieldMm = 50;

    private const string Letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";

    private readonly bool _fromLowerRight;

    public ZoneGrid(SheetSize size, BoxMm frame)
    {
        _fromLowerRight = !IsIso(size);
        ColumnEdges = EdgesOf(size.WidthMm, frame.Left, frame.Right);
        RowEdges = EdgesOf(size.HeightMm, frame.Top, frame.Bottom);
    }

    /// <summary>Where columns begin and end, from left to right, in millimetres.</summary>
    public ImmutableArray<double> ColumnEdges { get; }

    /// <summary>Where rows begin and end, from the top down, in millimetres.</summary>
    public ImmutableArray<double> RowEdges { get; }

    /// <summary>Whether the sheet is one of ISO 5457.</summary>
    public static bool IsIso(SheetSize size) => size.Name is "A4" or "A3" or "A2" or "A1" or "A0";

    /// <summary>What a column is called, counted from the left from zero.</summary>
    public string ColumnName(int index) =>
        (_fromLowerRight ? ColumnEdges.Length - 1 - index : index + 1).ToString(CultureInfo.InvariantCulture);

    /// <summary>What a row is called, counted from the top from zero.</summary>
    public string RowName(int index) => Letters[_fromLowerRight ? RowEdges.Length - 2 - index : index].ToString();

    /// <summary>The zone a point lies in, such as <c>B3</c>; a point outside the frame belongs to the nearest.</summary>
    public string At(PointMm point) => RowName(FieldOf(RowEdges, point.Y)) + ColumnName(FieldOf(ColumnEdges, point.X));

    private ImmutableArray<double> EdgesOf(double sheet, double from, double to)
    {
        var half = (int)Math.Round(sheet / 2 / FieldMm, MidpointRounding.AwayFromZero);
        var edges = ImmutableArray.CreateBuilder<double>((2 * half) + 1);
        edges.Add(from);
        for (var i = 1 - half; i < half; i++)
        {
            edges.Add(_fromLowerRight ? from + ((to - from) * (i + half) / (2 * half)) : (sheet / 2) + (i * FieldMm));
        }

        edges.Add(to);
        return edges.MoveToImmutable();
    }

    private static int FieldOf(ImmutableArray<double> edges, double at)
    {
        var field = 0;
        while (field < edges.Length - 2 && at >= edges[field + 1]) field++;
        return field;
    }
}
