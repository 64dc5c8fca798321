using System.Collections.Immutable;

namespace Schematic.Language;

/// <summary>Clauses that were read, and the places between them that could not be.</summary>
internal sealed record ClauseRun(ImmutableArray<ClauseSyntax> Clauses, ImmutableArray<SyntaxProblem> Problems)
{
    public static readonly ClauseRun Empty = new([], []);
}
