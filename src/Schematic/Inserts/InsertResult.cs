using System.Collections.Immutable;

namespace Schematic.Inserts;

/// <summary>What a builder made of a description.</summary>
/// <param name="Arrangement">The insert, or null when a problem that is not a warning stands in the way.</param>
/// <param name="Problems">What was found, warnings included.</param>
public sealed record InsertResult(InsertArrangement? Arrangement, ImmutableArray<InsertProblem> Problems);
