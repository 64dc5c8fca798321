namespace Schematic.Reports;

/// <summary>Tells figures from text in table cells.</summary>
public static class PlainNumber
{
    /// <summary>
    /// Whether the text is a decimal number as tables write it: perhaps a minus sign, digits without needless leading zeros,
    /// perhaps a point and digits. No exponent, no plus sign, no blanks: what passes is a number in JSON as well.
    /// </summary>
    public static bool Is(string text)
    {
        var digits = text.AsSpan();
        if (digits.StartsWith("-")) digits = digits[1..];
        var point = digits.IndexOf('.');
        var whole = point < 0 ? digits : digits[..point];
        var fraction = point < 0 ? "0" : digits[(point + 1)..];
        return AreDigits(whole) && AreDigits(fraction) && (whole.Length == 1 || whole[0] != '0');
    }

    private static bool AreDigits(ReadOnlySpan<char> text) => text.Length > 0 && !text.ContainsAnyExceptInRange('0', '9');
}
