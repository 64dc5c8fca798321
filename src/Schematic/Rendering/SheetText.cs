using System.Globalization;
using System.Text;

namespace Schematic.Rendering;

/// <summary>Makes any text of the user safe to stand in XML and to be drawn in its own order.</summary>
internal static class SheetText
{
    private const char Replacement = '\uFFFD';

    /// <summary>Adds the text, escaped. Characters that XML 1.0 forbids or that would reorder the line are shown as U+FFFD.</summary>
    public static StringBuilder AppendEscaped(this StringBuilder output, string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (char.IsHighSurrogate(c) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
            {
                output.Append(c).Append(text[++i]);
                continue;
            }

            _ = c switch
            {
                '<' => output.Append("&lt;"),
                '>' => output.Append("&gt;"),
                '&' => output.Append("&amp;"),
                '"' => output.Append("&quot;"),
                '\t' or '\n' or '\r' => output.Append(' '),
                _ => output.Append(IsSafe(c) ? c : Replacement),
            };
        }

        return output;
    }

    private static bool IsSafe(char c) => c is not ('\uFFFE' or '\uFFFF') && CharUnicodeInfo.GetUnicodeCategory(c)
        is not (UnicodeCategory.Control or UnicodeCategory.Surrogate or UnicodeCategory.Format
            or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator);
}
