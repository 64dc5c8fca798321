namespace Schematic.Drawing;

/// <summary>Which part of a line of text stands at its anchor.</summary>
public enum TextAlign
{
    /// <summary>The beginning.</summary>
    Start,

    /// <summary>The middle.</summary>
    Middle,

    /// <summary>The end.</summary>
    End,
}
