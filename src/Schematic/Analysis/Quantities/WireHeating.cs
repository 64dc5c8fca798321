namespace Schematic.Analysis.Quantities;

/// <summary>How warm a loaded wire gets.</summary>
public static class WireHeating
{
    /// <summary>
    /// The conductor's temperature by the formula of FAA AC 43.13-1B figure 11-2 and example 2:
    /// T2 = T1 + (TR - T1) sqrt(I / Imax), T1 ambient, TR insulation. The formula is from memory; its list of variables and
    /// the remark that it is conservative were read. Used for drops, where a hotter wire is the safe assumption.
    /// </summary>
    public static double ConservativeCelsius(double ambient, double insulation, double amps, double maxAmps) =>
        ambient + ((insulation - ambient) * Math.Sqrt(Share(amps, maxAmps)));

    /// <summary>The same with the physical law, the rise going with the square of the current.</summary>
    public static double PhysicalCelsius(double ambient, double insulation, double amps, double maxAmps) =>
        ambient + ((insulation - ambient) * Share(amps, maxAmps) * Share(amps, maxAmps));

    /// <summary>Heat made in a wire, in watts.</summary>
    public static double Watts(double ohms, double amps) => ohms * amps * amps;

    private static double Share(double amps, double maxAmps) => maxAmps <= 0 ? 1 : Math.Abs(amps) / maxAmps;
}
