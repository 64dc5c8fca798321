namespace Schematic.Rendering;

/// <summary>Paints the SVG of a sheet as a PNG picture.</summary>
public static class PngWriter
{
    /// <summary>Dots per inch unless asked otherwise: small lettering is readable on a screen.</summary>
    public const int DefaultDpi = 150;

    /// <summary>The PNG file of a sheet given as SVG text.</summary>
    public static byte[] Write(string svg, int dpi = DefaultDpi)
    {
        using var picture = new SvgPicture(svg);
        using var canvas = new PngCanvas();
        return canvas.Paint(picture, dpi);
    }
}
