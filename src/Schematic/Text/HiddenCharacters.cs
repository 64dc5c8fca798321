using System.Globalization;
using System.Text;

namespace Schematic.Text;

/// <summary>
/// Characters that a reader does not see or that steer what is printed: controls, marks that turn the direction of writing,
/// blanks without width, fillers. They are shown as what they are, <c>&lt;U+202E&gt;</c>, wherever text of the user is printed.
/// </summary>
public static class HiddenCharacters
{
    /// <summary>Whether the character is a control: C0 with delete, or C1.</summary>
    public static bool IsControl(char c) => c < ' ' || c is >= '\u007f' and <= '\u009f';

    /// <summary>Whether a character of the basic plane is hidden; what stands in pairs of surrogates is not looked at.</summary>
    public static bool IsHidden(char c) => c < ' ' || (c > '~' && !char.IsSurrogate(c) && IsHidden(new Rune(c)));

    /// <summary>Whether a character is hidden.</summary>
    public static bool IsHidden(Rune rune) => Rune.GetUnicodeCategory(rune) switch
    {
        UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator => true,
        _ => rune.Value is 0x034F // joins letters without a sign of its own
            or 0x115F or 0x1160 or 0x3164 or 0xFFA0 or 0x2800 // fillers: letters and signs that are blank
            or (>= 0x180B and <= 0x180F) or (>= 0xFE00 and <= 0xFE0F) or (>= 0xE0100 and <= 0xE01EF), // choose a form of the letter before them
    };

    /// <summary>Whether a text holds a hidden character.</summary>
    public static bool AreIn(ReadOnlySpan<char> text)
    {
        if (!text.ContainsAnyExceptInRange(' ', '~')) return false;
        foreach (var rune in text.EnumerateRunes())
        {
            if (IsHidden(rune)) return true;
        }

        return false;
    }

    /// <summary>The text with every hidden character written out.</summary>
    public static string Show(string text)
    {
        if (!AreIn(text)) return text;
        var shown = new StringBuilder(text.Length + 16);
        foreach (var rune in text.EnumerateRunes())
        {
            if (IsHidden(rune)) shown.Append(Code(rune.Value));
            else shown.Append(rune.ToString());
        }

        return shown.ToString();
    }

    /// <summary>A character by its number: <c>&lt;U+202E&gt;</c>.</summary>
    public static string Code(int character) => $"<U+{character.ToString("X4", CultureInfo.InvariantCulture)}>";
}
