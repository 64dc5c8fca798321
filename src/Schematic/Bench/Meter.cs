namespace Schematic.Bench;

/// <summary>
/// A hand-held meter with two leads. The figures are habits of the trade, from memory; a readings file states its own.
/// </summary>
public sealed record Meter
{
    /// <summary>What the user calls it.</summary>
    public string Name { get; init; } = "";

    /// <summary>The largest resistance it shows, in ohms; beyond it shows "open".</summary>
    public double RangeOhms { get; init; } = 4e6;

    /// <summary>What leads and clips add, in ohms: what the meter shows when the tips touch.</summary>
    public double LeadOhms { get; init; } = 0.3;

    /// <summary>Whether the readings are noted without the leads, because the meter was zeroed or they were taken off.</summary>
    public bool IsZeroed { get; init; } = true;

    /// <summary>Up to this many ohms it beeps: what "closed" says.</summary>
    public double BeepOhms { get; init; } = 30;

    /// <summary>The voltage of its open leads at resistance, in volts: low enough not to open a diode.</summary>
    public double OhmsVolts { get; init; } = 0.3;

    /// <summary>The voltage of its open leads at diode test, in volts.</summary>
    public double DiodeVolts { get; init; } = 2.8;

    /// <summary>The current of its diode test, in amperes.</summary>
    public double DiodeAmps { get; init; } = 0.001;
}
