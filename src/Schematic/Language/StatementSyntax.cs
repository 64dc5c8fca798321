using Schematic.Text;

namespace Schematic.Language;

/// <summary>One statement of a panel file.</summary>
/// <param name="Keyword">The word that begins it.</param>
/// <param name="Span">From the keyword to the end of its line or block.</param>
public abstract record StatementSyntax(WordSyntax Keyword, TextSpan Span)
{
    /// <summary>Whether a part of it could not be read; what is missing is then not reported a second time.</summary>
    public bool HasErrors { get; init; }

    /// <summary>The last name of a range, where one statement is written for several like things; or null.</summary>
    public WordSyntax? Through { get; init; }

    /// <summary>Which of them this is, once they are counted out.</summary>
    public RunPlace Run { get; init; }

    /// <summary>Asks for the answer that a visitor has for this kind of statement.</summary>
    public abstract T Accept<T>(IStatementVisitor<T> visitor);
}
