using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Layout.Tables;
using Schematic.Reports;

namespace Schematic.Tests.Layout.Tables;

/// <summary>One table alone on as few sheets as it needs.</summary>
internal static class TableSheets
{
    /// <summary>The sheets.</summary>
    public static ImmutableArray<SheetContent> Build(ReportTable table, SheetKind kind, SheetFrame frame)
    {
        var box = frame.ContentBox(kind);
        return SheetFlow.Build([.. TableBlock.Of(table, box.Width)], kind, box);
    }
}
