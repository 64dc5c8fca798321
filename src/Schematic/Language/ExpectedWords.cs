using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>
/// What may stand at a place of a statement, asked of the grammar itself: a mark that begins no word is put there, and what the
/// grammar would have read in its stead is the answer. So a new word of the language is known here at once.
/// </summary>
/// <param name="Keywords">Words of the language.</param>
/// <param name="Kinds">What else, in the words of a finding: <c>a colour</c>, <c>a terminal such as J1:5</c>.</param>
internal sealed record ExpectedWords(ImmutableArray<string> Keywords, ImmutableArray<string> Kinds)
{
    /// <summary>A character for private use: it is visible, and no word begins with it.</summary>
    private const char Mark = '\uE000';

    private static readonly ExpectedWords Nothing = new([], []);

    /// <summary>What may follow a text that begins with a statement's keyword and ends in front of the place.</summary>
    /// <param name="text">The statement so far; a block that was opened in it stays open.</param>
    public static ExpectedWords After(string text)
    {
        var head = text + Mark;
        var open = head.Count(c => c == '{') - head.Count(c => c == '}');
        var source = new SourceText("", head + string.Concat(Enumerable.Repeat(" }", Math.Max(0, open))));
        var (statements, _) = StatementCutter.Cut(source, Grammar.Forms.ContainsKey);
        if (statements.Count == 0) return Nothing;
        var raw = statements[^1];
        var length = Characters.ScanContact(source.Slice(raw.Head));
        var keyword = new WordSyntax(source.Content.Substring(raw.Start, length), new TextSpan(raw.Start, length));
        if (!Grammar.Forms.TryGetValue(keyword.Text, out var form)) return Nothing;
        var report = new SyntaxReporter(source);
        form.Read(raw, keyword, TextSpan.FromBounds(keyword.Span.End, raw.HeadEnd), new StatementReader(source, report), form.Usage);
        var here = report.Problems.Where(p => Characters.SkipBlanks(source.Content, p.Position, source.Content.Length) == text.Length).ToList();
        return new ExpectedWords(
            [
                .. here.SelectMany(p => p.Expected.Where(IsKeyword).Select(e => e.Trim('`')).Concat(p.KnownWords.Where(w => !p.Usual.ContainsKey(w))))
                    .Distinct(),
            ],
            [.. here.SelectMany(p => p.Expected.Where(e => !IsKeyword(e))).Distinct()]);
    }

    private static bool IsKeyword(string expected) => expected[0] == '`';
}
