using System.Collections.Immutable;

namespace Schematic.Language;

/// <summary>A place where a statement could not be read.</summary>
/// <param name="Position">Where.</param>
/// <param name="Expected">What would have been read there, in words.</param>
/// <param name="KnownWords">The words that may stand there, to propose the nearest; empty where any name may.</param>
internal sealed record SyntaxProblem(int Position, ImmutableArray<string> Expected, ImmutableArray<string> KnownWords)
{
    /// <summary>The usual words for those of the known words that have one.</summary>
    public IReadOnlyDictionary<string, string> Usual { get; init; } = ImmutableDictionary<string, string>.Empty;
}
