using System.Collections.Immutable;
using System.Reflection;

namespace Schematic.Language;

/// <summary>The pages that explain the words of the language, embedded from <c>Language/Words</c>, each with an example.</summary>
public static class WordCatalogue
{
    private const string Prefix = "Schematic.Words.";

    /// <summary>All pages, in the order of their first words.</summary>
    public static ImmutableArray<WordPage> Pages { get; } =
    [
        .. Assembly.GetExecutingAssembly().GetManifestResourceNames()
            .Where(n => n.StartsWith(Prefix, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal)
            .Select(Read),
    ];

    /// <summary>Every word that is explained, in ordinal order.</summary>
    public static ImmutableArray<string> Words { get; } = [.. Pages.SelectMany(p => p.Words).Order(StringComparer.Ordinal)];

    /// <summary>The page of a word, or null when there is none.</summary>
    public static WordPage? Find(string word) => Pages.FirstOrDefault(p => p.Words.Contains(word));

    private static WordPage Read(string resource)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(resource)!;
        using var reader = new StreamReader(stream);
        var text = reader.ReadToEnd().ReplaceLineEndings("\n");
        var lines = text.Split('\n');
        var begin = Array.FindIndex(lines, l => l == "```panel");
        var end = Array.FindIndex(lines, begin + 1, l => l == "```");
        return new WordPage(
            [.. lines[0][2..].Split(',', StringSplitOptions.TrimEntries)],
            string.Join(' ', lines[1..begin]).Trim(),
            string.Join('\n', lines[(begin + 1)..end]) + "\n",
            text.TrimEnd() + "\n");
    }
}

/// <summary>What explains one word of the language, or a few that belong together.</summary>
/// <param name="Words">The words.</param>
/// <param name="Prose">What they mean, as one paragraph.</param>
/// <param name="Example">A panel file that uses them and has no error.</param>
/// <param name="Text">The whole page.</param>
public sealed record WordPage(ImmutableArray<string> Words, string Prose, string Example, string Text)
{
    /// <summary>The first sentence: what a list of words shows.</summary>
    public string Summary
    {
        get
        {
            var end = Prose.IndexOf(". ", StringComparison.Ordinal);
            return end < 0 ? Prose : Prose[..(end + 1)];
        }
    }
}
