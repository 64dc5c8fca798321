using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Schematic.Binding;

namespace Schematic.Benchmarks.Fuzz;

/// <summary>The texts that are mutated: every panel and readings file of the examples, every snippet of the reference, its words and the pages of the rules.</summary>
internal sealed partial class FuzzCorpus
{
    private const int LongestText = 40_000;

    /// <summary>Reads the corpus of a repository.</summary>
    public FuzzCorpus(string root)
    {
        var examples = Path.Combine(root, "examples");
        Files = new MemoryPanelFiles(Read(examples, "*.panel").Concat(Read(examples, "*.readings"))
            .ToImmutableDictionary(f => Path.GetRelativePath(examples, f.Path).Replace('\\', '/'), f => f.Text));
        Panels =
        [
            .. Read(examples, "*.panel").Select(f => new FuzzText(Path.GetRelativePath(examples, f.Path).Replace('\\', '/'), f.Text)),
            .. Read(Path.Combine(root, "src", "Schematic", "Language"), "*.md").SelectMany(Snippets),
            .. Read(Path.Combine(root, "src", "Schematic", "Diagnostics", "Rules"), "*.md").SelectMany(Snippets),
        ];
        Readings = [.. Read(examples, "*.readings").Select(f => new FuzzText(Path.GetRelativePath(examples, f.Path).Replace('\\', '/'), f.Text))];
        Tokens = [.. Panels.SelectMany(p => FuzzMutator.Cut(p.Text)).Where(t => t.Trim().Length > 0).Distinct().Order(StringComparer.Ordinal)];
    }

    /// <summary>The panels, each with the name it has beside its used files.</summary>
    public ImmutableArray<FuzzText> Panels { get; }

    /// <summary>The readings files.</summary>
    public ImmutableArray<FuzzText> Readings { get; }

    /// <summary>All words, numbers and marks that stand in the panels, each once.</summary>
    public ImmutableArray<string> Tokens { get; }

    /// <summary>What <c>use</c> and <c>readings</c> statements find.</summary>
    public MemoryPanelFiles Files { get; }

    private static IEnumerable<(string Path, string Text)> Read(string folder, string pattern) =>
        from path in Directory.EnumerateFiles(folder, pattern, SearchOption.AllDirectories).Order(StringComparer.Ordinal)
        let text = File.ReadAllText(path)
        where text.Length <= LongestText
        select (path, text);

    private static IEnumerable<FuzzText> Snippets((string Path, string Text) page) =>
        Fence().Matches(page.Text).Select(m => new FuzzText("snippet.panel", m.Groups[1].Value));

    [GeneratedRegex("```panel[^\\n]*\\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Fence();
}

/// <summary>One text of the corpus.</summary>
/// <param name="Name">Its path among the examples.</param>
/// <param name="Text">What stands in it.</param>
internal sealed record FuzzText(string Name, string Text);
