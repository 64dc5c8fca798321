using SkiaSharp;

namespace Schematic.Rendering;

/// <summary>Paints the SVG of a sheet as a PNG picture.</summary>
public static class PngWriter
{
    /// <summary>Dots per inch unless asked otherwise: small lettering is readable on a screen.</summary>
    public const int DefaultDpi = 150;

    // About 160 MB: an A2 sheet at the usual fineness. Larger pictures are painted as they are.
    private const long MostFinePixels = 40_000_000;

    // Line art packs as well with one simple filter as with the search for the best, in a third of the time (measured).
    private static readonly SKPngEncoderOptions Packing = new(SKPngEncoderFilterFlags.Up, 6);

    /// <summary>The PNG file of a sheet given as SVG text.</summary>
    public static byte[] Write(string svg, int dpi = DefaultDpi)
    {
        using var picture = new SvgPicture(svg);
        return Write(picture, dpi);
    }

    /// <summary>The PNG file of a sheet that has been read already.</summary>
    internal static byte[] Write(SvgPicture picture, int dpi)
    {
        var size = new SKImageInfo(
            Pixels(picture.WidthMm, dpi), Pixels(picture.HeightMm, dpi), SKColorType.Rgba8888, SKAlphaType.Opaque);
        using var image = Paint(picture, size, dpi, Fineness(size, dpi));
        using var pixels = image.PeekPixels();
        return IsGrey(pixels.GetPixelSpan()) ? Bytes(image, SKColorType.Gray8) : Bytes(pixels);
    }

    /// <summary>
    /// How many times finer than asked the sheet is painted before it is brought down to size. Skia sets letters on whole
    /// dots: at few dots per inch the blanks between words would close.
    /// </summary>
    private static int Fineness(SKImageInfo size, int dpi)
    {
        var wanted = dpi < 100 ? 4 : dpi < 200 ? 2 : 1;
        return (long)size.Width * size.Height * wanted * wanted <= MostFinePixels ? wanted : 1;
    }

    private static SKImage Paint(SvgPicture picture, SKImageInfo size, int dpi, int fineness)
    {
        using var surface = SKSurface.Create(size.WithSize(size.Width * fineness, size.Height * fineness));
        surface.Canvas.Clear(SKColors.White);
        picture.PaintOn(surface.Canvas, dpi * fineness / 25.4);
        var fine = surface.Snapshot();
        return fineness == 1 ? fine : BroughtDown(fine, size);
    }

    private static SKImage BroughtDown(SKImage fine, SKImageInfo size)
    {
        using (fine)
        {
            using var surface = SKSurface.Create(size);
            surface.Canvas.DrawImage(
                fine, SKRect.Create(size.Width, size.Height), new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Nearest));
            return surface.Snapshot();
        }
    }

    private static int Pixels(double mm, int dpi) => (int)Math.Round(mm / 25.4 * dpi);

    /// <summary>Whether red, green and blue are equal everywhere: then one channel says it all.</summary>
    private static bool IsGrey(ReadOnlySpan<byte> rgba)
    {
        for (var i = 0; i + 3 < rgba.Length; i += 4)
        {
            if (rgba[i] != rgba[i + 1] || rgba[i] != rgba[i + 2]) return false;
        }

        return true;
    }

    private static byte[] Bytes(SKImage image, SKColorType type)
    {
        using var bitmap = new SKBitmap(new SKImageInfo(image.Width, image.Height, type, SKAlphaType.Opaque));
        using var pixels = bitmap.PeekPixels();
        if (!image.ReadPixels(pixels, 0, 0)) throw new InvalidOperationException("The picture could not be read back.");
        return Bytes(pixels);
    }

    private static byte[] Bytes(SKPixmap pixels)
    {
        using var data = pixels.Encode(Packing) ?? throw new InvalidOperationException("The picture could not be packed.");
        return data.ToArray();
    }
}
