using System.Text.Json;
using System.Text.RegularExpressions;
using Schematic.Binding;
using Schematic.Language;
using Schematic.Tests.Page;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Language;

/// <summary>
/// The grammar that editors colour text with (<c>src/schematic-editor/syntaxes</c>) knows the words of the language: no more, no fewer.
/// Where a test fails because a word was added, it shows the alternatives to write.
/// </summary>
public partial class EditorGrammarTests
{
    private static readonly JsonElement Rules = JsonDocument.Parse(
        File.ReadAllText(Repository.PathOf("src/schematic-editor/syntaxes/panel.tmLanguage.json"))).RootElement.GetProperty("repository");

    [Fact]
    public void Statements_are_those_of_the_grammar() => Same(PanelParser.StatementKeywords, "statement");

    [Fact]
    public void Words_are_those_of_the_catalogue() => Same(WordCatalogue.Words.Except([.. PanelParser.StatementKeywords, "?"]), "word");

    /// <summary>
    /// Every other word that the grammar itself would read at any place of the reference, the pages of words and the examples, and two that
    /// stand where a name may.
    /// </summary>
    [Fact]
    public void Clauses_are_what_the_grammar_reads_beside_them() => Same(
        Texts().SelectMany(t => StatementCutter.Cut(new SourceText("", t), PanelParser.StatementKeywords.Contains).Statements.Select(s => t[s.Start..Math.Max(s.HeadEnd, s.BlockEnd)]))
            .SelectMany(s => Boundary().Matches(s).Select(m => s[..m.Index])).Append("").Where(p => p.Length > 0).Distinct()
            .SelectMany(p => ExpectedWords.After(p + " ").Keywords).Concat(["common", "landscape"]).Where(w => char.IsAsciiLetterLower(w[0]))
            .Except(WordCatalogue.Words.Except(PanelParser.StatementKeywords)).Except(Colours.Names).Except(Units.All),
        "clause");

    private static IEnumerable<string> Texts() =>
    [
        .. Directory.EnumerateFiles(Repository.PathOf("src/Schematic/Language"), "*.md", SearchOption.AllDirectories)
            .SelectMany(f => Snippet().Matches(File.ReadAllText(f)).Select(m => m.Groups[1].Value)),
        .. PageBrowser.Examples.Select(e => File.ReadAllText(Repository.PathOf("examples/" + e))),
    ];

    [GeneratedRegex("[ \\t]|$")]
    private static partial Regex Boundary();

    [GeneratedRegex("```[a-z]*\\n([^`]*)```")]
    private static partial Regex Snippet();

    [Fact]
    public void Colours_are_those_of_wires() => Same(Colours.Names, "colour");

    [Fact]
    public void Units_are_those_that_can_be_read() => Same(Units.All, "quantity");

    [Theory]
    [InlineData("statement", "wire W1 22 AWG red", "wire")]
    [InlineData("terminal", "PS1:+ -> P1:4", "PS1:+")]
    [InlineData("quantity", "limit 3.5 mm2 black", "3.5 mm2")]
    [InlineData("quantity", "adjustable 22..29 V", "22..29 V")]
    [InlineData("word", "key top on-hand", "on-hand")]
    [InlineData("mark", "lamp DS1 28 V { J1:2 ? }", "?")]
    [InlineData("colour", "22 AWG green-yellow 3 m", "green-yellow")]
    public void A_line_is_coloured_word_by_word(string rule, string line, string coloured)
    {
        var found = Regex.Matches(line, Pattern(rule)).Select(m => m.Value.Trim());
        Assert.Contains(coloured, found);
    }

    [Fact]
    public void A_name_that_begins_like_a_word_is_none() => Assert.DoesNotMatch(Pattern("word"), "net keyed resting spares-2 J1:key");

    private static string Pattern(string rule) => Rules.GetProperty(rule).GetProperty("match").GetString()!;

    /// <summary>The longest first, so that no word hides a longer one that begins with it.</summary>
    private static void Same(IEnumerable<string> words, string rule)
    {
        var expected = string.Join('|', words.Distinct().OrderByDescending(w => w.Length).ThenBy(w => w, StringComparer.Ordinal));
        Assert.True(
            Pattern(rule).Replace("(?:", "(", StringComparison.Ordinal).Contains($"({expected})", StringComparison.Ordinal),
            $"The rule `{rule}` of the grammar is to have these alternatives: {expected}");
    }
}
