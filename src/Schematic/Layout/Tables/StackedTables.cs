using System.Collections.Immutable;
using System.Globalization;
using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Reports;

namespace Schematic.Layout.Tables;

/// <summary>
/// Puts small tables under one another so that they share sheets. A table moves to the next sheet when its last rows or notes
/// would not fit; one that fills more than a sheet begins on a fresh one.
/// </summary>
public static class StackedTables
{
    private const double Gap = 6;

    /// <summary>The sheets of all tables, in order.</summary>
    /// <param name="title">What the sheets are called together; a sheet with one table keeps that table's title.</param>
    /// <param name="tables">The tables.</param>
    /// <param name="kind">The kind of sheet.</param>
    /// <param name="frame">The frame.</param>
    public static ImmutableArray<SheetContent> Build(
        string title, ImmutableArray<ReportTable> tables, SheetKind kind, SheetFrame frame)
    {
        var box = frame.ContentBox(kind);
        var sheets = new List<List<SheetContent>>();
        var bottom = double.PositiveInfinity;
        foreach (var table in tables)
        {
            var own = TableSheets.Build(table, kind, frame);
            foreach (var content in own)
            {
                var height = BottomOf(content) - box.Top;
                if (own.Length > 1 || bottom + Gap + height > box.Bottom)
                {
                    sheets.Add([content]);
                    bottom = BottomOf(content);
                    continue;
                }

                sheets[^1].Add(content with { Marks = [.. content.Marks.Select(m => m.Moved(0, bottom + Gap - box.Top))] });
                bottom += Gap + height;
            }
        }

        var shared = sheets.Count(s => s.Count > 1);
        var number = 0;
        return [.. sheets.Select(s => s.Count == 1 ? s[0] : new SheetContent(kind, Numbered(title, ++number, shared), [.. s.SelectMany(c => c.Marks)]))];
    }

    private static double BottomOf(SheetContent content) => content.Marks.Max(m => m.Bounds.Bottom);

    private static string Numbered(string title, int number, int count) =>
        count == 1 ? title : string.Create(CultureInfo.InvariantCulture, $"{title} {number}");
}
