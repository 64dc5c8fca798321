using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Schematic.Drawing;
using Schematic.Model;

namespace Schematic.Rendering;

/// <summary>Turns the sheets of a pack into files. Every format is made from one SVG of the sheet, so that they cannot differ.</summary>
public static class PackFiles
{
    /// <summary>
    /// The files of a pack in the order of its sheets: <c>NAME-01-schematic.svg</c> and so on, and one <c>NAME.pdf</c>.
    /// </summary>
    /// <param name="sheets">The finished sheets.</param>
    /// <param name="name">What file names begin with; characters that a file name should not have become a hyphen.</param>
    /// <param name="title">Goes into the document's properties.</param>
    /// <param name="formats">What to make.</param>
    /// <param name="dpi">Dots per inch of PNG pictures.</param>
    public static ImmutableArray<PackFile> Render(
        ImmutableArray<Sheet> sheets, string name, TitleData title, IReadOnlyCollection<SheetFormat> formats,
        int dpi = PngWriter.DefaultDpi)
    {
        var svgs = sheets.Select(SvgWriter.Write).ToArray();
        var (pictures, document) = Paint(svgs, title, formats, dpi);
        var files = ImmutableArray.CreateBuilder<PackFile>();
        for (var i = 0; i < sheets.Length; i++)
        {
            var stem = SheetName(name, sheets[i], sheets.Length);
            if (formats.Contains(SheetFormat.Svg)) files.Add(new PackFile(stem + ".svg", Encoding.UTF8.GetBytes(svgs[i])));
            if (formats.Contains(SheetFormat.Png)) files.Add(new PackFile(stem + ".png", pictures[i]));
        }

        if (formats.Contains(SheetFormat.Pdf)) files.Add(new PackFile(SafeName(name) + ".pdf", document));
        return files.ToImmutable();
    }

    /// <summary>Reads every SVG once and paints both formats from it; the document is written beside the pictures.</summary>
    private static (byte[][] Pictures, byte[] Document) Paint(
        string[] svgs, TitleData title, IReadOnlyCollection<SheetFormat> formats, int dpi)
    {
        var files = new byte[svgs.Length][];
        byte[] document = [];
        if (!formats.Contains(SheetFormat.Png) && !formats.Contains(SheetFormat.Pdf)) return (files, document);
        var pictures = svgs.AsParallel().AsOrdered().Select(svg => new SvgPicture(svg)).ToArray();
        Parallel.For(-1, svgs.Length, i =>
        {
            if (i >= 0 && formats.Contains(SheetFormat.Png)) files[i] = PngWriter.Write(pictures[i], dpi);
            if (i < 0 && formats.Contains(SheetFormat.Pdf)) document = PdfWriter.Write(pictures, title);
        });
        foreach (var picture in pictures) picture.Dispose();
        return (files, document);
    }

    /// <summary>A name that every file system takes: letters, digits, dot, hyphen, underscore.</summary>
    public static string SafeName(string name)
    {
        var safe = string.Concat(name.Select(c => char.IsAsciiLetterOrDigit(c) || c is '.' or '-' or '_' ? c : '-')).Trim('.', '-');
        return safe.Length == 0 ? "panel" : safe[..Math.Min(safe.Length, 80)];
    }

    /// <summary>The name of a sheet's file without its ending.</summary>
    public static string SheetName(string name, Sheet sheet, int sheetCount)
    {
        var digits = Math.Max(2, sheetCount.ToString(CultureInfo.InvariantCulture).Length);
        var number = sheet.Number.ToString(CultureInfo.InvariantCulture).PadLeft(digits, '0');
        return $"{SafeName(name)}-{number}-{KindName(sheet.Kind)}";
    }

    private static string KindName(SheetKind kind) => kind switch
    {
        SheetKind.TrueSize => "true-size",
        SheetKind.RingOut => "ring-out",
        _ => kind.ToString().ToLowerInvariant(),
    };
}
