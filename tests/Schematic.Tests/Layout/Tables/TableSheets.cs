using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Reports;

namespace Schematic.Layout.Tables;

/// <summary>Lays tables out on as few sheets as they need.</summary>
public static class TableSheets
{
    /// <summary>The sheets of one table.</summary>
    public static ImmutableArray<SheetContent> Build(ReportTable table, SheetKind kind, SheetFrame frame)
    {
        var box = frame.ContentBox(kind);
        return SheetFlow.Build([.. TableBlock.Of(table, box.Width)], kind, box);
    }
}
