using System.Text;
using Schematic.Drawing;
using Schematic.Fonts;

namespace Schematic.Rendering;

/// <summary>Puts the lettering into the sheet itself: one font face a weight, cut down to the letters the sheet uses.</summary>
internal static class SheetFonts
{
    /// <summary>What the family is called inside the sheet.</summary>
    public const string Family = "Sheet Lettering";

    /// <summary>Adds the style element with the faces that the texts need.</summary>
    public static void AppendStyle(StringBuilder output, IEnumerable<TextMark> texts)
    {
        var faces = Faces(texts);
        if (faces.Length > 0) output.Append("<style>\n").Append(faces).Append("</style>\n");
    }

    /// <summary>The faces that the texts need as rules of a style; empty where there is no text.</summary>
    public static string Faces(IEnumerable<TextMark> texts)
    {
        var regular = new SortedSet<int>();
        var bold = new SortedSet<int>();
        foreach (var text in texts)
        {
            foreach (var rune in DisplayedText.Of(text.Text).EnumerateRunes()) (text.IsBold ? bold : regular).Add(rune.Value);
        }

        var output = new StringBuilder();
        AppendFace(output, regular, bold: false);
        AppendFace(output, bold, bold: true);
        return output.ToString();
    }

    /// <summary>Both faces with these characters as rules of a style; what the typeface does not have is left to the viewer.</summary>
    public static string Faces(SortedSet<int> codePoints)
    {
        var output = new StringBuilder();
        AppendFace(output, codePoints, bold: false);
        AppendFace(output, codePoints, bold: true);
        return output.ToString();
    }

    private static void AppendFace(StringBuilder output, SortedSet<int> codePoints, bool bold)
    {
        if (codePoints.Count == 0) return;
        var face = FontSubset.Of(FontFile.Of(bold), codePoints, Family);
        output.Append("@font-face{font-family:\"").Append(Family).Append("\";font-weight:").Append(bold ? "600" : "400")
            .Append(";src:url(data:font/ttf;base64,").Append(Convert.ToBase64String(face)).Append(") format(\"truetype\")}\n");
    }
}
