using Schematic.Text;

namespace Schematic.Language;

/// <summary>Which characters words are made of, and how far a word reaches.</summary>
internal static class Characters
{
    /// <summary>What separates words: blanks of every kind, control characters, and what stands for unreadable bytes.</summary>
    public static bool IsBlank(char c) => c <= ' ' || c is '\u007f' or '\uFFFD' or '\uFEFF' || (c > '\u007f' && char.IsWhiteSpace(c));

    public static bool IsDigit(char c) => char.IsAsciiDigit(c);

    private static bool IsNameStart(char c) => char.IsLetter(c) || c == '_';

    private static bool IsContactPart(char c) => char.IsLetterOrDigit(c) || c is '_' or '+' or '-' || IsUnseen(c);

    /// <summary>What cannot be seen is reported once, where the text is cut; it then counts as part of the word it stands in.</summary>
    private static bool IsUnseen(char c) => c > '~' && !IsBlank(c) && HiddenCharacters.IsHidden(c);

    /// <summary>The position of the next character that is not blank.</summary>
    public static int SkipBlanks(string text, int position, int end)
    {
        while (position < end && IsBlank(text[position])) position++;
        return position;
    }

    /// <summary>Length of the contact name, designator of a wire, net name or keyword at the start of the text; 0 for none.</summary>
    public static int ScanContact(ReadOnlySpan<char> text)
    {
        var i = 0;
        while (i < text.Length && IsContactPart(text[i]) && !IsArrow(text[i..])) i++;
        return i;
    }

    /// <summary>Length of the name at the start of the text, prefixes of used files included; 0 for none.</summary>
    public static int ScanName(ReadOnlySpan<char> text)
    {
        var length = ScanSimpleName(text);
        while (length > 0 && length + 1 < text.Length && text[length] == '.')
        {
            var next = ScanSimpleName(text[(length + 1)..]);
            if (next == 0) break;
            length += 1 + next;
        }

        return length;
    }

    /// <summary>Length of a name without a prefix; 0 for none.</summary>
    public static int ScanSimpleName(ReadOnlySpan<char> text)
    {
        if (text.IsEmpty || !IsNameStart(text[0])) return 0;
        var i = 1;
        while (i < text.Length && (char.IsLetterOrDigit(text[i]) || text[i] is '_' or '-' || IsUnseen(text[i])) && !IsArrow(text[i..])) i++;
        return i;
    }

    /// <summary>Length of a number with sign and decimals; 0 for none. Two dots end it: they make a range.</summary>
    public static int ScanNumber(ReadOnlySpan<char> text)
    {
        var i = !text.IsEmpty && text[0] is '-' or '+' ? 1 : 0;
        var digits = i;
        while (i < text.Length && IsDigit(text[i])) i++;
        if (i == digits) return 0;
        if (i + 1 < text.Length && text[i] == '.' && IsDigit(text[i + 1]))
        {
            i++;
            while (i < text.Length && IsDigit(text[i])) i++;
        }

        return i;
    }

    /// <summary>Length of a colour: words of letters joined by a slash; 0 for none.</summary>
    public static int ScanColour(ReadOnlySpan<char> text)
    {
        var i = 0;
        while (i < text.Length && (char.IsLetter(text[i]) || (text[i] is '/' or '-' && i > 0 && !IsArrow(text[i..])))) i++;
        return i;
    }

    /// <summary>Length of a word of a setting: everything up to a blank or a mark of the language; 0 for none.</summary>
    public static int ScanBare(ReadOnlySpan<char> text)
    {
        var i = 0;
        while (i < text.Length && !IsBlank(text[i]) && text[i] is not ('"' or '{' or '}' or ';' or '#' or ',')) i++;
        return i;
    }

    /// <summary>Length of the unit at the start of the text; 0 for none.</summary>
    public static int ScanUnit(ReadOnlySpan<char> text)
    {
        if (text.IsEmpty || !(char.IsLetter(text[0]) || text[0] is '%' or '°')) return 0;
        var i = 1;
        while (i < text.Length && (char.IsLetterOrDigit(text[i]) || text[i] is '%' or '°' or '²')) i++;
        return i;
    }

    /// <summary>Length of a string with its quotes; one that is not closed reaches to the end of the text. 0 for none.</summary>
    public static int ScanString(ReadOnlySpan<char> text)
    {
        if (text.IsEmpty || text[0] != '"') return 0;
        for (var i = 1; i < text.Length; i++)
        {
            if (text[i] == '"') return i + 1;
            if (text[i] == '\\') i++;
        }

        return text.Length;
    }

    private static bool IsArrow(ReadOnlySpan<char> text) => text is ['-', '>', ..];
}
