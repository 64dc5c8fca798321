namespace Schematic.Text;

/// <summary>
/// What ends a line, for every stage alike: a line feed, a carriage return, or both together as one. Form feeds, vertical tabs
/// and the line ends of other alphabets (U+0085, U+2028, U+2029) do not.
/// </summary>
public static class LineEnds
{
    /// <summary>Whether the character ends a line, or is half of what does.</summary>
    public static bool Is(char c) => c is '\n' or '\r';

    /// <summary>Where the first line of the text ends; -1 when it does not.</summary>
    public static int IndexIn(ReadOnlySpan<char> text) => text.IndexOfAny('\n', '\r');

    /// <summary>How many characters end the line at a position: 0, 1, or 2 for carriage return and line feed.</summary>
    public static int LengthAt(ReadOnlySpan<char> text, int position) => text[position] switch
    {
        '\n' => 1,
        '\r' => position + 1 < text.Length && text[position + 1] == '\n' ? 2 : 1,
        _ => 0,
    };
}
