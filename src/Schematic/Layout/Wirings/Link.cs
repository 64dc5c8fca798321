using Schematic.Drawing;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>What joins two terminals.</summary>
internal enum LinkKind
{
    /// <summary>A wire or a cable's core.</summary>
    Wire,

    /// <summary>A component's own lead, or what a made unit joins: nothing of the harness.</summary>
    Lead,

    /// <summary>A net states it and no wire makes it.</summary>
    Net,

    /// <summary>A cable's screen that is joined at one end alone.</summary>
    Screen,
}

/// <summary>One connection between two terminals that a wiring sheet shows, as a line or as a flag at both ends.</summary>
/// <param name="Index">Its place in the list of all links.</param>
/// <param name="A">Where it begins.</param>
/// <param name="B">Where it ends, or null for a screen that ends nowhere.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Name">The wire's or net's name; empty for a lead.</param>
/// <param name="Wire">The wire, or null.</param>
internal sealed record Link(int Index, TerminalId A, TerminalId? B, LinkKind Kind, string Name, Wire? Wire)
{
    /// <summary>By its place alone: links are looked up again and again, and all that a wire states would be counted in each time.</summary>
    public override int GetHashCode() => Index;

    /// <summary>The wire or the net that it is; null for a lead.</summary>
    public Thing? Thing => Wire is { } wire ? new Thing(ThingKind.Wire, wire.Designator)
        : Kind == LinkKind.Net ? new Thing(ThingKind.Net, Name) : null;
}

/// <summary>One end of a link.</summary>
internal readonly record struct LinkEnd(Link Link, bool IsA)
{
    /// <summary>The terminal that it ends on.</summary>
    public TerminalId Terminal => IsA ? Link.A : Link.B!.Value;

    /// <summary>The terminal at the other end, or null where there is none.</summary>
    public TerminalId? Far => IsA ? Link.B : Link.A;

    /// <summary>The other end.</summary>
    public LinkEnd Other => new(Link, !IsA);

    /// <summary>The end as a thing that a flag at the other end refers to.</summary>
    public Thing AsThing => Link.Wire is { } wire
        ? Thing.WireEnd(wire.Designator, Terminal.ToString())
        : new Thing(ThingKind.Net, Link.Name.Length > 0 ? Link.Name : $"lead {Link.Index}", Terminal.ToString());
}
