using System.Collections.Immutable;
using System.Globalization;
using Schematic.Fonts;
using Schematic.Rendering;
using SkiaSharp;
using Svg.Skia;
using Svg.Skia.TypefaceProviders;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Rendering;

/// <summary>
/// A picture is painted once at its own dots. It is held to the same sheet painted four times finer each way and brought down by plain
/// averaging, and to what the reader of SVG (Svg.Skia) paints with its own lettering, brought down likewise. Likeness is the mean structural
/// similarity of Wang, Bovik, Sheikh and Simoncelli (IEEE Transactions on Image Processing 13, 2004) over windows of 8 by 8 dots that
/// are not blank in both, with their constants; 1 is the same picture.
/// </summary>
public class LikenessTests
{
    private const int Finer = 4;

    /// <summary>Coarser than pictures are usually asked for: finer ones come out nearer to 1.</summary>
    private const int Dpi = 90;

    private static readonly Lazy<ImmutableArray<string>> Pack = new(() =>
        [.. ExamplePacks.Of("examples/relay-latch/latch.panel").Sheets.Take(2).Select(SvgWriter.Write)]);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void A_picture_looks_like_a_finer_one_brought_down(int sheet)
    {
        var svg = Pack.Value[sheet];
        Assert.InRange(Likeness(Ours(svg, Dpi), BroughtDown(Ours(svg, Dpi * Finer))), 0.965, 1);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void A_picture_looks_like_that_of_the_readers_own_lettering_brought_down(int sheet)
    {
        var svg = Pack.Value[sheet];
        Assert.InRange(Likeness(Ours(svg, Dpi), BroughtDown(Theirs(svg, Dpi * Finer))), 0.955, 1);
    }

    [Fact]
    public void Lettering_on_whole_dots_would_not_look_like_it()
    {
        var svg = Pack.Value[1];
        Assert.InRange(Likeness(Theirs(svg, Dpi), BroughtDown(Theirs(svg, Dpi * Finer))), 0, 0.9);
    }

    private static Grey Ours(string svg, int dpi)
    {
        using var picture = SKBitmap.Decode(PngWriter.Write(svg, dpi));
        return Grey.Of(picture);
    }

    private static Grey Theirs(string svg, int dpi)
    {
        using var reader = new SKSvg();
        using var faces = new PlainFaces();
        reader.Settings.TypefaceProviders!.Clear();
        reader.Settings.TypefaceProviders.Add(faces);
        var read = reader.FromSvg(svg)!;
        var box = svg.Split("viewBox=\"")[1].Split('"')[0].Split(' ').Select(v => double.Parse(v, CultureInfo.InvariantCulture)).ToArray();
        var (width, height) = (box[2], box[3]);
        var bounds = read.CullRect;
        var fitted = Math.Min(bounds.Width / width, bounds.Height / height);
        using var picture = new SKBitmap(new SKImageInfo(Dots(width, dpi), Dots(height, dpi), SKColorType.Bgra8888, SKAlphaType.Opaque));
        using var canvas = new SKCanvas(picture);
        canvas.Clear(SKColors.White);
        canvas.Scale((float)(dpi / 25.4 / fitted));
        // It rounds the picture up to whole units and centres the sheet in that.
        canvas.Translate((float)(((width * fitted) - bounds.Width) / 2), (float)(((height * fitted) - bounds.Height) / 2));
        canvas.DrawPicture(read);
        return Grey.Of(picture);
    }

    private static int Dots(double mm, int dpi) => (int)Math.Round(mm / 25.4 * dpi);

    private static Grey BroughtDown(Grey fine)
    {
        var coarse = new Grey(fine.Width / Finer, fine.Height / Finer);
        for (var y = 0; y < coarse.Height; y++)
        {
            for (var x = 0; x < coarse.Width; x++)
            {
                var sum = 0.0;
                for (var i = 0; i < Finer * Finer; i++) sum += fine[(x * Finer) + (i % Finer), (y * Finer) + (i / Finer)];
                coarse[x, y] = (byte)Math.Round(sum / (Finer * Finer));
            }
        }

        return coarse;
    }

    private static double Likeness(Grey one, Grey other)
    {
        const int Window = 8;
        var all = new List<double>();
        for (var y = 0; y + Window <= Math.Min(one.Height, other.Height); y += Window)
        {
            for (var x = 0; x + Window <= Math.Min(one.Width, other.Width); x += Window)
            {
                if (Likeness(one, other, x, y, Window) is { } likeness) all.Add(likeness);
            }
        }

        return all.Average();
    }

    /// <summary>Null where both are blank.</summary>
    private static double? Likeness(Grey one, Grey other, int left, int top, int size)
    {
        double a = 0, b = 0, aa = 0, bb = 0, ab = 0, n = size * size;
        for (var i = 0; i < n; i++)
        {
            var (p, q) = (one[left + (i % size), top + (i / size)], other[left + (i % size), top + (i / size)]);
            (a, b, aa, bb, ab) = (a + p, b + q, aa + (p * p), bb + (q * q), ab + (p * q));
        }

        if (a == 255 * n && b == 255 * n) return null;
        const double C1 = 0.01 * 255 * 0.01 * 255, C2 = 0.03 * 255 * 0.03 * 255;
        (a, b) = (a / n, b / n);
        var (varianceA, varianceB, covariance) = ((aa / n) - (a * a), (bb / n) - (b * b), (ab / n) - (a * b));
        return ((2 * a * b) + C1) * ((2 * covariance) + C2) / (((a * a) + (b * b) + C1) * (varianceA + varianceB + C2));
    }

    /// <summary>Brightness of every dot, 0 to 255.</summary>
    private sealed class Grey(int width, int height)
    {
        private readonly byte[] _dots = new byte[width * height];

        public int Width => width;

        public int Height => height;

        public byte this[int x, int y]
        {
            get => _dots[(y * width) + x];
            set => _dots[(y * width) + x] = value;
        }

        public static Grey Of(SKBitmap picture)
        {
            var grey = new Grey(picture.Width, picture.Height);
            var size = picture.BytesPerPixel;
            var bytes = picture.GetPixelSpan();
            for (var y = 0; y < picture.Height; y++)
            {
                for (var x = 0; x < picture.Width; x++) grey[x, y] = bytes[(y * picture.RowBytes) + (x * size)];
            }

            return grey;
        }
    }

    /// <summary>The bundled faces for whatever family is asked for, as Skia loads them.</summary>
    private sealed class PlainFaces : ITypefaceProvider, IDisposable
    {
        private readonly SKTypeface _regular = Load(bold: false);
        private readonly SKTypeface _bold = Load(bold: true);

        public SKTypeface FromFamilyName(string fontFamily, SKFontStyleWeight fontWeight, SKFontStyleWidth fontWidth, SKFontStyleSlant fontStyle) =>
            (int)fontWeight > (int)SKFontStyleWeight.Medium ? _bold : _regular;

        public void Dispose()
        {
            _regular.Dispose();
            _bold.Dispose();
        }

        private static SKTypeface Load(bool bold)
        {
            using var stream = BundledFonts.Open(bold);
            return SKTypeface.FromStream(stream);
        }
    }
}
