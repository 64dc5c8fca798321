using Schematic.Model;

namespace Schematic.Analysis.Circuits;

/// <summary>A two-terminal device as the circuit sees it.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Part">The part it belongs to.</param>
/// <param name="From">The end that current enters when it is counted positive: <c>A1</c>, <c>X1</c>, anode, <c>+</c>, input.</param>
/// <param name="To">The other end.</param>
public sealed record Element(ElementKind Kind, Part Part, TerminalId From, TerminalId To)
{
    /// <summary>The node of <see cref="From"/>.</summary>
    public required int FromNode { get; init; }

    /// <summary>The node of <see cref="To"/>.</summary>
    public required int ToNode { get; init; }

    /// <summary>
    /// Resistance in ohms; of a diode or LED the slope beyond its knee, of a supply the source resistance. Null when nobody knows
    /// it: it may then have any.
    /// </summary>
    public required double? Ohms { get; init; }

    /// <summary>The resistances between which it lies, where it is not one: all that a device may have where it is not known.</summary>
    public (double Least, double Most)? OhmsRange => Ohms is not null ? null : StatedRange ?? (LeastUnknownOhms, MostUnknownOhms);

    /// <summary>The resistances between which it lies as the file states it, or null.</summary>
    public (double Least, double Most)? StatedRange { get; init; }

    /// <summary>Whether nobody knows its resistance, not even a range of it.</summary>
    public bool AreOhmsUnknown => Ohms is null && StatedRange is null;

    /// <summary>The voltage in series: a diode's knee, a supply's setting, what a pull-up goes to; else zero.</summary>
    public double Volts { get; init; }

    /// <summary>Of a part that varies in which of its ways this element is there; null for what does not hang on that.</summary>
    public int? Way { get; init; }

    /// <summary>The condition under which the element is there; null for always.</summary>
    public Condition? Gate { get; init; }

    /// <summary>The terminal of the part at its first end; <see cref="From"/> lies inside the part where the element is not always there.</summary>
    public TerminalId Outer { get; } = From;

    /// <summary>Of a supply, or of a winding that feeds, what it gives; null for all others.</summary>
    public Supply? Source { get; init; } = Part as Supply;

    /// <summary>From where on it does what it is there for; null where nobody asks.</summary>
    public LoadScale? Scale { get; } = LoadScale.Of(Part);

    /// <summary>
    /// The resistance that currents in wires and sources are counted with: of a range the least; what a device of unknown
    /// resistance takes is left out, and the load sheet says so.
    /// </summary>
    public double CountedOhms => Ohms ?? StatedRange?.Least ?? OpenOhms;

    private const double OpenOhms = 1e9;

    /// <summary>The least resistance that a part of unknown resistance may have: a coil of a few turns.</summary>
    internal const double LeastUnknownOhms = 0.01;

    /// <summary>The most: what a good meter just tells from open.</summary>
    internal const double MostUnknownOhms = 1e7;

    /// <summary>The designator of the part; where a part has several elements, with the terminals of this one.</summary>
    public string Name { get; init; } = Part.Designator;

    /// <summary>Whether somebody expects it to do something when fed: a lamp, a coil, an LED, a motor.</summary>
    public bool IsLoad => Kind is ElementKind.Lamp or ElementKind.Coil or ElementKind.Led or ElementKind.Consumer;

    /// <summary>Whether current passes only from <see cref="From"/> to <see cref="To"/>.</summary>
    public bool IsOneWay => Kind is ElementKind.Diode or ElementKind.Led;

    /// <summary>Whether it is known from which voltage or current it works.</summary>
    public bool IsRatingKnown => !Part.IsRatingUnknown;

    /// <summary>The node at the other side.</summary>
    public int Other(int node) => node == FromNode ? ToNode : FromNode;
}
