using Schematic.Model;

namespace Schematic.Analysis.Quantities;

/// <summary>The size found for a run.</summary>
/// <param name="Gauge">The thinnest size that meets both limits, or null when even the thickest does not.</param>
/// <param name="ByDrop">The thinnest size that meets the drop, or null.</param>
/// <param name="ByCurrent">The thinnest size that carries the current, or null.</param>
/// <param name="DropVolts">Drop over the run in the chosen size, hot.</param>
/// <param name="CapacityAmps">What the chosen size may carry.</param>
/// <param name="ConductorCelsius">The temperature the drop was counted at.</param>
/// <param name="Method">Steps and sources, to be printed.</param>
public sealed record WireChoice(
    WireGauge? Gauge, WireGauge? ByDrop, WireGauge? ByCurrent, double DropVolts, double CapacityAmps,
    double ConductorCelsius, string Method);
