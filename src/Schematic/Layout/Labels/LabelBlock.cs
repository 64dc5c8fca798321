using System.Collections.Immutable;
using System.Globalization;
using Schematic.Analysis;
using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Layout.Frame;
using Schematic.Layout.Tables;

namespace Schematic.Layout.Labels;

/// <summary>
/// Labels at true size, to be printed without scaling, cut out and slid into clear sleeves. The text reads left to right
/// (FAA AC 43.13-1B 11-208). A bar of 50 mm above them tells whether the printer kept the size.
/// </summary>
internal sealed class LabelBlock : FlowBlock
{
    private const double LetterHeight = 2.5;
    private const double LabelHeight = 5;
    private const double LeastWidth = 15;
    private const double SidePadding = 2;
    private const double Gap = 1.5;
    private const double SetRoom = 5;
    private const double LeastBlock = 140;

    // A longer number or terminal name is cut: a label must go around a wire.
    private const double LongestText = 60;

    private readonly ImmutableArray<WireLabel> _labels;
    private readonly AnalysisContext _context;

    private LabelBlock(AnalysisContext context, ImmutableArray<WireLabel> labels)
        : base("Wire labels") => (_context, _labels) = (context, labels);

    /// <summary>The labels of all sets; none for a panel without wires.</summary>
    public static IEnumerable<LabelBlock> Of(AnalysisContext context)
    {
        var labels = WireLabels.Of(context).Select(Shown).ToImmutableArray();
        return labels.IsEmpty ? [] : [new LabelBlock(context, labels)];
    }

    /// <inheritdoc/>
    public override FlowShape? ShapeFor(FlowRoom room)
    {
        if (room.WidthMm < Math.Min(LeastBlock, room.SheetMm) - 1e-6) return null;
        var one = Rows(room.WidthMm).ToList();
        var rows = Enumerable.Range(1, _context.Panel.BuildCount).SelectMany(set =>
        {
            var heading = Text(Heading(_context, set), new PointMm(0, LetterHeight)) with { IsBold = true };
            var first = new FlowRow(SetRoom + one[0].HeightMm, [heading, .. one[0].Marks.Select(m => m.Moved(0, SetRoom))]);
            return one.Skip(1).Prepend(first);
        });
        var bar = new FlowRow(ScaleBar.RoomMm, [.. ScaleBar.Marks(new BoxMm(0, 0, room.WidthMm, ScaleBar.RoomMm))]);
        return new FlowShape(room.WidthMm, 1, bar, [.. rows], []);
    }

    private static string Heading(AnalysisContext context, int set)
    {
        var title = context.Panel.Title;
        var sets = string.Create(CultureInfo.InvariantCulture, $"Set {set} of {context.Panel.BuildCount}");
        return string.Join(", ", new[] { sets, title.Number, title.Revision.Length > 0 ? $"revision {title.Revision}" : "" }.Where(t => t.Length > 0));
    }

    /// <summary>The labels of one set in rows; the labels of one wire stay together where a row holds them.</summary>
    private IEnumerable<FlowRow> Rows(double width)
    {
        var (x, row) = (0.0, new List<Mark>());
        foreach (var group in Runs(_labels))
        {
            var whole = group.Sum(l => WidthOf(l) + Gap) - Gap;
            var breaks = x > 0 && x + whole > width && whole <= width;
            foreach (var label in group)
            {
                if (breaks || (x > 0 && x + WidthOf(label) > width))
                {
                    yield return new FlowRow(LabelHeight + Gap, [.. row]);
                    (x, row, breaks) = (0, [], false);
                }

                row.AddRange(Draw(label, x, 0, WidthOf(label)));
                x += WidthOf(label) + Gap;
            }
        }

        yield return new FlowRow(LabelHeight + Gap, [.. row]);
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

    private static TextMark Text(string text, PointMm at) => new(MarkRole.Table, text, at, LetterHeight);
}
