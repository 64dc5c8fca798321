namespace Schematic.Model;

/// <summary>Orders names as people do: digits by value, letters by ordinal, so <c>J2</c> comes before <c>J10</c>.</summary>
public static class NaturalOrder
{
    /// <summary>A comparer for sorting.</summary>
    public static IComparer<string> Comparer { get; } = Comparer<string>.Create(Compare);

    /// <summary>Negative, zero or positive as <paramref name="left"/> stands before, with or after <paramref name="right"/>.</summary>
    public static int Compare(string left, string right)
    {
        int i = 0, j = 0;
        while (i < left.Length && j < right.Length)
        {
            var difference = char.IsAsciiDigit(left[i]) && char.IsAsciiDigit(right[j])
                ? CompareNumbers(left, ref i, right, ref j)
                : left[i++] - right[j++];
            if (difference != 0) return difference;
        }

        var rest = (left.Length - i) - (right.Length - j);
        return rest != 0 ? rest : string.CompareOrdinal(left, right);
    }

    private static int CompareNumbers(string left, ref int i, string right, ref int j)
    {
        var a = ReadDigits(left, ref i);
        var b = ReadDigits(right, ref j);
        return a.Length != b.Length ? a.Length - b.Length : a.SequenceCompareTo(b);
    }

    private static ReadOnlySpan<char> ReadDigits(string text, ref int index)
    {
        while (index < text.Length - 1 && text[index] == '0' && char.IsAsciiDigit(text[index + 1])) index++;
        var start = index;
        while (index < text.Length && char.IsAsciiDigit(text[index])) index++;
        return text.AsSpan(start, index - start);
    }
}
