using System.Globalization;
using Schematic.Drawing;
using Schematic.Model;

namespace Schematic.Layout.Schematics;

/// <summary>
/// One connection that the drawing must show between two terminals: a wire, or what a net, a mated pair or a jumper joins
/// without a wire.
/// </summary>
internal sealed class WireEdge(int index, TerminalId a, TerminalId b, Wire? wire, string? net)
{
    /// <summary>Its place in the list of all edges: the name of its reference pair.</summary>
    public int Index { get; } = index;

    public TerminalId A { get; } = a;

    public TerminalId B { get; } = b;

    /// <summary>The wire, or null where nothing but a statement joins the ends.</summary>
    public Wire? Wire { get; } = wire;

    /// <summary>The net that both ends belong to, or null.</summary>
    public string? Net { get; set; } = net;

    /// <summary>What else the line is, such as "mated"; empty for wires and nets.</summary>
    public string Remark { get; init; } = "";

    /// <summary>Whether no wire of the harness makes it: branches of a net without wires, or of a unit's inside, may meet on their way.</summary>
    public bool IsBranch { get; init; }

    /// <summary>Whether it is drawn with a reference at both ends and not as a line.</summary>
    public bool IsReferenced { get; set; }

    /// <summary>Its end at a terminal, as other sheets refer to it.</summary>
    public Thing EndAt(TerminalId end) => Wire is { } wire
        ? Thing.WireEnd(wire.Designator, end.ToString())
        : new Thing(ThingKind.Net, Net ?? Remark, string.Create(CultureInfo.InvariantCulture, $"{Index} {end}"));

    public TerminalId Other(TerminalId end) => end == A ? B : A;
}
