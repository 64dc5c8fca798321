using System.Globalization;
using System.Text;

namespace Schematic.Fonts;

/// <summary>
/// What is shown of a text that may hold anything: control characters, halves of surrogate pairs and characters that would
/// reorder the line become U+FFFD, so that what is drawn is what is measured and no text can disturb a file it stands in.
/// </summary>
internal static class DisplayedText
{
    private const char NoBreakSpace = '\u00A0';

    /// <summary>The text as it is shown. Blanks that a reader of SVG would drop become no-break spaces.</summary>
    public static string Of(string text)
    {
        if (IsPlain(text)) return text;
        var output = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            var shown = Of(rune);
            var isDropped = shown.Value == ' ' && (output.Length == 0 || output[^1] is ' ' or NoBreakSpace);
            if (isDropped) output.Append(NoBreakSpace);
            else output.Append(shown.ToString());
        }

        if (output[^1] == ' ') output[^1] = NoBreakSpace;
        return output.ToString();
    }

    /// <summary>The character that is shown for another.</summary>
    public static Rune Of(Rune rune)
    {
        if (rune.Value is >= ' ' and <= '~') return rune;
        if (rune.Value is '\t' or '\n' or '\r') return new Rune(' ');
        var isUnfit = rune.Value is 0xFFFE or 0xFFFF || Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control
            or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;
        return isUnfit ? Rune.ReplacementChar : rune;
    }

    private static bool IsPlain(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] is < ' ' or > '~') return false;
            if (text[i] == ' ' && (i == 0 || i == text.Length - 1 || text[i - 1] == ' ')) return false;
        }

        return true;
    }
}
