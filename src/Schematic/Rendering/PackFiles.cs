using System.Collections.Immutable;
using System.Globalization;
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
    /// <returns>
    /// The files one after the other: as many sheets as there are cores are drawn at a time and none is kept, so that a large pack needs no
    /// more memory than a small one. What is not asked for is not made.
    /// </returns>
    public static IEnumerable<PackFile> Render(
        ImmutableArray<Sheet> sheets, string name, TitleData title, IReadOnlyCollection<SheetFormat> formats,
        int dpi = PngWriter.DefaultDpi)
    {
        using var document = formats.Contains(SheetFormat.Pdf) ? new PdfBinder(title) : null;
        var painters = Enumerable.Range(0, Math.Max(1, Math.Min(Environment.ProcessorCount, sheets.Length)))
            .Select(_ => new SheetPainter(formats, dpi)).ToArray();
        try
        {
            foreach (var group in sheets.Chunk(painters.Length))
            {
                var painted = new PaintedSheet[group.Length];
                Parallel.For(0, group.Length, i => painted[i] = painters[i].Paint(group[i]));
                foreach (var sheet in painted)
                {
                    if (sheet.Picture is { } picture) document?.Add(picture);
                    sheet.Picture?.Dispose();
                    var stem = SheetName(name, sheet.Sheet, sheets.Length);
                    if (sheet.Svg is { } svg) yield return new PackFile(stem + ".svg", svg);
                    if (sheet.Png is { } png) yield return new PackFile(stem + ".png", png);
                }
            }
        }
        finally
        {
            foreach (var painter in painters) painter.Dispose();
        }

        if (document is not null) yield return new PackFile(SafeName(name) + ".pdf", document.Finish());
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
        SheetKind.BenchRecord => "bench-record",
        _ => kind.ToString().ToLowerInvariant(),
    };
}
