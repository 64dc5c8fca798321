using System.Text;
using Schematic.Text;
using Wcwidth;

namespace Schematic.Diagnostics;

/// <summary>
/// One line of a file as a terminal shows it, with the place of a span below it: tabs are blanks, characters that would move
/// the cursor are replaced, a long line is cut to a window around the span.
/// </summary>
/// <param name="Text">What is printed.</param>
/// <param name="MarkColumn">Columns before the mark.</param>
/// <param name="MarkWidth">Columns of the mark, at least one.</param>
public sealed record SourceExcerpt(string Text, int MarkColumn, int MarkWidth)
{
    private const int TabWidth = 4;
    private const string Cut = "...";

    /// <summary>The first line of <paramref name="span"/>, in at most <paramref name="width"/> columns.</summary>
    public static SourceExcerpt Of(SourceText source, TextSpan span, int width)
    {
        var line = source.LineSpan(source.PositionOf(span.Start).Line);
        var start = Math.Min(span.Start, line.End);
        var end = Math.Clamp(span.End, start, line.End);

        // A line may be a megabyte long: only what can come into the window is looked at.
        var from = Math.Max(line.Start, start - width);
        var cutBefore = from > line.Start;
        if (cutBefore && char.IsLowSurrogate(source.Content[from])) from++;
        var to = Math.Min(line.End, start + width + 1);
        if (to < line.End && char.IsLowSurrogate(source.Content[to])) to++;
        return Window(Cells(source.Content.AsSpan(from, to - from)), start - from, end - from, width, cutBefore, to < line.End);
    }

    private static SourceExcerpt Window(List<Cell> cells, int start, int end, int width, bool cutBefore, bool cutAfter)
    {
        var markAt = cells.TakeWhile(c => c.Offset < start).Sum(c => c.Width);
        var markWidth = cells.Where(c => c.Offset >= start && c.Offset < end).Sum(c => c.Width);
        if (!cutBefore && !cutAfter && cells.Sum(c => c.Width) <= width)
            return new SourceExcerpt(string.Concat(cells.Select(c => c.Text)).TrimEnd(), markAt, Math.Max(1, markWidth));

        // A mark in the first half leaves the beginning of the line in sight; another stands at a third of the window.
        var first = !cutBefore && markAt < width / 2 ? 0 : markAt - (width / 3);
        var lead = cutBefore || first > 0 ? Cut : "";
        var room = width - lead.Length - Cut.Length;
        var text = new StringBuilder(lead);
        int at = 0, skipped = 0, shown = 0;
        foreach (var cell in cells)
        {
            if (at < first)
            {
                skipped += cell.Width;
            }
            else if (shown + cell.Width > room)
            {
                cutAfter = true;
                break;
            }
            else
            {
                text.Append(cell.Text);
                shown += cell.Width;
            }

            at += cell.Width;
        }

        var column = lead.Length + markAt - skipped;
        var longest = Math.Max(1, lead.Length + shown - column);
        return new SourceExcerpt(text.Append(cutAfter ? Cut : "").ToString(), column, Math.Clamp(markWidth, 1, longest));
    }

    private static List<Cell> Cells(ReadOnlySpan<char> line)
    {
        var cells = new List<Cell>(line.Length);
        var column = 0;
        var offset = 0;
        foreach (var rune in line.EnumerateRunes())
        {
            var cell = Show(rune, offset, column);
            cells.Add(cell);
            column += cell.Width;
            offset += rune.Utf16SequenceLength;
        }

        return cells;
    }

    private static Cell Show(Rune rune, int offset, int column)
    {
        if (rune.Value == '\t')
        {
            var blanks = TabWidth - (column % TabWidth);
            return new Cell(offset, new string(' ', blanks), blanks);
        }

        return HiddenCharacters.IsHidden(rune)
            ? new Cell(offset, HiddenCharacters.Code(rune.Value), HiddenCharacters.Code(rune.Value).Length)
            : new Cell(offset, rune.ToString(), Math.Max(0, UnicodeCalculator.GetWidth(rune)));
    }

    /// <summary>One character as shown: its offset in the line, its text, and how many columns it takes.</summary>
    private readonly record struct Cell(int Offset, string Text, int Width);
}
