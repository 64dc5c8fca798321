using System.Collections.Immutable;
using System.Globalization;
using Schematic.Analysis;
using Schematic.Analysis.Quantities;
using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Layout.Frame;
using Schematic.Layout.Tables;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Layout.Labels;

/// <summary>
/// What to cut, each kind of piece with the labels of its wires beside it, for all sets: a wire is marked as soon as it is cut. The
/// labels are at true size, to be printed without scaling, cut out and slid into clear sleeves; their text reads left to right
/// (FAA AC 43.13-1B 11-208). A bar of 50 mm above them tells whether the printer kept the size.
/// </summary>
internal sealed class LabelBlock : FlowBlock
{
    private const double LetterHeight = 2.5;
    private const double LabelHeight = 5;
    private const double LeastWidth = 15;
    private const double SidePadding = 2;
    private const double Gap = 0.8;
    private const double PiecesGap = 3;
    private const double LeastLabels = 75;
    private const int LeastPaned = 20;
    private const int MostLengths = 8;

    // Bar and words side by side.
    private const double LeastBarMm = 145;

    // More labels than these are printed for one set, again for each.
    private const int MostLabels = 2000;

    // A longer number or terminal name is cut: a label must go around a wire.
    private const double LongestText = 60;

    private readonly ImmutableArray<(CutPieces Pieces, ImmutableArray<(WireLabel Label, double WidthMm)> Labels)> _groups;
    private readonly int _sets;
    private readonly int _labelledSets;
    private readonly string _note;
    private readonly double _piecesMm;

    private LabelBlock(AnalysisContext context, ImmutableArray<(CutPieces Pieces, ImmutableArray<WireLabel> Labels)> groups)
        : base("Cut list and wire labels")
    {
        _groups = [.. groups.Select(g => (g.Pieces, g.Labels.Select(l => (l, WidthOf(l))).ToImmutableArray()))];
        _sets = context.Panel.BuildCount;
        _labelledSets = (long)_sets * groups.Sum(g => g.Labels.Length) <= MostLabels ? _sets : 1;
        _note = $"{CutList.Note(_sets)} Labels of {NameOf(context)}: cut them out at the lines.{MarkWords(groups)}{MoreWords(groups)}{(_labelledSets < _sets ? " Labels of one set: print them once for each." : "")}{(context.Panel.Cables.IsEmpty ? "" : " Cable cores: at both ends.")}{(WorkList.Boxes(_sets).Length > 1 ? " A box for each set." : "")}";
        _piecesMm = PiecesGap + groups.Max(g => CellSign.WidthOf(WorkList.Boxes(_sets))!.Value + 2 + Lettering.WidthMm(Words(g.Pieces), LetterHeight));
    }

    /// <inheritdoc/>
    public override bool IsApart => true;

    /// <summary>Pieces and labels of all sets; none for a panel without wires.</summary>
    public static IEnumerable<LabelBlock> Of(AnalysisContext context)
    {
        var labels = WireLabels.Of(context).ToLookup(l => l.Wire, StringComparer.Ordinal);
        // The cores of a cable are marked with it.
        IEnumerable<string> Marked(string name) => context.Panel.Wires.Where(w => w.Cable == name).Select(w => w.Designator).Prepend(name);
        ImmutableArray<(CutPieces, ImmutableArray<WireLabel>)> groups =
            [.. CutList.Pieces(context).Select(p => (p, p.Names.SelectMany(Marked).SelectMany(n => labels[n]).Select(Shown).ToImmutableArray()))];
        return groups.IsEmpty ? [] : [new LabelBlock(context, groups)];
    }

    /// <inheritdoc/>
    protected override FlowShape? Shape(FlowRoom room)
    {
        if (room.WidthMm < Math.Min(_piecesMm + LeastLabels, room.SheetMm) - 1e-6) return null;
        // Pieces that are all different have a row each: two stand side by side where there is width.
        var panes = Math.Clamp((int)((room.WidthMm + FlowShape.PaneGapMm) / (_piecesMm + LeastLabels + FlowShape.PaneGapMm)), 1, _groups.Length >= LeastPaned ? 2 : 1);
        var pane = ((room.WidthMm + FlowShape.PaneGapMm) / panes) - FlowShape.PaneGapMm;
        var bar = new FlowRow(ScaleBar.RoomMm, [.. pane < LeastBarMm ? ScaleBar.Compact() : ScaleBar.Marks(new BoxMm(0, 0, pane, ScaleBar.RoomMm))]);
        return new FlowShape(pane, panes, bar, [.. _groups.SelectMany(g => Rows(g.Pieces, g.Labels, pane))],
            [WordRow.Of(Lettering.Wrap(_note, LetterHeight, room.WidthMm), WordRow.NoteGapMm)]);
    }

