namespace Schematic.Analysis.Quantities;

/// <summary>
/// An incandescent lamp away from its design voltage, each figure as a share of its design value
/// (<see cref="Sources.LampRerating"/>). Good near 1; 0.8 to 1.1 by common practice.
/// </summary>
/// <param name="VoltShare">Applied voltage over design voltage.</param>
public sealed record LampRerating(double VoltShare)
{
    /// <summary>Current: r^0.55.</summary>
    public double Current => Math.Pow(VoltShare, 0.55);

    /// <summary>Light: r^3.4.</summary>
    public double Flux => Math.Pow(VoltShare, 3.4);

    /// <summary>Life: r^-12; published exponents run from 12 to 16.</summary>
    public double Life => LifeWith(12);

    /// <summary>Power: r^1.6.</summary>
    public double Power => Math.Pow(VoltShare, 1.6);

    /// <summary>Life with another of the published exponents.</summary>
    public double LifeWith(double exponent) => Math.Pow(VoltShare, -exponent);
}
