using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Reports;

/// <summary>What one contact of a connector is for and which wires end on it.</summary>
/// <param name="Contact">The contact's number or letter.</param>
/// <param name="Purpose">Net and device in words, such as "LEVER_N: S1 normal"; empty when nothing is known.</param>
/// <param name="Wires">The wires that end on this half's contact, in the order of the file.</param>
/// <param name="IsSpare">Whether it is left unused on purpose.</param>
public sealed record ContactUse(string Contact, string Purpose, ImmutableArray<Wire> Wires, bool IsSpare)
{
    /// <summary>Whether it is not known yet what the unit has on it: never to be taken for unused.</summary>
    public bool IsNotTraced { get; init; }

    /// <summary>
    /// The colour letters of the wires: one code, or different codes joined by a plus as IEC 60757 joins separate items; empty
    /// where no colour is stated.
    /// </summary>
    public string ColourCodes => string.Join('+', Wires
        .Select(w => w.Colour?.Code).Where(c => c is not null).Distinct(StringComparer.Ordinal));

    /// <summary>The wires' numbers.</summary>
    public string WireNames => string.Join(' ', Wires.Select(w => w.Designator));

    /// <summary>The wires' gauges.</summary>
    public string Gauges => string.Join(", ", Wires
        .Select(w => w.GaugeText).Where(g => g is not null).Distinct(StringComparer.Ordinal));
}
