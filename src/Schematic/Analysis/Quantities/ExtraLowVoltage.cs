namespace Schematic.Analysis.Quantities;

/// <summary>
/// Limits of extra-low voltage. The upper band and the touch limit were read (<see cref="Sources.ExtraLowVoltage"/>; IEC
/// 60598-1 for 25 V AC and 60 V DC in dry, normal conditions). Local codes decide; wet places have lower limits.
/// </summary>
public static class ExtraLowVoltage
{
    /// <summary>Above this a supply is not extra-low voltage any more.</summary>
    public static double LimitVolts(bool alternating) => alternating ? 50 : 120;

    /// <summary>Above this bare contacts must not be touched even where it is dry.</summary>
    public static double TouchVolts(bool alternating) => alternating ? 25 : 60;
}
