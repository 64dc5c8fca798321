namespace Schematic.Analysis.Electrical;

/// <summary>
/// Alternating supplies are solved twice, with their plus at plus and at minus the effective voltage: the two half-waves, taken as
/// standing still. Resistances answer at once, so that a load's effective value is the root of the mean square of the two; what
/// coils and capacitors add is not modelled.
/// </summary>
public static class HalfWaves
{
    /// <summary>The peak of a sine over its effective value.</summary>
    public static readonly double Peak = Math.Sqrt(2);

    /// <summary>The effective value of a quantity over both half-waves; itself, sign and all, where both are the same.</summary>
    public static double Effective(double forward, double backward) =>
        forward == backward ? forward : Math.Sqrt(((forward * forward) + (backward * backward)) / 2);

    /// <summary>The mean of what passes in one direction only, as an indicator's light goes with.</summary>
    public static double MeanForward(double forward, double backward) =>
        forward == backward ? forward : (Math.Max(0, forward) + Math.Max(0, backward)) / 2;
}
