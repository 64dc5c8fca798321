using System.Collections.Immutable;
using System.Globalization;
using Schematic.Drawing;
using Schematic.Layout.Tables;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Layout.Frame;

/// <summary>
/// What every sheet has around its content: frame, zones, centring marks, title block, cautions. ISO sheets have the margins of
/// ISO 5457:1999 (20 mm on the left for filing, 10 mm elsewhere, from memory); Letter and Tabloid 10 mm on all sides.
/// </summary>
public sealed class SheetFrame
{
    private const double Gap = 2.5;
    private const double ZoneStrip = 5;
    private const double ZoneLettering = 3.5;
    private const double RoomBesideTitle = 60;

    private readonly ZoneGrid _zones;
    private readonly CautionBox _cautions;
    private readonly CautionBox _lowCautions;
    private readonly int _urgent;
    private readonly bool _cautionsBeside;

    /// <summary>The frame of a sheet size, with the cautions that its sheets carry, so many of the first of them on every drawing.</summary>
    public SheetFrame(SheetSize size, ImmutableArray<string> cautions, int urgent)
    {
        _urgent = urgent;
        Size = size;
        Frame = new BoxMm(ZoneGrid.IsIso(size) ? 20 : 10, 10, size.WidthMm - 10, size.HeightMm - 10);
        _zones = new ZoneGrid(size, Frame);
        _cautionsBeside = Frame.Width - TitleBlock.Width >= RoomBesideTitle;
        var width = _cautionsBeside ? Frame.Width - TitleBlock.Width : Frame.Width;
        _cautions = new CautionBox(cautions, Frame.Left, width, _cautionsBeside);
        // Beside a low title block the heading stands left of the texts.
        _lowCautions = new CautionBox(cautions, Frame.Left, width, headingAbove: false);
    }

    /// <summary>The paper.</summary>
    public SheetSize Size { get; }

    /// <summary>The frame: the edge of the drawing space.</summary>
    public BoxMm Frame { get; }

    /// <summary>The frame for a panel: its sheet size and the cautions that apply to it.</summary>
    public static SheetFrame For(Panel panel) => new(panel.Sheet, Cautions.For(panel), Cautions.Urgent(panel));

    /// <summary>The box, in sheet coordinates, that the content of a sheet of that kind may use.</summary>
    public BoxMm ContentBox(SheetKind kind) => BoxAbove(FootHeight(kind, IsCompact(kind)));

    private BoxMm BoxAbove(double foot) => new(Frame.Left + Gap, Frame.Top + Gap, Frame.Right - Gap, Frame.Bottom - foot - Gap);

    /// <summary>Drawings and the first sheet have the full title block; lists and faces, which belong to them, a low one.</summary>
    private static bool IsCompact(SheetKind kind) => kind is not (SheetKind.Index or SheetKind.Circuit or SheetKind.Wiring);

    /// <summary>The zone a point lies in, such as <c>B3</c>.</summary>
    public string ZoneAt(PointMm point) => _zones.At(point);

    /// <summary>
    /// Puts frame, title block, cautions and sheet numbers around the contents, the sheet list before them when it is needed, and
    /// a stamp such as "NOT CHECKED" across every sheet when asked; findings that are open come first. Texts that refer to a thing get its sheet and zone.
    /// </summary>
    public ImmutableArray<Sheet> Finish(IEnumerable<SheetContent> contents, Panel panel, string? stamp = null, ReportTable? findings = null) =>
        Finish(contents, [], panel, stamp, findings, [], null).Sheets;

    /// <summary>
    /// The same with lists, which flow on behind the index and then behind the contents; the index names the lists that are left out. Ways
    /// that are known are taken where they need no more sheets than they did.
    /// </summary>
    internal (ImmutableArray<Sheet> Sheets, PackWays Ways) Finish(
        IEnumerable<SheetContent> contents, IReadOnlyList<FlowBlock> lists, Panel panel, string? stamp, ReportTable? findings, ImmutableArray<string> leftOut, PackWays? known)
    {
        var given = contents.ToList();
        var (front, drawings, behind, ways) = new IndexSheets(panel, this, findings, lists, leftOut, known).Build(given);
        List<SheetContent> all = [.. front, .. drawings, .. behind];
        // Where no sheet has room for all of them, the list of sheets on the first one names them.
        var cautionSheet = Math.Max(0, all.FindIndex(HasAllCautions)) + 1;
        var reference = $"All cautions: sheet {cautionSheet.ToString(CultureInfo.InvariantCulture)}.";
        var places = new PlaceDirectory(all.Select((content, i) => (i + 1, content)), ZoneAt);
        ImmutableArray<Sheet> sheets = [.. all.Select(content => Filled(content, places)).Select((content, i) => new Sheet(
            content.Kind, i + 1, content.Title, Size, [.. Marks(content, panel, i + 1, all.Count, reference, stamp)])
        {
            Things = content.Things,
        })];
        return (sheets, ways);
    }

    /// <summary>The content with its references written out; one that leads nowhere and says nothing else is left away.</summary>
    private static SheetContent Filled(SheetContent content, PlaceDirectory places) => content with
    {
        Marks = [.. content.Marks.Select(m => places.Filled(m, content.Kind)).Where(m => m is not TextMark { Text.Length: 0 })],
    };

    private bool HasAllCautions(SheetContent content) =>
        ShowsAllCautions(content.Kind) || content.Marks.Any(m => m is TextMark { Text: CautionBlock.Heading, IsBold: true });

