namespace Schematic.Text;

/// <summary>Finds the known name that an unknown one was probably meant to be.</summary>
public static class Spelling
{
    private static readonly string[] Turning = ["anti", "counter", "de", "dis", "in", "mis", "non", "not", "un"];

    /// <summary>
    /// The candidate nearest to <paramref name="word"/>, or null when none is near enough to be worth proposing. A candidate
    /// that differs in case alone comes first; otherwise the one with the fewest wrong, missing, added or swapped letters, at
    /// most one for every three letters; of equals the first in ordinal order. One or two letters must begin alike. The opposite
    /// of a word is never proposed for it: <c>unclosed</c> is not <c>closed</c>.
    /// </summary>
    public static string? Nearest(string word, IEnumerable<string> candidates)
    {
        if (word.Length == 0) return null;
        string? best = null;
        var limit = Math.Max(1, word.Length / 3);
        var bestDistance = limit + 1;
        foreach (var candidate in candidates)
        {
            if (Math.Abs(candidate.Length - word.Length) > limit) continue;
            if (word.Length < 3 && candidate.Length > 0 && char.ToUpperInvariant(candidate[0]) != char.ToUpperInvariant(word[0])) continue;
            var distance = string.Equals(candidate, word, StringComparison.OrdinalIgnoreCase)
                ? 0
                : Distance(word, candidate, bestDistance);
            var better = distance < bestDistance
                || (distance == bestDistance && best is not null && string.CompareOrdinal(candidate, best) < 0);
            if (!better || distance > limit || candidate == word || AreOpposites(word, candidate, distance)) continue;
            best = candidate;
            bestDistance = distance;
        }

        return best;
    }

    /// <summary>Whether one word is, slips aside, the other with a syllable before it that turns its meaning round.</summary>
    private static bool AreOpposites(string one, string other, int distance)
    {
        foreach (var syllable in Turning)
        {
            if (distance >= syllable.Length
                && one.StartsWith(syllable, StringComparison.OrdinalIgnoreCase) != other.StartsWith(syllable, StringComparison.OrdinalIgnoreCase))
                return true;
        }

        return false;
    }

    /// <summary>
    /// Letters to change, add, drop or swap with a neighbour (optimal string alignment) to get from one word to the other; any
    /// number above <paramref name="cap"/> only says that it is more.
    /// </summary>
    private static int Distance(string a, string b, int cap)
    {
        const int LongestWord = 64;
        if (a.Length > LongestWord || b.Length > LongestWord) return cap + 1;
        Span<int> beforeLast = stackalloc int[b.Length + 1];
        Span<int> last = stackalloc int[b.Length + 1];
        Span<int> current = stackalloc int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++) last[j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            current[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var change = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
                var cost = Math.Min(change, Math.Min(last[j], current[j - 1]) + 1);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    cost = Math.Min(cost, beforeLast[j - 2] + 1);
                current[j] = cost;
            }

            var spent = beforeLast;
            beforeLast = last;
            last = current;
            current = spent;
        }

        return last[b.Length];
    }
}
