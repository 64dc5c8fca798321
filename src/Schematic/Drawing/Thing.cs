namespace Schematic.Drawing;

/// <summary>
/// A thing of the panel, as a sheet shows it and as another sheet refers to it.
/// </summary>
/// <param name="Kind">What it is.</param>
/// <param name="Name">Its name in the file: <c>K1</c>, <c>J1:5</c>, <c>W5</c>.</param>
/// <param name="Role">Which face of it is meant, such as <c>coil</c>, or the terminal at an end of a wire; empty for the thing itself.</param>
public sealed record Thing(ThingKind Kind, string Name, string Role = "")
{
    /// <summary>A part.</summary>
    public static Thing Part(string designator, string role = "") => new(ThingKind.Part, designator, role);

    /// <summary>A terminal.</summary>
    public static Thing Terminal(string name, string role = "") => new(ThingKind.Terminal, name, role);

    /// <summary>The end of a wire at a terminal.</summary>
    public static Thing WireEnd(string wire, string terminal) => new(ThingKind.Wire, wire, terminal);

    /// <inheritdoc/>
    public override string ToString() => Role.Length == 0 ? $"{Kind} {Name}" : $"{Kind} {Name} ({Role})";
}

/// <summary>A thing that stands on a sheet.</summary>
/// <param name="Thing">Which.</param>
/// <param name="Box">Where its own symbol lies, in millimetres: the middle of the box decides the zone.</param>
public sealed record PlacedThing(Thing Thing, BoxMm Box);
