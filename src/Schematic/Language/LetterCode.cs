using System.Globalization;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>
/// Resistances as they are marked on the part: the letter of the multiplier stands in the place of the decimal point (IEC 60062, from
/// memory: L milliohms, R ohms, K kilohms, M megohms, G gigohms). A small k is common and means the same.
/// </summary>
internal static class LetterCode
{
    private const int MostDigits = 5;

    /// <summary>The resistance that the text begins with; null where it begins with none.</summary>
    /// <param name="text">The text.</param>
    /// <param name="position">Where it stands in the source.</param>
    public static QuantitySyntax? Read(ReadOnlySpan<char> text, int position)
    {
        var whole = Digits(text);
        if (whole >= text.Length || FactorOf(text[whole]) is not { } factor) return null;
        var part = Digits(text[(whole + 1)..]);
        var length = whole + 1 + part;
        // A letter without a figure is a word, and so is what goes on.
        if (whole + part == 0 || whole > MostDigits || part > MostDigits || (length < text.Length && !Characters.IsBlank(text[length]))) return null;
        var number = $"{text[..whole]}.{text.Slice(whole + 1, part)}0";
        var value = double.Parse(whole == 0 ? "0" + number : number, CultureInfo.InvariantCulture) * factor;
        return new QuantitySyntax(value, Dimension.Resistance, text[..length].ToString(), "", new TextSpan(position, length));
    }

    private static int Digits(ReadOnlySpan<char> text)
    {
        var length = 0;
        while (length < text.Length && char.IsAsciiDigit(text[length])) length++;
        return length;
    }

    private static double? FactorOf(char letter) => letter switch
    {
        'L' => 1e-3,
        'R' => 1,
        'K' or 'k' => 1e3,
        'M' => 1e6,
        'G' => 1e9,
        _ => null,
    };
}
