using SkiaSharp;

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
        var scale = dpi / 96f;
        var width = (int)Math.Round(picture.WidthMm / 25.4 * dpi);
        var height = (int)Math.Round(picture.HeightMm / 25.4 * dpi);
        using var surface = SKSurface.Create(new SKImageInfo(width, height));
        surface.Canvas.Clear(SKColors.White);
        surface.Canvas.Scale(scale);
        surface.Canvas.DrawPicture(picture.Picture);
        using var image = surface.Snapshot();
        using var data = image.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }
}
