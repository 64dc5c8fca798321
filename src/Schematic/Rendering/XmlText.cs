using System.Text;
using Schematic.Fonts;

namespace Schematic.Rendering;

/// <summary>Puts any text into XML, as content or inside quoted attributes.</summary>
internal static class XmlText
{
    /// <summary>Adds the text as it is shown, escaped.</summary>
    public static StringBuilder AppendEscaped(this StringBuilder output, string text)
    {
        foreach (var c in DisplayedText.Of(text))
        {
            _ = c switch
            {
                '<' => output.Append("&lt;"),
                '>' => output.Append("&gt;"),
                '&' => output.Append("&amp;"),
                '"' => output.Append("&quot;"),
                _ => output.Append(c),
            };
        }

        return output;
    }
}
