using Schematic.Text;

namespace Schematic.Language;

/// <summary>One item of a terminal list: <c>J1:5</c>, a bare <c>7</c> that belongs to the part named before it, or a range.</summary>
/// <param name="Part">The part, or null for a bare contact name.</param>
/// <param name="From">The contact, or the first of a range.</param>
/// <param name="To">The last contact of a range, or null.</param>
/// <param name="Span">The whole item.</param>
public sealed record ContactSyntax(WordSyntax? Part, WordSyntax From, WordSyntax? To, TextSpan Span) : ValueSyntax(Span)
{
    /// <summary>Stands for a contact that is not traced yet.</summary>
    public const string NotTracedMark = "?";

    /// <inheritdoc/>
    public override ContactSyntax Moved(int by) => new(Part?.Moved(by), From.Moved(by), To?.Moved(by), Span.Moved(by));

    /// <summary>Whether it is a question mark: a contact of which nobody knows yet which one it is.</summary>
    public bool IsNotTraced => From.Text == NotTracedMark;
}
