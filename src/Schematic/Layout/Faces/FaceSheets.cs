using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Layout.Faces;

/// <summary>
/// The connector sheets: both faces of every connector enlarged, with what each contact is for and the soldering order, and
/// then every connector at true size with a drilling template.
/// </summary>
public static class FaceSheets
{
    private const double BetweenCardsMm = 9;

    /// <summary>The sheets of all connectors of a panel, in the order of the file; none when there are no connectors.</summary>
    public static ImmutableArray<SheetContent> Build(Panel panel, SheetFrame frame) =>
        Build(panel, [.. panel.Parts.OfType<Connector>()], frame);

    /// <summary>The sheets of one connector.</summary>
    public static ImmutableArray<SheetContent> Build(Panel panel, Connector connector, SheetFrame frame) =>
        Build(panel, [connector], frame);

    private static ImmutableArray<SheetContent> Build(Panel panel, ImmutableArray<Connector> connectors, SheetFrame frame)
    {
        if (connectors.IsEmpty) return [];
        return
        [
            .. Enlarged(panel, connectors, frame.ContentBox(SheetKind.Faces)),
            .. TrueSizeSheets.Build(connectors, frame.ContentBox(SheetKind.TrueSize)),
        ];
    }

    private static IEnumerable<SheetContent> Enlarged(Panel panel, ImmutableArray<Connector> connectors, BoxMm box)
    {
        var uses = new ContactUses(panel);
        var sheet = new List<(string Name, Block Page)>();
        FaceCard? alone = null;
        foreach (var connector in connectors)
        {
            var card = new FaceCard(connector, uses.Of(connector), box.Width, box.Height);
            var pages = card.Pages();
            foreach (var page in pages)
            {
                if (sheet.Count > 0 && sheet.Sum(s => s.Page.Height + BetweenCardsMm) + page.Height > box.Height)
                {
                    yield return Sheet(sheet, alone, box);
                    (sheet, alone) = ([], null);
                }

                alone = sheet.Count == 0 && pages.Length == 1 ? card : null;
                sheet.Add((connector.Designator, page));
            }
        }

        yield return Sheet(sheet, alone, box);
    }

    /// <summary>The cards below each other; one that has the sheet to itself is drawn larger where that fits.</summary>
    private static SheetContent Sheet(List<(string Name, Block Page)> cards, FaceCard? alone, BoxMm box)
    {
        ImmutableArray<Block> pages = alone?.Enlarged() is { } larger ? [larger] : [.. cards.Select(c => c.Page)];
        var marks = new List<Mark>();
        var y = box.Top;
        foreach (var page in pages)
        {
            if (marks.Count > 0)
            {
                var middle = y - (BetweenCardsMm / 2);
                marks.Add(LineMark.Between(MarkRole.Face, new(box.Left, middle), new(box.Right, middle), Pen.Narrow));
            }

            marks.AddRange(page.At(box.Left, y).Marks);
            y += page.Height + BetweenCardsMm;
        }

        var names = cards.Select(c => c.Name).Distinct(StringComparer.Ordinal);
        return new SheetContent(SheetKind.Faces, $"Faces of {string.Join(", ", names)}", [.. marks]);
    }
}
