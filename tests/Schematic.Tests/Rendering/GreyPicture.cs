using Schematic.Drawing;
using Schematic.Rendering;
using SkiaSharp;

namespace Schematic.Tests.Rendering;

/// <summary>A sheet as a black-and-white printer gives it: every pixel from 0 (black) to 255 (white).</summary>
internal sealed class GreyPicture
{
    private readonly byte[] _pixels;
    private readonly int _width;
    private readonly double _pixelsPerMm;

    private GreyPicture(byte[] pixels, int width, double pixelsPerMm) =>
        (_pixels, _width, _pixelsPerMm) = (pixels, width, pixelsPerMm);

    public static GreyPicture Of(Sheet sheet, int dpi = 200)
    {
        using var picture = SKBitmap.Decode(PngWriter.Write(SvgWriter.Write(sheet), dpi));
        using var grey = picture.ColorType == SKColorType.Gray8 ? picture.Copy() : picture.Copy(SKColorType.Gray8);
        return new GreyPicture(grey.GetPixelSpan().ToArray(), grey.RowBytes, dpi / 25.4);
    }

    /// <summary>The box around everything darker than half, in millimetres; null when nothing is.</summary>
    public BoxMm? DarkBox()
    {
        int left = int.MaxValue, top = int.MaxValue, right = -1, bottom = -1;
        for (var i = 0; i < _pixels.Length; i++)
        {
            if (_pixels[i] >= 128) continue;
            var (x, y) = (i % _width, i / _width);
            (left, top, right, bottom) = (Math.Min(left, x), Math.Min(top, y), Math.Max(right, x), Math.Max(bottom, y));
        }

        return right < 0 ? null : new BoxMm(left / _pixelsPerMm, top / _pixelsPerMm, (right + 1) / _pixelsPerMm, (bottom + 1) / _pixelsPerMm);
    }

    /// <summary>Brightness of one place, 0 to 255.</summary>
    public byte Luminance(PointMm at) => _pixels[(Pixel(at.Y) * _width) + Pixel(at.X)];

    /// <summary>Difference between the lightest and the darkest pixel in and around a box.</summary>
    public int ContrastIn(BoxMm box)
    {
        var around = box.Grown(0.4);
        int least = 255, most = 0;
        for (var y = Pixel(around.Top); y <= Pixel(around.Bottom); y++)
        {
            for (var x = Pixel(around.Left); x <= Pixel(around.Right); x++)
            {
                var i = (y * _width) + x;
                if (x < 0 || x >= _width || i < 0 || i >= _pixels.Length) continue;
                (least, most) = (Math.Min(least, _pixels[i]), Math.Max(most, _pixels[i]));
            }
        }

        return most - least;
    }

    private int Pixel(double mm) => (int)(mm * _pixelsPerMm);
}
