using System.Collections.Immutable;
using System.Globalization;
using Schematic.Analysis;
using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Layout.Frame;

namespace Schematic.Layout.Labels;

/// <summary>
/// Labels at true size, to be printed without scaling, cut out and slid into clear sleeves. The text reads left to right
/// (FAA AC 43.13-1B 11-208). A bar of 50 mm tells whether the printer kept the size.
/// </summary>
public static class LabelSheets
{
    private const double TitleHeight = 3.5;
    private const double LetterHeight = 2.5;
    private const double LabelHeight = 5;
    private const double LeastWidth = 15;
    private const double SidePadding = 2;
    private const double Gap = 1.5;
    private const double HeadRoom = 14;
    private const double SetRoom = 6;

    // A longer number or terminal name is cut: a label must go around a wire.
    private const double LongestText = 60;

    /// <summary>The sheets for all sets; none for a panel without wires.</summary>
    public static ImmutableArray<SheetContent> Build(AnalysisContext context, SheetFrame frame)
    {
        var labels = WireLabels.Of(context).Select(Shown).ToImmutableArray();
        if (labels.IsEmpty) return [];
        var box = frame.ContentBox(SheetKind.Labels);
        var sheets = new List<List<Mark>>();
        var y = double.PositiveInfinity;
        for (var set = 1; set <= context.Panel.BuildCount; set++)
        {
            y = NextLine(sheets, box, y, SetRoom + LabelHeight);
            sheets[^1].Add(Text(Heading(context, set), new PointMm(box.Left, y + LetterHeight)) with { IsBold = true });
            y = Place(sheets, labels, box, y + SetRoom);
        }

        return [.. sheets.Select((marks, i) => Titled(marks, box, i, sheets.Count))];
    }

    private static string Heading(AnalysisContext context, int set)
    {
        var title = context.Panel.Title;
        var sets = string.Create(CultureInfo.InvariantCulture, $"Set {set} of {context.Panel.BuildCount}");
        return string.Join(", ", new[] { sets, title.Number, title.Revision.Length > 0 ? $"revision {title.Revision}" : "" }.Where(t => t.Length > 0));
    }

    /// <summary>Sets the labels in rows; the labels of one wire stay together where a row holds them. Returns the free y.</summary>
    private static double Place(List<List<Mark>> sheets, ImmutableArray<WireLabel> labels, BoxMm box, double top)
    {
        var (x, y) = (box.Left, top);
        foreach (var group in Runs(labels))
        {
            var whole = group.Sum(l => WidthOf(l) + Gap) - Gap;
            if (x > box.Left && x + whole > box.Right && whole <= box.Width) x = double.PositiveInfinity;
            foreach (var label in group)
            {
                if (x > box.Left && x + WidthOf(label) > box.Right)
                {
                    x = box.Left;
                    y = NextLine(sheets, box, y + LabelHeight + Gap, LabelHeight);
                }

                sheets[^1].AddRange(Draw(label, x, y, WidthOf(label)));
                x += WidthOf(label) + Gap;
            }
        }

        return y + LabelHeight + (2 * Gap);
    }

    private static List<List<WireLabel>> Runs(ImmutableArray<WireLabel> labels)
    {
        var runs = new List<List<WireLabel>>();
        foreach (var label in labels)
        {
            if (runs.Count == 0 || runs[^1][0].Wire != label.Wire) runs.Add([]);
            runs[^1].Add(label);
        }

        return runs;
    }

    /// <summary>The given y, or the top of a fresh sheet where less than <paramref name="room"/> is left.</summary>
    private static double NextLine(List<List<Mark>> sheets, BoxMm box, double y, double room)
    {
        if (y + room <= box.Bottom) return y;
        sheets.Add([]);
        return box.Top + HeadRoom;
    }

    private static WireLabel Shown(WireLabel label) => new(
        Lettering.Fit(label.Wire, LetterHeight, LongestText, bold: true), Lettering.Fit(label.Place, LetterHeight, LongestText));

    private static double WidthOf(WireLabel label) =>
        Math.Max(LeastWidth, NumberWidth(label) + PlaceWidth(label) + (2 * SidePadding));

    private static double NumberWidth(WireLabel label) => Lettering.WidthMm(label.Wire, LetterHeight, bold: true);

    private static double PlaceWidth(WireLabel label) =>
        label.Place.Length == 0 ? 0 : SidePadding + Lettering.WidthMm(label.Place, LetterHeight);

    private static IEnumerable<Mark> Draw(WireLabel label, double x, double y, double width)
    {
        yield return LineMark.Rectangle(MarkRole.Table, new BoxMm(x, y, x + width, y + LabelHeight), Pen.Narrow) with { Owner = label.Wire };
        var baseline = y + (LabelHeight / 2) + (LetterHeight / 2);
        var left = x + ((width - NumberWidth(label) - PlaceWidth(label)) / 2);
        yield return Text(label.Wire, new PointMm(left, baseline)) with { IsBold = true, Owner = label.Wire };
        if (label.Place.Length == 0) yield break;
        yield return Text(label.Place, new PointMm(left + NumberWidth(label) + SidePadding, baseline)) with { Owner = label.Wire };
    }

    private static SheetContent Titled(List<Mark> marks, BoxMm box, int index, int count)
    {
        var title = count == 1 ? "Wire labels" : string.Create(CultureInfo.InvariantCulture, $"Wire labels ({index + 1} of {count})");
        var heading = new TextMark(MarkRole.Table, title, new PointMm(box.Left, box.Top + TitleHeight), TitleHeight) { IsBold = true };
        return new SheetContent(SheetKind.Labels, title, [heading, .. ScaleBar.Marks(box), .. marks]);
    }

    private static TextMark Text(string text, PointMm at) => new(MarkRole.Table, text, at, LetterHeight);
}
