using System.Globalization;

namespace Schematic.Model;

/// <summary>
/// The cross-section of a wire, stated in AWG or in square millimetres. AWG 00 is written as number -1, AWG 000 as -2.
/// </summary>
public sealed record WireGauge
{
    private WireGauge(double areaMm2, int? awg)
    {
        AreaMm2 = areaMm2;
        Awg = awg;
    }

    /// <summary>Copper area in square millimetres.</summary>
    public double AreaMm2 { get; }

    /// <summary>The AWG number when the user stated one, else null.</summary>
    public int? Awg { get; }

    /// <summary>Solid copper diameter in millimetres that has the same area.</summary>
    public double DiameterMm => Math.Sqrt(4 * AreaMm2 / Math.PI);

    /// <summary>The gauge as the user wrote it: <c>22 AWG</c> or <c>0.5 mm2</c>.</summary>
    public string Text => Awg is { } number
        ? (number < 0 ? $"{1 - number}/0 AWG" : number.ToString(CultureInfo.InvariantCulture) + " AWG")
        : AreaMm2.ToString("0.###", CultureInfo.InvariantCulture) + " mm2";

    /// <summary>A gauge in AWG: diameter 0.127 mm x 92^((36 - n) / 39), ASTM B258.</summary>
    public static WireGauge FromAwg(int number)
    {
        var diameter = 0.127 * Math.Pow(92, (36 - number) / 39.0);
        return new WireGauge(Math.PI / 4 * diameter * diameter, number);
    }

    /// <summary>A gauge in square millimetres.</summary>
    public static WireGauge FromMm2(double area) => new(area, null);
}
