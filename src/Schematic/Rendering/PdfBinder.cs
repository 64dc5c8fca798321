using System.Globalization;
using Schematic.Model;
using SkiaSharp;

namespace Schematic.Rendering;

/// <summary>A PDF document to which sheets are added one by one, each a page at true size; what is added need not be kept.</summary>
internal sealed class PdfBinder : IDisposable
{
    private const double PointsPerMm = 72 / 25.4;

    // Page sizes snap to this raster; 254 dots to the inch make a tenth of a millimetre (measured).
    private const int RasterDpi = 254;

    private readonly MemoryStream _output = new();
    private readonly SKDocument _document;

    /// <summary>An empty document with the properties of a drawing.</summary>
    public PdfBinder(TitleData title) => _document = SKDocument.CreatePdf(_output, MetadataOf(title));

    /// <summary>Adds a sheet as the next page.</summary>
    public void Add(SvgPicture picture)
    {
        var canvas = _document.BeginPage((float)(picture.WidthMm * PointsPerMm), (float)(picture.HeightMm * PointsPerMm));
        picture.PaintOn(canvas, PointsPerMm);
        _document.EndPage();
    }

    /// <summary>The finished file; nothing can be added any more.</summary>
    public byte[] Finish()
    {
        _document.Close();
        var bytes = _output.ToArray();
        ClearZones(bytes);
        return bytes;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _document.Dispose();
        _output.Dispose();
    }

    /// <summary>
    /// The library puts the zone of the machine beside a date that has none: <c>(D:20261125000000+05'00')</c>. It is taken out, so
    /// that the same drawing has the same bytes everywhere.
    /// </summary>
    internal static void ClearZones(Span<byte> bytes)
    {
        var date = "Date (D:"u8;
        var zone = "+00'00'"u8;
        const int Digits = 14;
        for (var at = bytes.IndexOf(date); at >= 0;)
        {
            bytes = bytes[(at + date.Length)..];
            if (bytes.Length < Digits + zone.Length) return;
            if (!bytes[..Digits].ContainsAnyExceptInRange((byte)'0', (byte)'9') && bytes[Digits] is (byte)'+' or (byte)'-')
                zone.CopyTo(bytes[Digits..]);
            at = bytes.IndexOf(date);
        }
    }

    private static SKDocumentPdfMetadata MetadataOf(TitleData title)
    {
        var metadata = new SKDocumentPdfMetadata
        {
            Title = title.Title,
            Author = title.DrawnBy.Length > 0 ? title.DrawnBy : title.Owner,
            Subject = title.Revision.Length > 0 ? $"{title.Number} revision {title.Revision}" : title.Number,
            RasterDpi = RasterDpi,
            EncodingQuality = 101,
        };
        // The date of issue is the only date a drawing has; the clock is never asked.
        if (DateTime.TryParseExact(title.Date, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var date))
        {
            metadata.Creation = date;
            metadata.Modified = date;
        }

        return metadata;
    }
}
