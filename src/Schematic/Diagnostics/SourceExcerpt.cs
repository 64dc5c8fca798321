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
        var total = cells.Sum(c => c.Width);
        var markAt = cells.TakeWhile(c => c.Offset < start).Sum(c => c.Width);
        var markWidth = Math.Max(1, cells.Where(c => c.Offset >= start && c.Offset < end).Sum(c => c.Width));
        var left = cutBefore || total > width ? Math.Max(0, markAt - (width / 3)) : 0;

        var text = new StringBuilder();
        if (cutBefore || left > 0) text.Append(Cut);
        var room = width - (2 * Cut.Length);
        int at = 0, shown = 0, hidden = 0;
        var isCut = cutAfter;
        foreach (var cell in cells)
        {
            if (at < left) hidden += cell.Width;
            else if (shown + cell.Width <= (left == 0 && !cutAfter && total <= width ? width : room)) { text.Append(cell.Text); shown += cell.Width; }
            else { isCut = true; break; }

            at += cell.Width;
        }

        var lead = cutBefore || left > 0 ? Cut.Length : 0;
        var column = lead + Math.Max(0, markAt - hidden);
        if (isCut) text.Append(Cut);
        return new SourceExcerpt(text.ToString().TrimEnd(), column, Math.Min(markWidth, Math.Max(1, lead + shown - column)));
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

        var width = UnicodeCalculator.GetWidth(rune);
        return width < 0 || Rune.GetUnicodeCategory(rune) == System.Globalization.UnicodeCategory.Format
            ? new Cell(offset, "?", 1)
            : new Cell(offset, rune.ToString(), width);
    }

    /// <summary>One character as shown: its offset in the line, its text, and how many columns it takes.</summary>
    private readonly record struct Cell(int Offset, string Text, int Width);
}
