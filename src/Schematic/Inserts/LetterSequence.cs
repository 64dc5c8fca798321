using System.Collections.Immutable;

namespace Schematic.Inserts;

/// <summary>
/// The published sequence of contact letters: A to Z without I, O and Q, then a to z without l and o, then AA, BB and so on
/// without II, OO and QQ. Case matters. Source: the labels of arrangement 25-61 in MIL-STD-1560C, read in a transcription,
/// confirm all but QQ, which is left out by analogy. What follows ZZ was not seen, so the sequence ends there.
/// </summary>
public static class LetterSequence
{
    private static readonly ImmutableArray<string> All = Make();

    /// <summary>How many labels there are: 23 + 24 + 23.</summary>
    public static int Length => All.Length;

    /// <summary>The first <paramref name="count"/> labels; fewer when the sequence ends before.</summary>
    public static ImmutableArray<string> Take(int count) => [.. All.Take(count)];

    /// <summary>Place of a label in the sequence, from zero, or -1 when it is not in it.</summary>
    public static int IndexOf(string label) => All.IndexOf(label, StringComparer.Ordinal);

    /// <summary>
    /// Whether a contact name made of one letter, or of one letter doubled, uses a letter that the sequence leaves out because
    /// it is easily misread. Makers deviate, so this is worth a warning and no more.
    /// </summary>
    public static bool IsLeftOut(string name) =>
        name.Length is 1 or 2 && name[0] == name[^1] && char.IsAsciiLetter(name[0]) && IsMisread(name[0]);

    private static bool IsMisread(char letter) => letter is 'I' or 'O' or 'Q' or 'l' or 'o';

    private static ImmutableArray<string> Make()
    {
        var upper = Letters('A', 'Z');
        return [.. upper, .. Letters('a', 'z'), .. upper.Select(u => u + u)];
    }

    private static ImmutableArray<string> Letters(char first, char last) =>
        [.. Enumerable.Range(first, last - first + 1).Select(c => (char)c).Where(c => !IsMisread(c)).Select(c => c.ToString())];
}
