using Schematic.Model;

namespace Schematic.Analysis.Quantities;

/// <summary>
/// Sizes over the insulation, for sleeves, bends and bundles. The file does not state insulation, so the diameter is an
/// estimate: strands 1.15 times the solid gauge and a wall of 0.4 mm (usual 300 V hook-up wire; common practice, no source).
/// </summary>
public static class InsulatedWire
{
    private const double StrandFill = 1.15;

    /// <summary>The wall of the insulation in millimetres.</summary>
    public const double WallMm = 0.4;

    /// <summary>Estimated outside diameter in millimetres.</summary>
    public static double DiameterMm(WireGauge gauge) => (gauge.DiameterMm * StrandFill) + (2 * WallMm);

    /// <summary>
    /// How far a sleeve over a soldered joint reaches onto the insulation: 5 mm or two insulated-wire diameters, the larger
    /// (NASA-STD-8739.3 9.8, read).
    /// </summary>
    public static double SleeveOverlapMm(WireGauge gauge) => Math.Max(5, 2 * DiameterMm(gauge));
}
