using System.Collections.Immutable;
using System.Text;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>
/// Lays a panel file out evenly: two blanks of indent for each block, one blank between words (two where the user left a wider
/// gap), neighbouring lines in columns, comments at their side. Words, their order, comments and line breaks stay as they are,
/// but for words of the trade that have another usual word here.
/// </summary>
public static class PanelFormatter
{
    /// <summary>
    /// Formats a text. A statement with errors stays as it is, with all that stands on its lines: what cannot be read is not
    /// moved. Formatting twice gives the same as formatting once, and the result says what the text said; where that cannot be
    /// had the text comes back unchanged.
    /// </summary>
    public static string Format(string text)
    {
        var settled = Settle(text);
        var formatted = LayOut(settled);
        return SameWords.Are(settled, formatted) && LayOut(formatted) == formatted ? formatted : text;
    }

    /// <summary>
    /// The words of a text for which the language has another usual word: where they stand, and the usual word. Those of a statement
    /// that cannot be read are left out: it stays as it is.
    /// </summary>
    public static ImmutableArray<(TextSpan Span, string Usual)> Unusual(PanelSyntax syntax)
    {
        var found = syntax.Statements.OfType<PartSyntax>().SelectMany(p => p.Clauses.Concat(p.Block))
            .Where(c => c.Written is not null).Select(c => (c.KeywordSpan, c.Keyword))
            .OrderBy(c => c.KeywordSpan.Start).ToImmutableArray();
        if (found.IsEmpty) return found;
        var unread = UnreadLines.Of(syntax.Source);
        return found.RemoveAll(w => unread[syntax.Source.PositionOf(w.KeywordSpan.Start).Line]);
    }

    private static string Settle(string text)
    {
        var result = new StringBuilder(text);
        foreach (var (span, usual) in Unusual(PanelParser.Parse(new SourceText("", text))).Reverse())
            result.Remove(span.Start, span.Length).Insert(span.Start, usual);
        return result.ToString();
    }

    private static string LayOut(string text)
    {
        var source = new SourceText("", text);
        var output = new StringBuilder(text.Length);
        foreach (var group in Groups(FormatLines.Read(source, UnreadLines.Of(source))))
        {
            foreach (var line in LineAligner.Render(group)) output.Append(line).Append('\n');
        }

        return output.ToString();
    }

    /// <summary>
    /// Runs of lines that are laid out together: single-line statements of one depth without a blank line or a comment of its
    /// own between them. Any other line stands alone.
    /// </summary>
    private static IEnumerable<ImmutableArray<FormatLine>> Groups(IEnumerable<FormatLine> lines)
    {
        var group = ImmutableArray.CreateBuilder<FormatLine>();
        foreach (var line in lines)
        {
            if (group.Count > 0 && !(line.IsAlignable && group[^1].IsAlignable && line.Depth == group[^1].Depth))
                yield return group.DrainToImmutable();
            group.Add(line);
        }

        if (group.Count > 0) yield return group.DrainToImmutable();
    }
}
