using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Schematic.Benchmarks.Fuzz;

/// <summary>
/// Changes a text by words, lines and characters. Everything follows from the seed, so a failure comes back with its number.
/// </summary>
internal sealed partial class FuzzMutator(FuzzCorpus corpus)
{
    private const int MostSteps = 6;
    private const int MostLetters = 60_000;

    private static readonly string[] Numbers =
    [
        "0", "-1", "1", "2", "60", "61", "1000", "1001", "65536", "2147483647", "2147483648", "9999999999999999999", "1e28", "1e300", "0.0000001",
        "1e-300", "-0", "00", "1.", ".5", "1,5", "360", "361", "-180", "1e9",
    ];

    private static readonly string[] Oddities =
    [
        "\u202e", "\u200b", "\u2028", "\u2029", "\u0085", "\u009b31m", "\u001b[31m", "\0", "\ufeff", "\ud800", "\u00e9", "\u4e2d", "\ud83d\ude00", "\u00a0",
        "\t", "\r", "\r\n", "\v", "\f", "\"", "'", "\u201c", "{", "}", "{{", ";", ";;", "#", "..", "->", ":", ",", "(", ")", "=", "@", "<script>", "&amp;", "]]>",
    ];

    /// <summary>The mutant of that number.</summary>
    public FuzzText Mutate(ImmutableArray<FuzzText> texts, int seed)
    {
        var random = new Random(seed);
        var source = Smallest(texts, random);
        var parts = Cut(source.Text);
        for (var steps = 1 + random.Next(1 + random.Next(MostSteps)); steps > 0; steps--) Step(parts, texts, random);
        var text = new StringBuilder();
        foreach (var part in parts)
        {
            if (text.Length > MostLetters) break;
            text.Append(part);
        }

        return source with { Text = text.ToString() };
    }

    /// <summary>A text as words, numbers, strings, runs of blanks and single marks.</summary>
    public static List<string> Cut(string text) => [.. Token().Matches(text).Select(m => m.Value)];

    /// <summary>A character, or a few, that texts seldom hold.</summary>
    public static string Oddity(Random random) => Oddities[random.Next(Oddities.Length)];

    /// <summary>A number that is seldom written.</summary>
    public static string Number(Random random) => Numbers[random.Next(Numbers.Length)];

    /// <summary>The smallest of three: a long text costs as much as a hundred short ones, and shows no more.</summary>
    private static FuzzText Smallest(ImmutableArray<FuzzText> texts, Random random)
    {
        FuzzText[] three = [Any(texts, random), Any(texts, random), Any(texts, random)];
        return three.MinBy(t => t.Text.Length)!;
    }

    private void Step(List<string> parts, ImmutableArray<FuzzText> texts, Random random)
    {
        if (parts.Count == 0)
        {
            parts.Add(Any(corpus.Tokens, random));
            return;
        }

        var at = random.Next(parts.Count);
        switch (random.Next(14))
        {
            case 0: parts.RemoveAt(at); break;
            case 1: parts.Insert(at, parts[at]); break;
            case 2: parts[at] = Any(corpus.Tokens, random); break;
            case 3: parts.Insert(at, " " + Any(corpus.Tokens, random) + " "); break;
            case 4: Exchange(parts, at, random.Next(parts.Count)); break;
            case 5: Exchange(parts, at, Near(parts, at, IsNumber)); break;
            case 6: Replace(parts, Near(parts, at, IsNumber), Number(random)); break;
            case 7: Replace(parts, Near(parts, at, IsNumber), Scaled(parts[Near(parts, at, IsNumber)], random)); break;
            case 8: parts.Insert(at, Oddity(random)); break;
            case 9: parts[at] = Inside(parts[at], random); break;
            case 10: Lines(parts, at, random); break;
            case 11: Replace(parts, Near(parts, at, IsWord), parts[Near(parts, random.Next(parts.Count), IsWord)]); break;
            case 12: Splice(parts, Any(texts, random).Text, random); break;
            default: Replace(parts, Near(parts, at, IsWord), Long(parts[at], random)); break;
        }
    }

    private static T Any<T>(ImmutableArray<T> all, Random random) => all[random.Next(all.Length)];

    private static bool IsNumber(string part) => char.IsAsciiDigit(part[0]);

    private static bool IsWord(string part) => char.IsAsciiLetter(part[0]);

    /// <summary>The next part of a kind from a place on, round the end; the place itself when there is none.</summary>
    private static int Near(List<string> parts, int at, Func<string, bool> isMeant)
    {
        for (var i = 0; i < parts.Count; i++)
            if (isMeant(parts[(at + i) % parts.Count])) return (at + i) % parts.Count;
        return at;
    }

    private static void Exchange(List<string> parts, int a, int b) => (parts[a], parts[b]) = (parts[b], parts[a]);

    private static void Replace(List<string> parts, int at, string by) => parts[at] = by;

    private static string Scaled(string number, Random random) =>
        double.TryParse(number, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            ? (value * Math.Pow(10, random.Next(-4, 5))).ToString("0.######", CultureInfo.InvariantCulture)
            : number + "0";

    /// <summary>A character inside a part goes, comes twice, or becomes another.</summary>
    private static string Inside(string part, Random random)
    {
        var at = random.Next(part.Length);
        return random.Next(3) switch
        {
            0 => part.Remove(at, 1) is { Length: > 0 } rest ? rest : " ",
            1 => part.Insert(at, part[at].ToString()),
            _ => part[..at] + (char)random.Next(1, 0x180) + part[(at + 1)..],
        };
    }

    /// <summary>A line goes, comes twice, or moves to the end.</summary>
    private static void Lines(List<string> parts, int at, Random random)
    {
        var start = at;
        while (start > 0 && !parts[start - 1].Contains('\n', StringComparison.Ordinal)) start--;
        var end = at;
        while (end < parts.Count - 1 && !parts[end].Contains('\n', StringComparison.Ordinal)) end++;
        var line = parts.GetRange(start, end - start + 1);
        switch (random.Next(3))
        {
            case 0: parts.RemoveRange(start, line.Count); break;
            case 1: parts.InsertRange(start, line); break;
            default: parts.RemoveRange(start, line.Count); parts.AddRange(["\n", .. line]); break;
        }
    }

    /// <summary>A piece of another text comes in between two lines.</summary>
    private static void Splice(List<string> parts, string other, Random random)
    {
        var lines = other.Split('\n');
        var first = random.Next(lines.Length);
        var piece = string.Join('\n', lines.Skip(first).Take(1 + random.Next(12)));
        parts.InsertRange(random.Next(parts.Count), ["\n", .. Cut(piece), "\n"]);
    }

    private static string Long(string part, Random random) => string.Concat(Enumerable.Repeat(part, 1 + random.Next(80)));

    [GeneratedRegex("\"[^\"\\n]*\"|[A-Za-z_][A-Za-z0-9_.-]*|[0-9]+(?:\\.[0-9]+)?|\\s+|.", RegexOptions.Singleline)]
    private static partial Regex Token();
}
