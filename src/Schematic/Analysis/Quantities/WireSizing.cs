using System.Collections.Immutable;
using System.Globalization;
using Schematic.Model;

namespace Schematic.Analysis.Quantities;

/// <summary>
/// Chooses the thinnest wire that neither loses too many volts nor gets too hot. Both limits count: a short run is
/// decided by current, a long one by drop.
/// </summary>
public static class WireSizing
{
    /// <summary>The AWG sizes of table 11-9, thinnest first.</summary>
    public static ImmutableArray<WireGauge> AwgSizes { get; } = [.. AwgTable.Rows.Select(r => WireGauge.FromAwg(r.Awg))];

    /// <summary>The sizes in square millimetres that the tables hold, thinnest first.</summary>
    public static ImmutableArray<WireGauge> MetricSizes { get; } = [.. MetricTable.Rows.Select(r => WireGauge.FromMm2(r.AreaMm2))];

    /// <summary>The drop over a run in one size, with the conductor as warm as the current makes it.</summary>
    public static (double Volts, double Celsius) HotDrop(WireGauge gauge, WireRun run)
    {
        var capacity = CurrentCapacity.Of(gauge, run.Limits, run.BundledWires).Amps;
        var celsius = run.Amps <= capacity
            ? WireHeating.ConservativeCelsius(run.Limits.AmbientCelsius, run.Limits.InsulationCelsius, run.Amps, capacity)
            : run.Limits.InsulationCelsius;
        var ohms = CopperWire.Ohms(gauge, run.LengthMm) * CopperWire.TemperatureFactor(celsius);
        return (ohms * run.Amps, celsius);
    }

    /// <summary>Chooses among <paramref name="sizes"/>, which stand thinnest first.</summary>
    public static WireChoice Choose(WireRun run, ImmutableArray<WireGauge> sizes)
    {
        var byDrop = sizes.FirstOrDefault(g => HotDrop(g, run).Volts <= run.AllowedDropVolts);
        var byCurrent = sizes.FirstOrDefault(g => CurrentCapacity.Of(g, run.Limits, run.BundledWires).Amps >= run.Amps);
        if (byDrop is null || byCurrent is null)
            return new WireChoice(null, byDrop, byCurrent, double.NaN, double.NaN, double.NaN, "no listed size is thick enough");

        var chosen = byDrop.AreaMm2 >= byCurrent.AreaMm2 ? byDrop : byCurrent;
        var (volts, celsius) = HotDrop(chosen, run);
        var capacity = CurrentCapacity.Of(chosen, run.Limits, run.BundledWires);
        var method = string.Create(
            CultureInfo.InvariantCulture,
            $"{run.Amps:0.###} A over {run.LengthMm:0} mm: by drop {byDrop.Text}, by current {byCurrent.Text}; {chosen.Text} loses {volts:0.###} V at {celsius:0} °C ({CopperWire.Source(chosen)}; {Sources.CopperTemperature}) and carries {capacity.Amps:0.##} A ({capacity.Method})");
        return new WireChoice(chosen, byDrop, byCurrent, volts, capacity.Amps, celsius, method);
    }
}
