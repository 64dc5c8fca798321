using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Reports;

namespace Schematic.Layout.Tables;

/// <summary>
/// Signs that a table may hold in place of a text and that the typeface lacks: they are drawn. ☐ is a box to tick, several
/// stand side by side, ● a closed contact, ○ an open one.
/// </summary>
internal static class CellSign
{
    /// <summary>Side of a box to tick in millimetres: a pencil finds it.</summary>
    public const double BoxMm = 4;

    /// <summary>A line to write on.</summary>
    public const string Blank = "▁";

    /// <summary>A line for a figure.</summary>
    public const string ShortBlank = "▂";

    private const double BlankMm = 32;
    private const double ShortBlankMm = 11;
    private const double BoxGapMm = 1;
    private const double DotMm = TableRow.Lettering;

    /// <summary>Width in millimetres of the signs, or null where the text is none.</summary>
    public static double? WidthOf(ReadOnlySpan<char> text) => text switch
    {
        "●" or "○" => DotMm,
        Blank => BlankMm,
        ShortBlank => ShortBlankMm,
        _ when text.Length > 0 && !text.ContainsAnyExcept('☐') => (text.Length * (BoxMm + BoxGapMm)) - BoxGapMm,
        _ => null,
    };

    /// <summary>The signs with their edge or middle at the anchor, or none where the text is no sign.</summary>
    /// <param name="text">The cell's text.</param>
    /// <param name="align">How the column stands.</param>
    /// <param name="anchor">The column's edge or middle.</param>
    /// <param name="middle">The middle of the line's letters.</param>
    public static ImmutableArray<Mark> Of(string text, ColumnAlign align, double anchor, double middle)
    {
        if (WidthOf(text) is not { } width) return [];
        var left = align switch { ColumnAlign.Left => anchor, ColumnAlign.Right => anchor - width, _ => anchor - (width / 2) };
        if (text is "●" or "○")
        {
            return [new CircleMark(MarkRole.Table, new PointMm(left + (width / 2), middle), 1, Pen.Narrow) { Fill = text == "●" ? Ink.Black : Ink.White }];
        }

        if (text is Blank or ShortBlank) return [LineMark.Between(MarkRole.Table, new(left, middle + 1.7), new(left + width, middle + 1.7), Pen.Narrow)];
        return [.. Enumerable.Range(0, text.Length).Select(i => left + (i * (BoxMm + BoxGapMm))).Select(x => LineMark.Rectangle(
            MarkRole.Table, new BoxMm(x, middle - (BoxMm / 2), x + BoxMm, middle + (BoxMm / 2)), Pen.Narrow, Ink.White))];
    }
}