    private static string NameOf(AnalysisContext context)
    {
        var title = context.Panel.Title;
        return string.Join(", ", new[] { title.Number, title.Revision.Length > 0 ? $"revision {title.Revision}" : "" }.Where(t => t.Length > 0)) is { Length: > 0 } name ? name : "this panel";
    }

    /// <summary>Where the labels stand on each length that is cut; of many lengths the rule alone is told.</summary>
    private static string MarkWords(ImmutableArray<(CutPieces Pieces, ImmutableArray<WireLabel> Labels)> groups)
    {
        var lengths = groups.Where(g => g.Pieces.Gauge.Length > 0 && g.Labels.Length > 0).Select(g => g.Pieces.LengthMm).OfType<double>().Distinct().Order().ToList();
        if (lengths.Count == 0) return "";
        if (lengths.Count > MostLengths) return $" Labels stand 76 mm from each end and no more than 381 mm apart; one in the middle of less than 178 mm, none on less than 76 mm ({Sources.WireMarks}).";
        var places = lengths.Select(l => (Length: l, Places: MarkPlaces.Words(l))).Where(p => p.Places.Length > 0)
            .Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.Places} of {Math.Round(p.Length):0}"));
        return $" Labels stand, in mm from the first end: {string.Join("; ", places)} ({Sources.WireMarks}).";
    }

    /// <summary>That a long wire carries more labels than stand here.</summary>
    private static string MoreWords(ImmutableArray<(CutPieces Pieces, ImmutableArray<WireLabel> Labels)> groups) =>
        groups.Any(g => g.Pieces.Gauge.Length > 0 && WireLabels.HasMore(g.Pieces.LengthMm))
            ? string.Create(CultureInfo.InvariantCulture, $" Of a wire that carries more than {WireLabels.Most} labels, {WireLabels.Most} are here: the wire list says how many it carries.") : "";

    private string Words(CutPieces pieces)
    {
        var count = pieces.Names.Length * _sets;
        var name = string.Join(' ', new[] { UnitSigns.Of(pieces.Gauge), pieces.Colour }.Where(w => w.Length > 0));
        var length = pieces.LengthMm is { } mm ? string.Create(CultureInfo.InvariantCulture, $"{mm:0.#} mm") : "cut to fit";
        return count == 1 ? $"{name}  {length}" : string.Create(CultureInfo.InvariantCulture, $"{name}  {count} x {length}");
    }

    /// <summary>The wires themselves beside pieces that are too short for a label.</summary>
    private string HeadWords(CutPieces pieces, bool isLabelled) =>
        isLabelled || pieces.Gauge.Length == 0 ? Words(pieces) : $"{Words(pieces)}   {NameList.Compact(pieces.Names)}: too short for a label";

    /// <summary>The pieces at the left of the first row, the labels of one wire after the other in as many rows as they take.</summary>
    private IEnumerable<FlowRow> Rows(CutPieces pieces, ImmutableArray<(WireLabel Label, double WidthMm)> labels, double width)
    {
        var left = Math.Min(_piecesMm, Math.Max(0, width - LeastLabels));
        var (x, isFirst) = (left, true);
        List<(WireLabel Label, double Left, double WidthMm)> row = [];
        FlowRow Row()
        {
            var (isHead, here) = (isFirst, row);
            return new(LabelHeight + Gap, () => [.. isHead ? Head(HeadWords(pieces, labels.Length > 0), width) : [], .. here.SelectMany(l => Draw(l.Label, l.Left, 0, l.WidthMm))]);
        }

        foreach (var (label, own) in labels.GroupBy(l => l.Label.Wire).SelectMany(g => Enumerable.Repeat(g, _labelledSets).SelectMany(s => s)))
        {
            if (x > left && x + own > width)
            {
                yield return Row();
                (x, row, isFirst) = (left, [], false);
            }

            row.Add((label, x, own));
            x += own + Gap;
        }

        yield return Row();
    }

    private IEnumerable<Mark> Head(string words, double width)
    {
        const double middle = LabelHeight / 2;
        var boxes = WorkList.Boxes(_sets);
        var room = CellSign.WidthOf(boxes)!.Value + 2;
        return [.. CellSign.Of(boxes, ColumnAlign.Left, 0, middle), Text(Lettering.Fit(words, LetterHeight, width - room), new PointMm(room, middle + (LetterHeight / 2)))];
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
