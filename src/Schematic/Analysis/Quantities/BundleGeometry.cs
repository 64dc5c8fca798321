namespace Schematic.Analysis.Quantities;

/// <summary>How thick a bundle is and how it may be bent.</summary>
public static class BundleGeometry
{
    /// <summary>Bend radius in outside diameters (US Army TM 1-1500-204-23-4 item 27, read).</summary>
    public const double BendDiameters = 10;

    /// <summary>
    /// Bend radius in outside diameters at terminal strips, where the wire is held at both ends of the bend (AC 43.13-1B
    /// 11-96, from memory).
    /// </summary>
    public const double SupportedBendDiameters = 3;

    /// <summary>
    /// Outside diameter of a bundle in millimetres: 1.2 sqrt(sum of d²), which for n equal wires is 1.2 d sqrt(n)
    /// (common practice, no source). A single wire is itself.
    /// </summary>
    public static double DiameterMm(IEnumerable<double> wireDiametersMm)
    {
        var all = wireDiametersMm.ToList();
        return all.Count == 1 ? all[0] : 1.2 * Math.Sqrt(all.Sum(d => d * d));
    }

    /// <summary>
    /// The smallest radius a wire or bundle of that diameter is bent to. Counting the bundle's own diameter is the stricter
    /// of two schools; the other counts its largest wire.
    /// </summary>
    public static double BendRadiusMm(double diameterMm, bool supportedAtBothEnds = false) =>
        diameterMm * (supportedAtBothEnds ? SupportedBendDiameters : BendDiameters);
}
