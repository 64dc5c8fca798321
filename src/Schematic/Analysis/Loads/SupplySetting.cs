namespace Schematic.Analysis.Loads;

/// <summary>
/// The settings of a supply at which every load gets enough and none too much, in its worst position. When the lowest lies
/// above the highest no setting serves all: the two reasons are the proof.
/// </summary>
/// <param name="Lowest">The setting below which something gets too little.</param>
/// <param name="Highest">The setting above which something gets too much.</param>
/// <param name="Recommended">
/// A setting inside the range at which no load exceeds its rated voltage where that can be, or null when there is none.
/// </param>
public sealed record SupplySetting(SettingBound Lowest, SettingBound Highest, double? Recommended)
{
    /// <summary>Whether any setting serves every load.</summary>
    public bool IsPossible => Lowest.Volts <= Highest.Volts + 1e-9;

    /// <summary>Whether this setting does.</summary>
    public bool Serves(double volts) => volts >= Lowest.Volts - 5e-3 && volts <= Highest.Volts + 5e-3;
}
