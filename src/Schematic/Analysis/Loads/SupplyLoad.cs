using System.Collections.Immutable;
using Schematic.Analysis.Quantities;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>What a supply gives at worst.</summary>
/// <param name="Supply">The supply.</param>
/// <param name="Amps">Highest steady current, its own limit not counted.</param>
/// <param name="Shares">The loads that make up that current in that position, largest first.</param>
/// <param name="PeakAmps">The current when all lamps that burn together start cold.</param>
/// <param name="Setting">The settings at which every load is served, coils warm.</param>
/// <param name="ColdSetting">The same with cold coils, as data sheets state their operate voltage.</param>
/// <param name="Protector">The rating of a fuse for the whole feed.</param>
public sealed record SupplyLoad(
    Supply Supply, Extreme Amps, ImmutableArray<(string Load, double Amps)> Shares, Extreme PeakAmps, SupplySetting Setting,
    SupplySetting ColdSetting, ProtectorChoice Protector)
{
    /// <summary>The loads and resistors whose voltage follows its setting, by designator.</summary>
    public ImmutableHashSet<string> Feeds { get; init; } = [];

    /// <summary>Whether it is set so that some load is not served, or no setting serves all its loads.</summary>
    public bool IsWronglySet => Supply.IsAdjustable && (!ColdSetting.IsPossible || (Setting.IsPossible && !Setting.Serves(Supply.Volts)));

    /// <summary>Current as a share of the limit, or null when there is none.</summary>
    public double? Share => Amps.Value / Supply.LimitAmps;
}
