using Schematic.Text;

namespace Schematic.Cli.LanguageServer;

/// <summary>Places of the protocol as places of a text, and back. Both count UTF-16 units; the protocol counts from zero.</summary>
internal static class Places
{
    /// <summary>A place of the protocol. A place past the end of a line is its end, as the protocol has it.</summary>
    public static int OffsetOf(SourceText source, Position position)
    {
        if (position.Line < 0) return 0;
        if (position.Line >= source.LineCount) return source.Content.Length;
        var line = source.LineSpan(position.Line + 1);
        return line.Start + Math.Clamp(position.Character, 0, line.Length);
    }

    /// <summary>A stretch of the protocol.</summary>
    public static TextSpan SpanOf(SourceText source, TextRange range) =>
        TextSpan.FromBounds(OffsetOf(source, range.Start), OffsetOf(source, range.End));

    /// <summary>A place of a text.</summary>
    public static Position PositionOf(SourceText source, int offset)
    {
        var place = source.PositionOf(offset);
        return new Position(place.Line - 1, place.Column - 1);
    }

    /// <summary>A stretch of a text.</summary>
    public static TextRange RangeOf(SourceText source, TextSpan span) => new(PositionOf(source, span.Start), PositionOf(source, span.End));

    /// <summary>A stretch of a text.</summary>
    public static TextRange RangeOf(SourceSpan span) => RangeOf(span.Source, span.Span);
}
