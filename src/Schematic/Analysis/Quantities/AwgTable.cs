using System.Collections.Immutable;

namespace Schematic.Analysis.Quantities;

/// <summary>
/// Table 11-9 of FAA AC 43.13-1B CHG 1 (two copies read, they agree). Its note 1: 70 degrees ambient; 33 or more wires
/// for numbers 24 to 10, nine for 8 and larger, which is why the amperes jump there; at most 20 percent of the harness's
/// capacity in use. Single-wire amperes are of another source, see <see cref="Sources.SingleWire"/>.
/// </summary>
public static class AwgTable
{
    /// <summary>The ambient temperature the bundle amperes hold for, in degrees Celsius.</summary>
    public const double BundleAmbientCelsius = 70;

    /// <summary>The ambient temperature the single-wire amperes hold for, in degrees Celsius (from memory).</summary>
    public const double SingleAmbientCelsius = 57;

    /// <summary>The insulation temperature the single-wire amperes hold for, in degrees Celsius (from memory).</summary>
    public const double SingleInsulationCelsius = 105;

    /// <summary>All rows, thinnest first.</summary>
    public static ImmutableArray<AwgRow> Rows { get; } =
    [
        new(24, 28.40, 475, 2.5, 4, 5) { SingleAmps = 3.5 },
        new(22, 16.20, 755, 3, 5, 6) { SingleAmps = 7 },
        new(20, 9.88, 1216, 4, 7, 9) { SingleAmps = 11 },
        new(18, 6.23, 1900, 6, 9, 12) { SingleAmps = 16 },
        new(16, 4.81, 2426, 7, 11, 14) { SingleAmps = 22 },
        new(14, 3.06, 3831, 10, 14, 18) { SingleAmps = 32 },
        new(12, 2.02, 5874, 13, 19, 25) { SingleAmps = 41 },
        new(10, 1.26, 9354, 17, 26, 32) { SingleAmps = 55 },
        new(8, 0.70, 16983, 38, 57, 71) { SingleAmps = 73 },
        new(6, 0.44, 26818, 50, 76, 97) { SingleAmps = 101 },
        new(4, 0.28, 42615, 68, 103, 133) { SingleAmps = 135 },
        new(2, 0.18, 66500, 95, 141, 179),
        new(1, 0.15, 81700, 113, 166, 210),
        new(0, 0.12, 104500, 128, 192, 243),
        new(-1, 0.09, 133000, 147, 222, 285),
        new(-2, 0.07, 166500, 172, 262, 335),
        new(-3, 0.06, 210900, 204, 310, 395),
    ];

    /// <summary>The row of that AWG number, or null when the table has none.</summary>
    public static AwgRow? Find(int awg) => Rows.FirstOrDefault(r => r.Awg == awg);
}
