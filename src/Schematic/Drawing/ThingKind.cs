namespace Schematic.Drawing;

/// <summary>What kind of thing of a panel a drawing shows.</summary>
public enum ThingKind
{
    /// <summary>A part, named by its designator: <c>K1</c>.</summary>
    Part,

    /// <summary>A terminal of a part, a connector's contact among them: <c>J1:5</c>.</summary>
    Terminal,

    /// <summary>A contact set of a switch or relay, named by its common terminal: <c>K1:11</c>.</summary>
    Contact,

    /// <summary>A wire or a core: <c>W5</c>. An end of it has the terminal it goes to as its role.</summary>
    Wire,

    /// <summary>A cable: <c>C1</c>.</summary>
    Cable,

    /// <summary>An actuator: <c>LEVER</c>.</summary>
    Actuator,

    /// <summary>A net, or what joins terminals without a wire.</summary>
    Net,
}
