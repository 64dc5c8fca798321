using System.Collections.Immutable;
using System.Globalization;
using Schematic.Diagnostics;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>The findings about the text of one file; all their wording is here.</summary>
internal sealed class SyntaxReporter(SourceText source)
{
    private const int MostWordsListed = 16;

    /// <summary>More findings than this nobody reads.</summary>
    private const int MostFindings = 20_000;

    private static readonly string[] UsualKeywords = ["connector", "lamp", "net", "wire", "unit", "meter", "at"];

    private readonly ImmutableArray<Diagnostic>.Builder _found = ImmutableArray.CreateBuilder<Diagnostic>();

    /// <summary>What was found so far.</summary>
    public ImmutableArray<Diagnostic> Found => _found.ToImmutable();

    /// <summary>How many findings there are.</summary>
    public int Count => _found.Count;

    /// <summary>The places where statements could not be read, in the order found.</summary>
    public List<SyntaxProblem> Problems { get; } = [];

    /// <summary>Whether there are so many findings that no more are kept.</summary>
    public bool IsFull => _found.Count > MostFindings;

    /// <summary>What was found after the first so many.</summary>
    public ImmutableArray<Diagnostic> Since(int count) => count == _found.Count ? [] : [.. _found.Skip(count)];

    /// <summary>Adds what was found when the same words were read before.</summary>
    public void AddAll(ImmutableArray<Diagnostic> found)
    {
        foreach (var diagnostic in found)
        {
            Add(diagnostic);
        }
    }

    public void OpenString(TextSpan span) =>
        Add("syntax", "This string is not closed.", span, "Put a quote (\") at its end; a string does not cross a line end.", "\"", new TextSpan(span.End, 0));

    public void OpenBlock(TextSpan span) =>
        Add("syntax", "This block is not closed.", span, "Put a closing brace (}) after its last line.");

    public void StrayBrace(TextSpan span) =>
        Add("syntax", "This brace closes nothing.", span, "Remove it, or put the opening brace ({) at the end of the statement's line.");

    public void LooseBlock(TextSpan span, bool followsStatement) =>
        Add("syntax", "A block begins without a statement on its line.", span, followsStatement
            ? "Move the opening brace to the end of the line above."
            : "Write the statement that the block belongs to before the brace.");

    public void TooDeep(TextSpan span, int limit) =>
        Add("syntax", $"Blocks are nested more than {limit} deep.", span, "No statement needs more than two: look for braces too many.");

    public void TooLong(TextSpan span, int limit) =>
        Add("syntax", $"A statement of {Text(span.Length)} characters is longer than the {Text(limit)} allowed.",
            new TextSpan(span.Start, 1), "Divide it: a block may have many lines, and a file many statements.");

    public void LongName(TextSpan span, int limit) =>
        Add("out-of-range", $"A name of {Text(span.Length)} letters is longer than the {Text(limit)} allowed.", new TextSpan(span.Start, Math.Min(span.Length, limit)),
            "Names are printed on sheets and labels: give a short one, and put the rest in a description.");

    public void LongString(TextSpan span, int limit) =>
        Add("out-of-range", $"A text of {Text(span.Length - 2)} letters is longer than the {Text(limit)} allowed.", new TextSpan(span.Start, Math.Min(span.Length, 60)),
            "Shorten it: it has to find room on a sheet.");

    public void UnknownStatement(WordSyntax word, IEnumerable<string> keywords)
    {
        var known = keywords.ToList();
        var nearest = Slips.OtherWordFor(word.Text) is null ? Spelling.Nearest(word.Text, known) : null;
        var help = Slips.OtherWordFor(word.Text) is { } other ? other
            : nearest is not null ? $"Did you mean `{nearest}`?{GeneralPart(known, before: " Otherwise")}"
            : $"A statement begins with its keyword, such as {Joined([.. UsualKeywords.Intersect(known).Take(4)])}.{GeneralPart(known, before: "")}";
        Add("unknown-statement", $"No statement begins with `{Short(word.Text)}`.", word.Span, help, nearest);
    }

    /// <summary>A kind that has no word of its own can be written all the same.</summary>
    private static string GeneralPart(List<string> keywords, string before) => !keywords.Contains("device") ? ""
        : before.Length > 0 ? $"{before} write `device`, the general part with terminals of your own."
        : " A kind of part without a word of its own is a `device`.";

    /// <summary>A slip of the hand; <paramref name="write"/> is what to write in its place, where that is certain.</summary>
    public void Slip(TextSpan span, string message, string help, string? write = null) => Add("syntax", message, span, help, write);

    public void MissingBrace(TextSpan span) =>
        Add("syntax", "The block of this statement has no opening brace.", span, "Put an opening brace ({) at the end of this line.", " {", new TextSpan(span.End, 0));

