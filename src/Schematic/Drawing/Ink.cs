namespace Schematic.Drawing;

/// <summary>A colour on paper, each channel 0 to 255.</summary>
public readonly record struct Ink(byte Red, byte Green, byte Blue)
{
    /// <summary>Black.</summary>
    public static Ink Black => new(0, 0, 0);

    /// <summary>White.</summary>
    public static Ink White => new(255, 255, 255);

    /// <summary>Dark grey for quiet text and lines; still well readable in black and white.</summary>
    public static Ink Quiet => new(90, 90, 90);

    /// <summary>Light grey for table bands.</summary>
    public static Ink Band => new(236, 236, 236);

    /// <summary>Perceived brightness from 0 (black) to 1 (white), ITU-R BT.601 weights.</summary>
    public double Luminance => ((0.299 * Red) + (0.587 * Green) + (0.114 * Blue)) / 255;
}
