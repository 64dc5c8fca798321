namespace Schematic.Analysis.Quantities;

/// <summary>The first milliseconds of an incandescent lamp (<see cref="Sources.LampInrush"/>).</summary>
public static class LampInrush
{
    /// <summary>Cold resistance as a share of the hot one, for small panel lamps: read as "about 10 percent".</summary>
    public const double ColdShare = 0.1;

    /// <summary>Switch makers' rule: this many times the steady current must stay under the resistive rating (read).</summary>
    public const double MakersFactor = 10;

    /// <summary>
    /// The peak through a cold lamp: V / (Rcold + Rloop), the loop being wires and the source's own resistance.
    /// </summary>
    public static double PeakAmps(double volts, double hotOhms, double loopOhms = 0) =>
        volts / ((hotOhms * ColdShare) + loopOhms);
}
