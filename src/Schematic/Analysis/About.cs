using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis;

/// <summary>Names things of the panel as subjects of findings, and figures with their units.</summary>
public static class About
{
    /// <summary>A part.</summary>
    public static Subject Part(Part part) => new(SubjectKind.Part, part.Designator);

    /// <summary>A part by its designator.</summary>
    public static Subject Part(string designator) => new(SubjectKind.Part, designator);

    /// <summary>A terminal.</summary>
    public static Subject Terminal(TerminalId terminal) => new(SubjectKind.Terminal, terminal.ToString());

    /// <summary>A wire.</summary>
    public static Subject Wire(Wire wire) => new(SubjectKind.Wire, wire.Designator);

    /// <summary>A net.</summary>
    public static Subject Net(Net net) => new(SubjectKind.Net, net.Name);

    /// <summary>A cable.</summary>
    public static Subject Cable(Cable cable) => new(SubjectKind.Cable, cable.Designator);

    /// <summary>An actuator.</summary>
    public static Subject Actuator(string name) => new(SubjectKind.Actuator, name);

    /// <summary>A voltage.</summary>
    public static FindingValue Volts(string name, double value) => new(name, value, "V");

    /// <summary>A current.</summary>
    public static FindingValue Amps(string name, double value) => new(name, value, "A");
}
