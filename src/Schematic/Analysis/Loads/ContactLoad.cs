using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>What a switching contact carries at worst.</summary>
/// <param name="Contact">The contact.</param>
/// <param name="Rating">What it may carry, or null when unknown.</param>
/// <param name="Amps">Highest steady current.</param>
/// <param name="RequiredAmps">
/// The resistive rating it needs: each load's current times the factor of its kind
/// (<see cref="Quantities.SwitchDerating"/>).
/// </param>
/// <param name="PeakAmps">The current in the first milliseconds, cold lamps counted (<see cref="Quantities.LampInrush"/>).</param>
/// <param name="Loads">The loads it switches, by designator.</param>
public sealed record ContactLoad(
    Contact Contact, ContactRating? Rating, Extreme Amps, Extreme RequiredAmps, Extreme PeakAmps, ImmutableArray<string> Loads)
{
    /// <summary>Needed rating as a share of the rating, or null when the rating is unknown.</summary>
    public double? Share => Rating is null ? null : RequiredAmps.Value / Rating.Amps;
}
