using Schematic.Model;

namespace Schematic.Analysis.Quantities;

/// <summary>One size of tin-plated stranded copper wire (<see cref="Sources.WireTable"/>).</summary>
/// <param name="Awg">AWG number; 00 is -1, 000 is -2, 0000 is -3, as <see cref="WireGauge"/> counts.</param>
/// <param name="OhmsPer1000Feet">Highest resistance at 20 degrees Celsius.</param>
/// <param name="CircularMils">Nominal copper area.</param>
/// <param name="Amps105">Amperes in a bundle for insulation of 105 degrees Celsius at 70 degrees ambient.</param>
/// <param name="Amps150">The same for 150 degrees.</param>
/// <param name="Amps200">The same for 200 degrees.</param>
public sealed record AwgRow(
    int Awg, double OhmsPer1000Feet, double CircularMils, double Amps105, double Amps150, double Amps200)
{
    private const double Mm2PerCircularMil = Math.PI / 4 * 0.0254 * 0.0254;
    private const double MetresPer1000Feet = 304.8;

    /// <summary>Amperes of a single wire in free air (<see cref="Sources.SingleWire"/>), or null where none was seen.</summary>
    public double? SingleAmps { get; init; }

    /// <summary>Resistance at 20 degrees Celsius.</summary>
    public double OhmsPerMetre => OhmsPer1000Feet / MetresPer1000Feet;

    /// <summary>Copper area of the strands in square millimetres; larger than the solid gauge.</summary>
    public double AreaMm2 => CircularMils * Mm2PerCircularMil;
}