    /// <summary>Whether a sheet of that kind shows every caution in full.</summary>
    internal bool ShowsAllCautions(SheetKind kind) => CautionsOf(IsCompact(kind)).FitsInto(CautionHeight(kind, IsCompact(kind)));

    /// <summary>How many of the first cautions a sheet of that kind shows in full.</summary>
    internal int CautionsShown(SheetKind kind) => CautionsOf(IsCompact(kind)).CountIn(CautionHeight(kind, IsCompact(kind)));

    private double CautionHeight(SheetKind kind, bool isCompact)
    {
        var cautions = CautionsOf(isCompact);
        var wanted = kind is not (SheetKind.Circuit or SheetKind.Wiring) ? Math.Min(cautions.FullHeight, cautions.CompactHeight)
            : Math.Min(_cautionsBeside ? cautions.HeightOfFirst(_urgent) : cautions.FullHeight, Frame.Height / 5);
        return _cautionsBeside ? Math.Max(TitleBlock.HeightOf(isCompact), wanted) : wanted;
    }

    private CautionBox CautionsOf(bool isCompact) => isCompact ? _lowCautions : _cautions;

    private double FootHeight(SheetKind kind, bool isCompact) =>
        _cautionsBeside ? CautionHeight(kind, isCompact) : TitleBlock.HeightOf(isCompact) + CautionHeight(kind, isCompact);

    private IEnumerable<Mark> Marks(SheetContent content, Panel panel, int number, int count, string reference, string? stamp)
    {
        var isCompact = content.IsContinued || IsCompact(content.Kind);
        var height = FootHeight(content.Kind, isCompact);
        IEnumerable<Mark> stamped = stamp is null ? [] : Stamp.Marks(stamp, Frame, BoxAbove(height));
        var cautionBottom = _cautionsBeside ? Frame.Bottom : Frame.Bottom - TitleBlock.HeightOf(isCompact);
        // The box is no higher than its texts.
        var cautionTop = Math.Max(Frame.Bottom - height, cautionBottom - CautionsOf(isCompact).FullHeight);
        return content.Marks.Where(IsBand)
            .Concat(stamped)
            .Concat(Border())
            .Concat(CautionsOf(isCompact).Marks(cautionTop, cautionBottom, reference))
            .Concat(TitleBlock.Marks(new PointMm(Frame.Right, Frame.Bottom), panel, content, number, count, isCompact))
            .Concat(content.Marks.Where(m => !IsBand(m)));
    }

    /// <summary>The bands of a table go to the very bottom: they would hide a stamp.</summary>
    private static bool IsBand(Mark mark) => mark is LineMark { Role: MarkRole.Table, Pen: null };

    private IEnumerable<Mark> Border()
    {
        var isA4 = Size.Name == "A4";
        foreach (var mark in ColumnLetters(Frame.Top - ZoneStrip)) yield return mark;
        foreach (var mark in RowLetters(Frame.Right)) yield return mark;
        if (!isA4)
        {
            // Zones on A4 stand at the top and on the right only (ISO 5457:1999, 4.3, from memory): the left is for filing.
            foreach (var mark in ColumnLetters(Frame.Bottom)) yield return mark;
            foreach (var mark in RowLetters(Frame.Left - ZoneStrip)) yield return mark;
        }

        yield return LineMark.Rectangle(MarkRole.Frame, Frame, Pen.Frame);
        foreach (var mark in CentringMarks()) yield return mark;
    }

    private IEnumerable<Mark> ColumnLetters(double top)
    {
        var edges = _zones.ColumnEdges;
        for (var i = 0; i + 1 < edges.Length; i++)
        {
            if (i > 0) yield return LineMark.Between(MarkRole.Frame, new(edges[i], top), new(edges[i], top + ZoneStrip), Pen.Wide);
            yield return ZoneName(_zones.ColumnName(i), new((edges[i] + edges[i + 1]) / 2, top + (ZoneStrip / 2)));
        }
    }

    private IEnumerable<Mark> RowLetters(double left)
    {
        var edges = _zones.RowEdges;
        for (var i = 0; i + 1 < edges.Length; i++)
        {
            if (i > 0) yield return LineMark.Between(MarkRole.Frame, new(left, edges[i]), new(left + ZoneStrip, edges[i]), Pen.Wide);
            yield return ZoneName(_zones.RowName(i), new(left + (ZoneStrip / 2), (edges[i] + edges[i + 1]) / 2));
        }
    }

    private static TextMark ZoneName(string name, PointMm middle) =>
        new(MarkRole.Frame, name, middle.Moved(0, ZoneLettering / 2), ZoneLettering) { Align = TextAlign.Middle };

    /// <summary>Strokes of 10 mm at the ends of both axes. They end at the frame so that they never touch the content.</summary>
    private IEnumerable<Mark> CentringMarks()
    {
        var (x, y) = (Size.WidthMm / 2, Size.HeightMm / 2);
        yield return LineMark.Between(MarkRole.Frame, new(x, Frame.Top - 10), new(x, Frame.Top), Pen.Frame);
        yield return LineMark.Between(MarkRole.Frame, new(x, Frame.Bottom), new(x, Frame.Bottom + 10), Pen.Frame);
        yield return LineMark.Between(MarkRole.Frame, new(Frame.Left - 10, y), new(Frame.Left, y), Pen.Frame);
        yield return LineMark.Between(MarkRole.Frame, new(Frame.Right, y), new(Frame.Right + 10, y), Pen.Frame);
    }
}
