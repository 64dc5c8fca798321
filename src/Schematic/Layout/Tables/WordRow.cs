using Schematic.Drawing;

namespace Schematic.Layout.Tables;

/// <summary>Lines of words as one row: notes under tables, bars and labels, and what is said above bars.</summary>
internal static class WordRow
{
    /// <summary>Height of its letters in millimetres.</summary>
    public const double LetterMm = TableRow.Lettering;

    /// <summary>Above the first note under something, in millimetres.</summary>
    public const double NoteGapMm = 2;

    /// <summary>The lines below each other. An empty line takes its room and no mark.</summary>
    /// <param name="lines">The lines, broken to the width that they have.</param>
    /// <param name="topMm">Room above them in millimetres.</param>
    /// <param name="pitchMm">From line to line in millimetres.</param>
    public static FlowRow Of(IReadOnlyCollection<string> lines, double topMm = 0, double pitchMm = TableRow.LinePitch) => new(
        topMm + (lines.Count * pitchMm),
        () => [.. lines.Select((line, i) => new TextMark(MarkRole.Table, line, new PointMm(0, topMm + (i * pitchMm) + LetterMm), LetterMm)).Where(t => t.Text.Length > 0)]);
}
