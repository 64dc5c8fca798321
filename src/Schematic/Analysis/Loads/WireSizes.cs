using System.Collections.Immutable;
using Schematic.Analysis.Quantities;
using Schematic.Analysis.Wiring;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>
/// Chooses the cross-section of wires for which the file states none: by drop over the wire and an equal return, and by
/// current, among the sizes that the contacts at both ends take.
/// </summary>
internal sealed class WireSizes
{
    private readonly AnalysisContext _context;
    private readonly double _allowedDrop;
    private readonly ImmutableArray<WireGauge> _sizes;
    private readonly Dictionary<string, int> _countOf;
    private readonly Dictionary<(WireGauge, int), WireCapacity> _capacities = [];

    /// <summary>Prepares for a panel whose highest supply voltage is <paramref name="volts"/>.</summary>
    public WireSizes(AnalysisContext context, double volts)
    {
        _context = context;
        _allowedDrop = AllowableDrop.Volts(context.Panel.Limits, volts);
        _countOf = context.Panel.Wires.CountBy(w => w.Cable ?? "").ToDictionary(StringComparer.Ordinal);
        var stated = context.Panel.Wires.Where(w => !w.IsGaugeChosen).Select(w => w.Gauge).OfType<WireGauge>().ToList();
        _sizes = stated.Count(g => g.Awg is null) * 2 > stated.Count ? WireSizing.MetricSizes : WireSizing.AwgSizes;
    }

    /// <summary>How many loaded wires a wire lies with: as stated, else the cores of its cable, else all single wires.</summary>
    public int BundleOf(Wire wire) => _context.Panel.Limits.BundledWires
        ?? _countOf[wire.Cable ?? ""];

    /// <summary>What a wire may carry, or null for a wire without a gauge.</summary>
    public WireCapacity? CapacityOf(Wire wire)
    {
        if (wire.Gauge is not { } gauge) return null;
        var bundle = BundleOf(wire);
        if (!_capacities.TryGetValue((gauge, bundle), out var capacity))
            _capacities[(gauge, bundle)] = capacity = CurrentCapacity.Of(gauge, _context.Panel.Limits, bundle);
        return capacity;
    }

    /// <summary>The wire with a gauge: its own, or the thinnest that serves; without one when no size does.</summary>
    public Wire Sized(Wire wire, double amps)
    {
        if (wire.Gauge is not null) return wire;
        var run = new WireRun(2 * (wire.LengthMm ?? 0), amps, _allowedDrop, _context.Panel.Limits, BundleOf(wire));
        return WireSizing.Choose(run, [.. _sizes.Where(g => Fits(g, wire.From) && Fits(g, wire.To))]).Gauge is { } chosen
            ? wire with { Gauge = chosen, IsGaugeChosen = true }
            : wire;
    }

    /// <summary>How a chosen gauge was found, to be printed.</summary>
    public string Method(Wire wire, double amps) => WireSizing.Choose(
        new WireRun(2 * (wire.LengthMm ?? 0), amps, _allowedDrop, _context.Panel.Limits, BundleOf(wire)),
        [.. _sizes.Where(g => Fits(g, wire.From) && Fits(g, wire.To))]).Method;

    private bool Fits(WireGauge gauge, TerminalId end) =>
        _context.Part(end.Part) is not Connector connector
        || connector.SizeOf(end.Name) is not { } size
        || WireRange.Of(size, connector.Termination) is not { } range
        || (!range.IsTooThick(gauge) && !range.IsTooThin(gauge));
}
