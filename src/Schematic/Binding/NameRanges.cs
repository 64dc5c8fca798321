using System.Collections.Immutable;
using System.Globalization;
using Schematic.Language;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>Counts out ranges of names: <c>5..9</c>, <c>IN1..IN16</c>, <c>S1..S6</c>; with a part's own order also <c>A..F</c>.</summary>
internal sealed class NameRanges(BindingReporter report)
{
    /// <summary>More names than this in one range are taken for a slip of the pen.</summary>
    private const int LongestRange = 10_000;

    /// <summary>More names than this from all ranges of a panel are taken for a file that was not written by a person.</summary>
    private const int MostNames = 500_000;

    private int _count;
    private bool _isFull;

    /// <summary>
    /// The names of an item; none, after a finding, when the range runs backwards, is too long or cannot be counted.
    /// <paramref name="order"/> is the part's own order of contacts, where it is known.
    /// </summary>
    public IReadOnlyList<string> Expand(WordSyntax first, WordSyntax? last, Scope scope, ImmutableArray<string> order = default)
    {
        if (last is null) return [first.Text];
        var (prefix, start) = SplitNumber(first.Text);
        var (otherPrefix, end) = SplitNumber(last.Text);
        if (start is not null && end is not null && prefix == otherPrefix)
        {
            return CanCount(first, last, scope, end.Value - start.Value)
                ? Count(prefix, start.Value, end.Value, first.Text.Length - prefix.Length)
                : [];
        }

        return InOrder(first.Text, last.Text, order) ?? Refuse(first, last, scope);
    }

    /// <summary>The names of all items of a list.</summary>
    public IEnumerable<string> ExpandAll(IEnumerable<ContactSyntax> items, Scope scope, ImmutableArray<string> order = default) =>
        items.SelectMany(i => Expand(i.From, i.To, scope, order));

    private bool CanCount(WordSyntax first, WordSyntax last, Scope scope, long steps)
    {
        var range = $"{first.Text}..{last.Text}";
        var span = SpanOf(first, last, scope);
        if (steps < 0)
            report.OutOfRange(span, $"The range {range} runs backwards.", $"Write {last.Text}..{first.Text}, or list the names in the order meant.");
        else if (steps >= LongestRange)
            report.OutOfRange(span, $"The range {range} is too long.", $"A range has at most {LongestRange} names.");
        else if (_count + steps >= MostNames)
        {
            // Once: what follows is left out for the same reason.
            if (!_isFull) report.OutOfRange(span, $"The ranges up to {range} name more than {MostNames} things.", "No panel is that large: look at the ranges.");
            _isFull = true;
        }
        else
        {
            _count += (int)steps + 1;
            return true;
        }

        return false;
    }

    private static string[] Count(string prefix, long start, long end, int digits)
    {
        // 01..12 keeps its zeros.
        var format = "D" + (digits > start.ToString(CultureInfo.InvariantCulture).Length ? digits : 1);
        var names = new string[(int)(end - start) + 1];
        for (var i = 0; i < names.Length; i++) names[i] = prefix + (start + i).ToString(format, CultureInfo.InvariantCulture);
        return names;
    }

    private static IReadOnlyList<string>? InOrder(string first, string last, ImmutableArray<string> order)
    {
        if (order.IsDefaultOrEmpty) return null;
        var from = order.IndexOf(first);
        var to = order.IndexOf(last);
        return from < 0 || to < from ? null : [.. order.Skip(from).Take(to - from + 1)];
    }

    private string[] Refuse(WordSyntax first, WordSyntax last, Scope scope)
    {
        report.OutOfRange(
            SpanOf(first, last, scope), $"The range {first.Text}..{last.Text} cannot be counted.",
            "Both ends need the same letters and a number, such as IN1..IN16, or must be contacts of the part in its own order.");
        return [];
    }

    private static SourceSpan SpanOf(WordSyntax first, WordSyntax last, Scope scope) =>
        scope.At(TextSpan.FromBounds(first.Span.Start, last.Span.End));

    private static (string Prefix, long? Number) SplitNumber(string name)
    {
        var digits = name.Length;
        while (digits > 0 && char.IsAsciiDigit(name[digits - 1])) digits--;
        return long.TryParse(name.AsSpan(digits), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? (name[..digits], number)
            : (name, null);
    }
}
