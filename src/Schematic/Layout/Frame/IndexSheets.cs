using System.Collections.Immutable;
using System.Globalization;
using Schematic.Drawing;
using Schematic.Layout.Tables;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Layout.Frame;

/// <summary>The list of sheets that opens a pack, with the panel's notes and, where no sheet has room for them, all cautions.</summary>
internal static class IndexSheets
{
    private const int SheetsWithoutList = 3;

    /// <summary>The sheets that come before the contents; none when a list is not needed.</summary>
    public static ImmutableArray<SheetContent> Build(IReadOnlyCollection<SheetContent> contents, Panel panel, SheetFrame frame)
    {
        var cautionsAreElsewhere = contents.Any(c => frame.ShowsAllCautions(c.Kind));
        if (contents.Count <= SheetsWithoutList && panel.Notes.IsEmpty && cautionsAreElsewhere) return [];

        // The list names itself, so its own length moves the numbers below it.
        var front = 1;
        while (true)
        {
            var sheets = TableSheets.Build(List(contents, panel, frame, front, cautionsAreElsewhere), SheetKind.Index, frame);
            if (sheets.Length <= front) return sheets;
            front = sheets.Length;
        }
    }

    private static ReportTable List(
        IReadOnlyCollection<SheetContent> contents, Panel panel, SheetFrame frame, int front, bool cautionsAreElsewhere)
    {
        const string title = "Sheets";
        var rows = Enumerable.Repeat((Title: title, Kind: SheetKind.Index), front)
            .Concat(contents.Select(c => (c.Title, c.Kind)))
            .Select((sheet, i) => ImmutableArray.Create(
                (i + 1).ToString(CultureInfo.InvariantCulture), sheet.Title, TitleBlock.DocumentType(sheet.Kind)));
        IEnumerable<string> cautions = cautionsAreElsewhere ? [] : Cautions.For(panel).Select(c => "Caution: " + c);
        return new ReportTable(
            title,
            [new("sheet", "Sheet", ColumnAlign.Right), new("title", "Title"), new("kind", "Document type")],
            [.. rows])
        {
            Notes = [.. panel.Notes, .. cautions],
        };
    }
}
