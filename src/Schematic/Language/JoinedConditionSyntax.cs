using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>Conditions joined by <c>and</c> (all hold) or <c>or</c> (at least one holds).</summary>
public sealed record JoinedConditionSyntax(bool AllHold, ImmutableArray<ConditionSyntax> Parts, TextSpan Span)
    : ConditionSyntax(Span);
