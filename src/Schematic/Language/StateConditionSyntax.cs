using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>A name and the states it is in: <c>LEVER normal check</c>, <c>L1 energised</c>, <c>PS1 on</c>.</summary>
public sealed record StateConditionSyntax(WordSyntax Subject, ImmutableArray<WordSyntax> States, TextSpan Span)
    : ConditionSyntax(Span)
{
    /// <inheritdoc/>
    public override StateConditionSyntax Moved(int by) =>
        new(Subject.Moved(by), [.. States.Select(s => s.Moved(by))], Span.Moved(by));
}
