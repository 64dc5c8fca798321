using System.Text;
using Schematic.Drawing;

namespace Schematic.Rendering;

/// <summary>Makes of one sheet after the other what is asked for. One painter serves one thread at a time.</summary>
/// <param name="formats">What to make.</param>
/// <param name="dpi">Dots per inch of pictures.</param>
internal sealed class SheetPainter(IReadOnlyCollection<SheetFormat> formats, int dpi) : IDisposable
{
    private readonly PngCanvas _canvas = new();

    /// <summary>The sheet as SVG, and whatever is painted from that text, which is read once.</summary>
    public PaintedSheet Paint(Sheet sheet)
    {
        var isPicture = formats.Contains(SheetFormat.Png);
        var isPage = formats.Contains(SheetFormat.Pdf);
        if (!isPicture && !isPage && !formats.Contains(SheetFormat.Svg)) return new PaintedSheet(sheet);
        var svg = SvgWriter.Write(sheet);
        var picture = isPicture || isPage ? new SvgPicture(svg) : null;
        return new PaintedSheet(sheet)
        {
            Svg = formats.Contains(SheetFormat.Svg) ? Encoding.UTF8.GetBytes(svg) : null,
            Png = isPicture ? _canvas.Paint(picture!, dpi) : null,
            Picture = picture,
        };
    }

    /// <inheritdoc/>
    public void Dispose() => _canvas.Dispose();
}

/// <summary>One sheet in the formats that were asked for.</summary>
/// <param name="Sheet">What it was made of.</param>
internal sealed record PaintedSheet(Sheet Sheet)
{
    /// <summary>The SVG file.</summary>
    public byte[]? Svg { get; init; }

    /// <summary>The PNG file.</summary>
    public byte[]? Png { get; init; }

    /// <summary>What a page is painted from. Whoever paints the page disposes it.</summary>
    public SvgPicture? Picture { get; init; }
}
