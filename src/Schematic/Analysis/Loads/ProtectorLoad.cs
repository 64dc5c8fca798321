using Schematic.Analysis.Quantities;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>What a fuse or breaker carries at worst, and what it has to guard.</summary>
/// <param name="Part">The fuse or breaker.</param>
/// <param name="RatedAmps">Its rating, or null when unknown.</param>
/// <param name="Amps">Highest steady current.</param>
/// <param name="Thinnest">
/// The weakest wire behind it: of the wires that a short could load through it, the one that may carry least; null when there
/// is none.
/// </param>
/// <param name="Capacity">What that wire may carry.</param>
/// <param name="Choice">The rating that suits load and wire.</param>
public sealed record ProtectorLoad(
    Part Part, double? RatedAmps, Extreme Amps, Wire? Thinnest, WireCapacity? Capacity, ProtectorChoice Choice)
{
    /// <summary>Current as a share of the rating.</summary>
    public double? Share => Amps.Value / RatedAmps;

    /// <summary>Whether the wire would be overloaded before it opens.</summary>
    public bool IsTooLarge => Capacity is not null && RatedAmps > Capacity.Amps + 1e-9;
}
