using System.Globalization;
using SkiaSharp;

namespace Schematic.Rendering;

/// <summary>Reads the values of attributes as <see cref="SvgWriter"/> writes them.</summary>
internal static class SvgValues
{
    /// <summary>A length in millimetres.</summary>
    public static float Mm(ReadOnlySpan<char> text) => float.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    /// <summary>Lengths with a blank between them.</summary>
    public static float[] Mms(string text) => [.. text.Split(' ').Select(t => Mm(t))];

    /// <summary>Width and height of a view box that begins at zero.</summary>
    public static (double Width, double Height) SizeOf(string viewBox)
    {
        var box = viewBox.Split(' ');
        if (box.Length != 4) throw new FormatException($"'{viewBox}' is no view box.");
        return (double.Parse(box[2], CultureInfo.InvariantCulture), double.Parse(box[3], CultureInfo.InvariantCulture));
    }

    /// <summary>A colour: <c>#rrggbb</c>, or <c>#rgb</c>.</summary>
    public static SKColor Colour(string text)
    {
        if (text.Length is not (4 or 7) || text[0] != '#') throw new FormatException($"'{text}' is no colour.");
        var bits = uint.Parse(text.AsSpan(1), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture);
        if (text.Length == 4) bits = ((bits & 0xF00) * 0x1100) | ((bits & 0x0F0) * 0x110) | ((bits & 0x00F) * 0x11);
        return new SKColor(0xFF000000 | bits);
    }
}
