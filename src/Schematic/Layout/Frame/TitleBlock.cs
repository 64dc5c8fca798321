using System.Globalization;
using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Model;

namespace Schematic.Layout.Frame;

/// <summary>
/// The title block at the lower right: the fields of ISO 7200:2004 (field list and greatest width of 180 mm from memory).
/// Captions are 1.8 mm, entries 2.5 mm or 3.5 mm high (ISO 3098 row); what is too long for a line takes two where the row is high.
/// </summary>
internal static class TitleBlock
{
    /// <summary>Width in millimetres.</summary>
    public const double Width = 180;

    /// <summary>Height in millimetres.</summary>
    public const double Height = 25;

    private const double CompactHeight = 16;
    private const double Padding = 1.2;
    private const double CaptionHeight = 1.8;
    private const double EntryHeight = 2.5;
    private const double MainHeight = 3.5;
    private static readonly double[] RowHeights = [9, 8, 8];
    private static readonly double[] CompactRowHeights = [8, 8];

    /// <summary>Height in millimetres of the full block or of the low one, which holds the mandatory fields of ISO 7200 in two rows.</summary>
    public static double HeightOf(bool isCompact) => isCompact ? CompactHeight : Height;

    /// <summary>The block with its lower right corner at the given place.</summary>
    public static IEnumerable<Mark> Marks(PointMm lowerRight, Panel panel, SheetContent content, int number, int count, bool isCompact)
    {
        var (left, top) = (lowerRight.X - Width, lowerRight.Y - HeightOf(isCompact));
        yield return LineMark.Rectangle(
            MarkRole.TitleBlock, new BoxMm(left, top, lowerRight.X, lowerRight.Y), new Pen(0.35), Ink.White);
        var y = top;
        foreach (var (row, height) in isCompact
            ? CompactRows(panel, content, number, count).Zip(CompactRowHeights) : Rows(panel, content, number, count).Zip(RowHeights))
        {
            if (y > top) yield return LineMark.Between(MarkRole.TitleBlock, new(left, y), new(lowerRight.X, y), Pen.Narrow);
            var x = left;
            foreach (var field in row)
            {
                if (x > left) yield return LineMark.Between(MarkRole.TitleBlock, new(x, y), new(x, y + height), Pen.Narrow);
                foreach (var mark in Entry(field, new BoxMm(x, y, x + field.Width, y + height))) yield return mark;
                x += field.Width;
            }

            y += height;
        }
    }

    /// <summary>What kind of document a sheet is, in words.</summary>
    public static string DocumentType(SheetKind kind) => kind switch
    {
        SheetKind.Index => "Index",
        SheetKind.Circuit => "Circuit diagram",
        SheetKind.Wiring => "Wiring diagram",
        SheetKind.Faces => "Connector faces",
        SheetKind.TrueSize => "True-size template",
        SheetKind.Lists => "Lists",
        SheetKind.RingOut => "Ring-out sheet",
        SheetKind.BenchRecord => "Bench record",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    private static Field[][] Rows(Panel panel, SheetContent content, int number, int count)
    {
        var title = panel.Title;
        return
        [
            [
                new("Legal owner", title.Owner, 66),
                new("Title", title.Title, 72) { IsMain = true },
                new("Drawing number", title.Number, 42) { IsMain = true },
            ],
            [
                new("Drawn", title.DrawnBy, 30),
                new("Approved", title.ApprovedBy, 30),
                new("Sheet title", content.Title, 78),
                new("Revision", title.Revision, 15),
                new("Date of issue", title.Date, 27),
            ],
            [
                new("Document type", DocumentType(content.Kind), 60),
                new("Symbols", panel.Symbols == SymbolStyle.Iec ? "IEC 60617 style" : "IEEE 315 style", 34),
                new("Sets built", panel.BuildCount.ToString(CultureInfo.InvariantCulture), 18),
                new("Scale", content.Kind is SheetKind.TrueSize ? "1:1" : "none", 13),
                new("Paper", panel.Sheet.Name, 13),
                new("Sheet", $"{number.ToString(CultureInfo.InvariantCulture)} of {count.ToString(CultureInfo.InvariantCulture)}", 42) { IsMain = true },
            ],
        ];
    }

    private static Field[][] CompactRows(Panel panel, SheetContent content, int number, int count)
    {
        var title = panel.Title;
        return
        [
            [
                new("Legal owner", title.Owner, 66),
                new("Title", title.Title, 60) { IsMain = true },
                new("Drawing number", title.Number, 32) { IsMain = true },
                new("Date of issue", title.Date, 22),
            ],
            [
                new("Drawn", title.DrawnBy, 18),
                new("Approved", title.ApprovedBy, 18),
                new("Document type", DocumentType(content.Kind), 27),
                new("Sheet title", content.Title, 78),
                new("Revision", title.Revision, 13),
                new("Sheet", $"{number.ToString(CultureInfo.InvariantCulture)} of {count.ToString(CultureInfo.InvariantCulture)}", 26) { IsMain = true },
            ],
        ];
    }

    private static IEnumerable<Mark> Entry(Field field, BoxMm box)
    {
        var width = box.Width - (2 * Padding);
        var isHigh = box.Height >= RowHeights[0];
        bool Fits(double height) => Lettering.WidthMm(field.Text, height, field.IsMain) <= width;
        TextMark Line(string text, double height, double baseLine, double indent = 0) =>
            new(MarkRole.TitleBlock, Lettering.Fit(text, height, width - indent, field.IsMain), new(box.Left + Padding + indent, baseLine), height)
            {
                IsBold = field.IsMain,
            };

        var isLong = isHigh && !Fits(EntryHeight);
        var (first, second) = (box.Bottom - 4.9, box.Bottom - 1.1);
        yield return new TextMark(MarkRole.TitleBlock, field.Caption, new(box.Left + Padding, isLong ? first : box.Top + Padding + 1.6), CaptionHeight) { Ink = Ink.Quiet };
        if (field.Text.Length == 0) yield break;
        if (!isLong)
        {
            yield return Line(field.Text, isHigh && field.IsMain && Fits(MainHeight) ? MainHeight : EntryHeight, box.Bottom - 1.4);
            yield break;
        }

        // Two lines, the first of them beside the caption.
        var indent = Lettering.WidthMm(field.Caption, CaptionHeight) + 2;
        var words = Lettering.Wrap(field.Text, EntryHeight, width - indent, field.IsMain)[0];
        yield return Line(words, EntryHeight, first, indent);
        yield return Line(field.Text[words.Length..].Trim(), EntryHeight, second);
    }

    private sealed record Field(string Caption, string Text, double Width)
    {
        public bool IsMain { get; init; }
    }
}
