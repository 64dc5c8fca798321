using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Tests.Layout.Tables;
using Schematic.Model;
using Schematic.Reports;
using Schematic.Symbols;

namespace Schematic.Tests.Rendering;

/// <summary>Sheets that tests of the writers draw.</summary>
internal static class SheetSamples
{
    /// <summary>Text of a user who means no good, or writes in many tongues.</summary>
    public const string Hostile =
        "<script>alert(1)</script> ]]> &amp; \" ' \0\u0007\u001b \uD83D\uDD0C \uD800 \uDFFF \u202Ertl\u202C שלום 中文 \uFFFE\uFFFF\t\r\n end";

    public static SheetSize A4 { get; } = SheetSize.Find("A4", landscape: true)!;

    public static Panel Panel(string size = "A4", bool landscape = true) => new()
    {
        Sheet = SheetSize.Find(size, landscape)!,
        Title = new TitleData
        {
            Title = "Lever 14 bench adapter",
            Number = "SB-014",
            Revision = "B",
            Date = "2026-11-25",
            Owner = "Hill Line Museum Railway",
            DrawnBy = "R. Hollis",
            ApprovedBy = "M. Tane",
        },
    };

    /// <summary>A sheet that carries nothing but the given marks.</summary>
    public static Sheet Of(params ReadOnlySpan<Mark> marks) => new(SheetKind.Wiring, 1, "Sample", A4, [.. marks]);

    /// <summary>A small finished pack: a schematic sheet with a few symbols and a wire list.</summary>
    public static ImmutableArray<Sheet> Pack(Panel panel, string? stamp = null)
    {
        var frame = SheetFrame.For(panel);
        var box = frame.ContentBox(SheetKind.Wiring);
        var at = new PointMm(box.Left + 20, box.Top + 20);
        var marks = SymbolLibrary.For(panel.Symbols).Get(SymbolKind.ChangeoverContact).PlacedAt(at, "S1")
            .Append(new TextMark(MarkRole.Label, "J1:5", at.Moved(-12, -1), 2.5) { Owner = "J1:5" })
            .Append(new TextMark(MarkRole.Label, "RTN", at.Moved(30, 40), 2.5) { IsVertical = true });
        var rows = Enumerable.Range(1, 40)
            .Select(i => ImmutableArray.Create($"W{i}", "22", $"J1:{i}", $"A1:IN{i}")).ToImmutableArray();
        var table = new ReportTable(
            "Wire list", [new("wire", "Wire"), new("awg", "AWG", ColumnAlign.Right), new("from", "From"), new("to", "To")], rows);
        return frame.Finish(
            [new SheetContent(SheetKind.Wiring, "Schematic", [.. marks]), .. TableSheets.Build(table, SheetKind.Lists, frame)],
            panel,
            stamp);
    }
}
