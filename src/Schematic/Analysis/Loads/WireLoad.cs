using Schematic.Analysis.Quantities;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>What a wire carries at worst.</summary>
/// <param name="Wire">The wire; its gauge is the stated or the chosen one.</param>
/// <param name="Amps">Highest steady current.</param>
/// <param name="Capacity">What it may carry, or null for a wire without a gauge.</param>
/// <param name="Celsius">Temperature of the copper at that current (<see cref="WireHeating"/>).</param>
/// <param name="Ohms">Resistance at that temperature; zero for a wire without gauge or length.</param>
public sealed record WireLoad(Wire Wire, Extreme Amps, WireCapacity? Capacity, double Celsius, double Ohms)
{
    /// <summary>How a chosen gauge was found, or null when the file states the gauge.</summary>
    public string? SizingMethod { get; init; }

    /// <summary>Volts lost along the wire.</summary>
    public double DropVolts => Ohms * Amps.Value;

    /// <summary>Heat made in the wire.</summary>
    public double Watts => WireHeating.Watts(Ohms, Amps.Value);

    /// <summary>Current as a share of what the wire may carry, or null where that is unknown.</summary>
    public double? Share => Capacity is null ? null : Amps.Value / Capacity.Amps;

    /// <summary>Whether it carries more than it may.</summary>
    public bool IsOver => Share > 1 + 1e-9;
}
