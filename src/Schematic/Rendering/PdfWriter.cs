using Schematic.Model;

namespace Schematic.Rendering;

/// <summary>Binds the SVGs of all sheets into one PDF document, a page each at true size, with searchable text.</summary>
public static class PdfWriter
{
    /// <summary>The PDF file of sheets given as SVG text: the same bytes in every run.</summary>
    public static byte[] Write(IEnumerable<string> sheets, TitleData title)
    {
        using var document = new PdfBinder(title);
        foreach (var svg in sheets)
        {
            using var picture = new SvgPicture(svg);
            document.Add(picture);
        }

        return document.Finish();
    }
}
