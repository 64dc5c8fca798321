using System.Collections.Immutable;

namespace Schematic.Language;

/// <summary>A place where a statement could not be read.</summary>
/// <param name="Position">Where.</param>
/// <param name="Expected">What would have been read there, in words.</param>
/// <param name="KnownWords">The words that may stand there, to propose the nearest; empty where any name may.</param>
internal sealed record SyntaxProblem(int Position, ImmutableArray<string> Expected, ImmutableArray<string> KnownWords);
