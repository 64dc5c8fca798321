using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using SkiaSharp;

namespace Schematic.Rendering;

/// <summary>
/// Paints sheets as PNG pictures, once and at their own dots, in memory that serves the next sheet as well. A sheet without colours is
/// painted in the four channels that Skia is fastest in and packed as grey.
/// </summary>
internal sealed class PngCanvas : IDisposable
{
    // Line art needs no filter, and a longer search for repeats than level 3 saves a tenth for twice the time (measured).
    private static readonly SKPngEncoderOptions Packing = new(SKPngEncoderFilterFlags.None, 3);

    private SKBitmap? _dots;
    private SKBitmap? _greys;

    /// <summary>The PNG file of a sheet.</summary>
    public byte[] Paint(SvgPicture picture, int dpi)
    {
        var dots = Room(ref _dots, Pixels(picture.WidthMm, dpi), Pixels(picture.HeightMm, dpi), SKColorType.Bgra8888);
        using (var canvas = new SKCanvas(dots))
        {
            canvas.Clear(SKColors.White);
            picture.PaintOn(canvas, dpi / 25.4);
        }

        return Packed(picture.IsGrey ? Greys(dots) : dots);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _dots?.Dispose();
        _greys?.Dispose();
    }

    /// <summary>One channel of a picture whose three are equal.</summary>
    private SKBitmap Greys(SKBitmap dots)
    {
        var greys = Room(ref _greys, dots.Width, dots.Height, SKColorType.Gray8);
        for (var row = 0; row < dots.Height; row++)
        {
            var from = MemoryMarshal.Cast<byte, uint>(dots.GetPixelSpan().Slice(row * dots.RowBytes, dots.Width * sizeof(uint)));
            TakeLowest(from, greys.GetPixelSpan().Slice(row * greys.RowBytes, greys.Width));
        }

        return greys;
    }

    /// <summary>The lowest byte of each number, sixteen at a time.</summary>
    private static void TakeLowest(ReadOnlySpan<uint> from, Span<byte> to)
    {
        var i = 0;
        var mask = Vector128.Create(0xFFu);
        for (; i + 16 <= from.Length; i += 16)
        {
            var one = Vector128.Narrow(Vector128.Create(from[i..]) & mask, Vector128.Create(from[(i + 4)..]) & mask);
            var two = Vector128.Narrow(Vector128.Create(from[(i + 8)..]) & mask, Vector128.Create(from[(i + 12)..]) & mask);
            Vector128.Narrow(one, two).CopyTo(to[i..]);
        }

        for (; i < from.Length; i++) to[i] = (byte)from[i];
    }

    private static SKBitmap Room(ref SKBitmap? kept, int width, int height, SKColorType type)
    {
        if (kept is not null && kept.Width == width && kept.Height == height) return kept;
        kept?.Dispose();
        return kept = new SKBitmap(new SKImageInfo(width, height, type, SKAlphaType.Opaque));
    }

    private static byte[] Packed(SKBitmap bitmap)
    {
        using var pixels = bitmap.PeekPixels();
        using var data = pixels.Encode(Packing) ?? throw new InvalidOperationException("The picture could not be packed.");
        return data.ToArray();
    }

    private static int Pixels(double mm, int dpi) => (int)Math.Round(mm / 25.4 * dpi);
}
