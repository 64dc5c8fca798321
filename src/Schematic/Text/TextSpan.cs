namespace Schematic.Text;

/// <summary>A run of characters in a source text: where it starts and how many there are, both counted in UTF-16 units.</summary>
public readonly record struct TextSpan(int Start, int Length)
{
    /// <summary>The position just after the last character.</summary>
    public int End => Start + Length;

    /// <summary>The same run of characters after others were put in before it, or taken out.</summary>
    public TextSpan Moved(int by) => new(Start + by, Length);

    /// <summary>Makes a span from its first position and the position just after its last.</summary>
    public static TextSpan FromBounds(int start, int end) => new(start, Math.Max(0, end - start));
}
