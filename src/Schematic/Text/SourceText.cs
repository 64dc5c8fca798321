namespace Schematic.Text;

/// <summary>
/// The text of one panel file. Spans are offsets; lines and columns are found only when something is printed.
/// </summary>
public sealed class SourceText
{
    private readonly int[] _lineStarts;

    /// <summary>Wraps <paramref name="content"/>; <paramref name="fileName"/> is what diagnostics print.</summary>
    public SourceText(string fileName, string content)
    {
        FileName = fileName;
        Content = content;
        _lineStarts = FindLineStarts(content);
    }

    /// <summary>The name that diagnostics print: as the user gave it, or relative to the folder of the main file.</summary>
    public string FileName { get; }

    /// <summary>All characters of the file.</summary>
    public string Content { get; }

    /// <summary>How many lines there are; a text always has at least one.</summary>
    public int LineCount => _lineStarts.Length;

    /// <summary>Line and column, both from one, of a character offset. Offsets past the end are taken as the end.</summary>
    public LinePosition PositionOf(int offset)
    {
        offset = Math.Clamp(offset, 0, Content.Length);
        var index = Array.BinarySearch(_lineStarts, offset);
        if (index < 0) index = ~index - 1;
        return new LinePosition(index + 1, offset - _lineStarts[index] + 1);
    }

    /// <summary>The span of line <paramref name="line"/> (from one), without its line end.</summary>
    public TextSpan LineSpan(int line)
    {
        var start = _lineStarts[line - 1];
        var end = line < _lineStarts.Length ? _lineStarts[line] : Content.Length;
        while (end > start && LineEnds.Is(Content[end - 1])) end--;
        return TextSpan.FromBounds(start, end);
    }

    /// <summary>The characters of a span; parts outside the text are left away.</summary>
    public ReadOnlySpan<char> Slice(TextSpan span)
    {
        var start = Math.Clamp(span.Start, 0, Content.Length);
        var end = Math.Clamp(span.End, start, Content.Length);
        return Content.AsSpan(start, end - start);
    }

    private static int[] FindLineStarts(string content)
    {
        var starts = new List<int> { 0 };
        for (var at = LineEnds.IndexIn(content); at >= 0;)
        {
            at += LineEnds.LengthAt(content, at);
            starts.Add(at);
            var next = LineEnds.IndexIn(content.AsSpan(at));
            at = next < 0 ? -1 : at + next;
        }

        return [.. starts];
    }
}
