using System.Collections.Immutable;

namespace Schematic.Analysis.Loads;

/// <summary>The cases of one region of a circuit.</summary>
/// <param name="Number">Its number.</param>
/// <param name="Part">What the region can load.</param>
/// <param name="Cases">Its cases.</param>
/// <param name="IsComplete">Whether these are all; else they are a few of too many.</param>
internal sealed record CaseRegion(int Number, NetworkPart Part, ImmutableArray<SwitchingCase> Cases, bool IsComplete);
