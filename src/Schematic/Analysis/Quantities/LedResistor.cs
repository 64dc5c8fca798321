namespace Schematic.Analysis.Quantities;

/// <summary>
/// The series resistor of one or more LEDs in a chain. The value is rounded up, then current and power are computed from
/// the chosen value at the highest supply voltage: never from the wished current.
/// </summary>
/// <param name="SupplyVolts">Voltage the value is chosen at.</param>
/// <param name="HighestVolts">Highest voltage the supply can have.</param>
/// <param name="ForwardVolts">Forward voltage of the whole chain.</param>
/// <param name="WishedAmps">Current wished for.</param>
public sealed record LedResistor(double SupplyVolts, double HighestVolts, double ForwardVolts, double WishedAmps)
{
    /// <summary>A resistor is bought for at least twice the power it takes (read in calculator guides).</summary>
    public const double PowerMargin = 2;

    private static readonly double[] PartWatts = [0.125, 0.25, 0.5, 1, 2, 3, 5, 10];

    /// <summary>Whether the supply exceeds the chain's forward voltage at all.</summary>
    public bool IsPossible => SupplyVolts > ForwardVolts;

    /// <summary>The exact resistance for the wished current.</summary>
    public double ExactOhms => (SupplyVolts - ForwardVolts) / WishedAmps;

    /// <summary>The next E24 value that is not smaller.</summary>
    public double Ohms => PreferredValues.AtLeast(ExactOhms);

    /// <summary>Current with that value at the voltage it was chosen for.</summary>
    public double Amps => (SupplyVolts - ForwardVolts) / Ohms;

    /// <summary>Current at the highest supply voltage.</summary>
    public double HighestAmps => (HighestVolts - ForwardVolts) / Ohms;

    /// <summary>Power in the resistor at the highest supply voltage.</summary>
    public double Watts => (HighestVolts - ForwardVolts) * (HighestVolts - ForwardVolts) / Ohms;

    /// <summary>The power rating to buy: the next usual one (common practice) that leaves the margin.</summary>
    public double PartRatingWatts => PartWatts.FirstOrDefault(w => w >= Watts * PowerMargin, double.PositiveInfinity);

    /// <summary>Current saved against an incandescent lamp that takes <paramref name="lampAmps"/> at the same supply.</summary>
    public double SavedAmps(double lampAmps) => lampAmps - Amps;

    /// <summary>Heat saved in watts at the voltage the value was chosen for; the resistor's heat is counted.</summary>
    public double SavedWatts(double lampAmps) => SupplyVolts * SavedAmps(lampAmps);
}
