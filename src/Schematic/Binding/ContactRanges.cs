using System.Collections.Immutable;
using System.Globalization;
using Schematic.Language;

namespace Schematic.Binding;

/// <summary>Ranges of names: <c>5..9</c>, <c>IN1..IN16</c>, <c>S1..S6</c>; with a part's own order also <c>A..F</c>.</summary>
internal static class ContactRanges
{
    /// <summary>More names than this in one range are taken for a slip of the pen.</summary>
    public const int LongestRange = 10_000;

    /// <summary>
    /// The names of an item; null, and a finding, when the range runs backwards, is too long or cannot be counted.
    /// <paramref name="order"/> is the part's own order of contacts, where it is known.
    /// </summary>
    public static IReadOnlyList<string>? Expand(
        WordSyntax first, WordSyntax? last, Scope scope, BindingReporter report, ImmutableArray<string> order = default)
    {
        if (last is null) return [first.Text];
        var span = scope.At(Text.TextSpan.FromBounds(first.Span.Start, last.Span.End));
        var range = $"{first.Text}..{last.Text}";
        if (!order.IsDefaultOrEmpty && order.IndexOf(first.Text) is var from and >= 0 && order.IndexOf(last.Text) is var to && to >= from
            && !(SplitNumber(first.Text) is { Number: not null } && SplitNumber(last.Text) is { Number: not null }))
        {
            return [.. order.Skip(from).Take(to - from + 1)];
        }

        var (prefix, start) = SplitNumber(first.Text);
        var (otherPrefix, end) = SplitNumber(last.Text);
        if (start is null || end is null || prefix != otherPrefix)
        {
            report.OutOfRange(span, $"The range {range} cannot be counted.", "Both ends need the same letters and a number, such as IN1..IN16.");
            return null;
        }

        if (end < start || end - start >= LongestRange)
        {
            report.OutOfRange(span, end < start ? $"The range {range} runs backwards." : $"The range {range} is too long.",
                end < start ? $"Write {last.Text}..{first.Text}, or list the names in the order meant." : $"A range has at most {LongestRange} names.");
            return null;
        }

        var digits = first.Text.Length - prefix.Length;
        var format = first.Text[prefix.Length] == '0' && digits > 1 ? "D" + digits : "D";
        var names = new string[(int)(end - start) + 1];
        for (var i = 0; i < names.Length; i++)
            names[i] = prefix + (start.Value + i).ToString(format, CultureInfo.InvariantCulture);
        return names;
    }

    private static (string Prefix, long? Number) SplitNumber(string name)
    {
        var digits = name.Length;
        while (digits > 0 && char.IsAsciiDigit(name[digits - 1])) digits--;
        return long.TryParse(name.AsSpan(digits), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? (name[..digits], number)
            : (name, null);
    }
}