    public void InchMark(TextSpan span, string number) =>
        Add("syntax", "A length in inches does not end with a quote here.", span, $"Write {number} in.", $"{number} in");

    public void UnexpectedBlock(TextSpan span, string usage) =>
        Add("syntax", "A block is not expected here.", span, Like(usage));

    public void NotText(TextSpan span, char c) =>
        Add("unreadable-text", $"A control character (U+{(int)c:X4}) stands in the text.", span,
            "Remove it; a panel file is plain UTF-8 text.", "");

    public void Hidden(TextSpan span, char c) =>
        Add("unreadable-text", $"A character that cannot be seen (U+{(int)c:X4}) stands in the text.", span,
            "Remove it, or type the word again: two names could look alike and differ.", "");

    public void MoreNotText(TextSpan span, int count) =>
        Add("unreadable-text", $"{Text(count)} more control characters follow.", span,
            "This is probably no text file: give the name of a panel file.");

    /// <summary>Reports a place where a statement could not be read.</summary>
    public void Problem(SyntaxProblem problem, TextSpan statement, string usage)
    {
        Problems.Add(problem);
        var at = Characters.SkipBlanks(source.Content, problem.Position, statement.End);
        var word = WordAt(at, statement.End);
        if (!problem.KnownWords.IsEmpty && word.Length > 0)
        {
            ReportUnknownWord(problem, word, usage);
            return;
        }

        var expected = problem.Expected.IsEmpty ? "nothing more" : Joined(problem.Expected);
        var found = word.Length > 0 ? $"`{Short(source.Slice(word).ToString())}`" : "the end of the statement";
        var nearest = NearestKeyword(problem.Expected, word);
        Add("syntax", $"Expected {expected}, found {found}.", word, nearest is null ? Like(usage) : $"Did you mean `{nearest}`?", nearest);
    }

    /// <summary>The expected keyword (written between grave accents) that the word found was probably meant to be.</summary>
    private string? NearestKeyword(ImmutableArray<string> expected, TextSpan word) => word.Length == 0 ? null : Spelling.Nearest(
        source.Slice(word).ToString(),
        expected.Where(e => e[0] == '`' && char.IsLetter(e[1])).Select(e => e.Trim('`')));

    private void ReportUnknownWord(SyntaxProblem problem, TextSpan word, string usage)
    {
        var text = source.Slice(word).ToString();
        var nearest = Spelling.Nearest(text, problem.KnownWords);
        var usual = problem.KnownWords.Where(w => !problem.Usual.ContainsKey(w)).ToList();
        var help = nearest is not null ? $"Did you mean `{problem.Usual.GetValueOrDefault(nearest, nearest)}`?"
            : usual.Count <= MostWordsListed ? $"Known here: {string.Join(", ", usual)}."
            : Like(usage);
        var expected = problem.Expected.IsEmpty ? "" : $"; expected {Joined([.. problem.Expected, "a keyword"])}";
        Add("syntax", $"`{Short(text)}` is not known here{expected}.", word, help,
            nearest is null ? null : problem.Usual.GetValueOrDefault(nearest, nearest));
    }

    private void Add(string rule, string message, TextSpan span, string help, string? write = null, TextSpan? at = null) =>
        Add(new Diagnostic(rule, Severity.Error, HiddenCharacters.Show(message), new SourceSpan(source, span))
        {
            Help = HiddenCharacters.Show(help),
            Repairs = write is null ? []
                : [write.Length == 0 ? new Repair("take it out", new SourceSpan(source, at ?? span), "") : Repair.Write(new SourceSpan(source, at ?? span), write)],
        });

    private void Add(Diagnostic diagnostic)
    {
        if (IsFull) return;
        _found.Add(_found.Count < MostFindings ? diagnostic : new Diagnostic(
            "out-of-range", Severity.Error, $"More than {Text(MostFindings)} findings: the others are left out.", diagnostic.Span)
        {
            Help = "Correct these first.",
        });
    }

    private TextSpan WordAt(int position, int end)
    {
        var rest = source.Content.AsSpan(position, Math.Max(0, end - position));
        var length = Characters.ScanString(rest);
        if (length == 0)
        {
            while (length < rest.Length && !Characters.IsBlank(rest[length]) && rest[length] is not (',' or '"' or '(' or ')')) length++;
            if (length == 0 && rest.Length > 0) length = 1;
        }

        return new TextSpan(position, length);
    }

    private static string Like(string usage) => $"Write it like this: {usage}";

    private static string Joined(IReadOnlyList<string> words)
    {
        var distinct = words.Distinct().ToList();
        return distinct.Count == 1 ? distinct[0] : $"{string.Join(", ", distinct.Take(distinct.Count - 1))} or {distinct[^1]}";
    }

    private static string Short(string text) => text.Length <= 40 ? text : text[..39] + "…";

    private static string Text(int number) => number.ToString("N0", CultureInfo.InvariantCulture);
}
