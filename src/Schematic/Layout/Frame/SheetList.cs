using System.Collections.Immutable;
using System.Globalization;
using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Layout.Tables;

namespace Schematic.Layout.Frame;

/// <summary>
/// The list of sheets, with notes under it. Every row is one line, whatever it says: a sheet that is not named yet takes the same
/// room.
/// </summary>
/// <param name="titles">The titles of all sheets in order; an empty one leaves its row empty.</param>
/// <param name="notes">The panel's notes and, where no sheet has room for them, its cautions.</param>
internal sealed class SheetList(ImmutableArray<string> titles, ImmutableArray<string> notes) : FlowBlock(Heading)
{
    /// <summary>What stands above it.</summary>
    public const string Heading = "Sheets";

    private const double LetterHeight = 2.5;
    private const double NumberWidth = 11;
    private const double LeastWidth = 90;
    private const double LinePitch = 3.75;

    /// <inheritdoc/>
    protected override FlowShape? Shape(FlowRoom room)
    {
        if (room.WidthMm < Math.Min(LeastWidth, room.SheetMm) - 1e-6) return null;
        var pitch = LetterHeight + (2 * room.RowRoomMm);
        FlowRow Row(string number, string title, bool isHeader, bool isBand) => new(pitch, () =>
        [
            .. isBand ? [LineMark.Rectangle(MarkRole.Table, new BoxMm(0, 0, room.WidthMm, pitch), null, Ink.Band)] : Array.Empty<Mark>(),
            .. isHeader ? [LineMark.Between(MarkRole.Table, default, new(room.WidthMm, 0), Pen.Narrow), LineMark.Between(MarkRole.Table, new(0, pitch), new(room.WidthMm, pitch), Pen.Wide)] : Array.Empty<Mark>(),
            Text(number, NumberWidth - 2, room) with { Align = TextAlign.End, IsBold = isHeader },
            Text(Lettering.Fit(title, LetterHeight, room.WidthMm - NumberWidth - 2, isHeader), NumberWidth, room) with { IsBold = isHeader },
        ]);
        var lines = notes.SelectMany((n, i) => Note(n, room, i == 0));
        return new FlowShape(
            room.WidthMm, 1, Row("Sheet", "Title", isHeader: true, isBand: false),
            [.. titles.Select((t, i) => t.Length == 0 ? new FlowRow(pitch, []) : Row((i + 1).ToString(CultureInfo.InvariantCulture), t, isHeader: false, isBand: i % 2 == 1))],
            [.. lines])
        {
            Foot = [LineMark.Between(MarkRole.Table, default, new(room.WidthMm, 0), Pen.Narrow)],
        };
    }

    private static TextMark Text(string text, double x, FlowRoom room) =>
        new(MarkRole.Table, text, new PointMm(x, room.RowRoomMm + LetterHeight), LetterHeight);

    /// <summary>A sentence as rows: one, unless it is higher than a sheet.</summary>
    public static IEnumerable<FlowRow> Note(string text, FlowRoom room, bool isFirst)
    {
        var top = isFirst ? WordRow.NoteGapMm : LinePitch / 4;
        var lines = Lettering.Wrap(text, LetterHeight, room.WidthMm);
        var most = Math.Max(1, (int)((room.HeightMm - top) / LinePitch) - 1);
        for (var from = 0; from < lines.Count; from += most)
        {
            List<string> here = [.. lines.Skip(from).Take(most).Select(l => Lettering.Fit(l, LetterHeight, room.WidthMm))];
            yield return WordRow.Of(here, top, LinePitch);
        }
    }
}
