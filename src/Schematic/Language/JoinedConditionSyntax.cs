using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>Conditions joined by <c>and</c> (all hold) or <c>or</c> (at least one holds).</summary>
public sealed record JoinedConditionSyntax(bool AllHold, ImmutableArray<ConditionSyntax> Parts, TextSpan Span)
    : ConditionSyntax(Span)
{
    /// <inheritdoc/>
    public override JoinedConditionSyntax Moved(int by) => new(AllHold, [.. Parts.Select(p => p.Moved(by))], Span.Moved(by));
}
