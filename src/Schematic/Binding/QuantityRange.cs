using Schematic.Language;

namespace Schematic.Binding;

/// <summary>
/// What a quantity may be for the use it is put to, in the unit kept for its dimension. What lies outside is a slip of the pen:
/// a contact circle of ten metres, a wire round the earth.
/// </summary>
/// <param name="Least">The least value.</param>
/// <param name="Most">The greatest.</param>
/// <param name="Words">Both in words.</param>
internal sealed record QuantityRange(double Least, double Most, string Words)
{
    /// <summary>Measures of an insert and of the hole it needs.</summary>
    public static readonly QuantityRange OfInsert = new(0.05, 1000, "a length from 0.05 mm to 1 m");

    /// <summary>Places of contacts on a face, from its middle.</summary>
    public static readonly QuantityRange OnFace = new(-500, 500, "a length up to 500 mm to either side");

    /// <summary>How much insulation comes off.</summary>
    public static readonly QuantityRange OfStrip = new(0.1, 200, "a length from 0.1 mm to 200 mm");

    private static readonly QuantityRange Length = new(1, 1e7, "a length from 1 mm to 10 km");

    /// <summary>What a quantity may be where nothing narrower is known of its use.</summary>
    public static QuantityRange Of(Dimension dimension) => dimension switch
    {
        Dimension.Voltage => new(1e-6, 1e5, "a voltage up to 100 kV"),
        Dimension.Current => new(1e-9, 1e5, "a current up to 100 kA"),
        Dimension.Resistance => new(1e-6, 1e12, "a resistance from 1 microohm to 1,000,000 Mohm"),
        Dimension.Length => Length,
        Dimension.Area => new(0.001, 10_000, "a cross-section from 0.001 mm2 to 10,000 mm2"),
        Dimension.Power => new(1e-6, 1e7, "a power up to 10,000 kW"),
        Dimension.Time => new(1e-3, 86_400, "a time from 1 ms to a day"),
        Dimension.ApparentPower => new(1e-3, 1e7, "a power up to 10,000 kVA"),
        Dimension.Percent => new(1e-3, 100, "a share up to 100 %"),
        _ => new(double.MinValue, double.MaxValue, "a number"),
    };
}
