using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>
/// One clause of a statement: a keyword and its values, such as <c>limit 3 A</c> or <c>solder</c>. Values that stand for
/// themselves (a rating, a colour, the contacts of a block) form clauses whose keyword is empty.
/// </summary>
/// <param name="Keyword">The keyword, or empty.</param>
/// <param name="Values">The values in the order written.</param>
/// <param name="Span">Keyword and values.</param>
public sealed record ClauseSyntax(string Keyword, ImmutableArray<ValueSyntax> Values, TextSpan Span)
{
    /// <summary>The word of the trade that was written where the language has another usual word, its keyword; or null.</summary>
    public string? Written { get; init; }

    /// <summary>Where the keyword stands; the whole clause where it has none.</summary>
    public TextSpan KeywordSpan => Keyword.Length == 0 ? Span : new TextSpan(Span.Start, (Written ?? Keyword).Length);

    /// <summary>The same clause in a text that has more characters before it, or fewer.</summary>
    public ClauseSyntax Moved(int by) => this with { Values = [.. Values.Select(v => v.Moved(by))], Span = Span.Moved(by) };

    /// <summary>The values of one kind, in the order written.</summary>
    public IEnumerable<T> All<T>() where T : ValueSyntax => Values.OfType<T>();
}
