using System.Globalization;
using Schematic.Model;
using SkiaSharp;

namespace Schematic.Rendering;

/// <summary>Binds the SVGs of all sheets into one PDF document, a page each at true size, with searchable text.</summary>
public static class PdfWriter
{
    private const double PointsPerMm = 72 / 25.4;

    // Page sizes snap to this raster; 254 dots to the inch make a tenth of a millimetre (measured).
    private const int RasterDpi = 254;

    /// <summary>The PDF file of sheets given as SVG text: the same bytes in every run.</summary>
    public static byte[] Write(IEnumerable<string> sheets, TitleData title)
    {
        var pictures = sheets.Select(svg => new SvgPicture(svg)).ToList();
        try
        {
            return Write(pictures, title);
        }
        finally
        {
            foreach (var picture in pictures) picture.Dispose();
        }
    }

    /// <summary>The PDF file of sheets that have been read already. It uses their typefaces until it is closed.</summary>
    internal static byte[] Write(IEnumerable<SvgPicture> sheets, TitleData title)
    {
        using var output = new MemoryStream();
        using var document = SKDocument.CreatePdf(output, MetadataOf(title));
        foreach (var sheet in sheets) AddPage(document, sheet);
        document.Close();
        var bytes = output.ToArray();
        ClearZones(bytes);
        return bytes;
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

    private static void AddPage(SKDocument document, SvgPicture picture)
    {
        var canvas = document.BeginPage((float)(picture.WidthMm * PointsPerMm), (float)(picture.HeightMm * PointsPerMm));
        picture.PaintOn(canvas, PointsPerMm);
        document.EndPage();
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
