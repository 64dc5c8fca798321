using Schematic.Model;

namespace Schematic.Layout.Circuits;

/// <summary>What a link of the circuit is, in the order in which a column likes to have them from the top.</summary>
internal enum LinkKind
{
    /// <summary>A supply line or a return, drawn as a line and not as a link.</summary>
    Rail,

    /// <summary>A supply.</summary>
    Source,

    /// <summary>A fuse or a breaker.</summary>
    Protector,

    /// <summary>A throw of a switch that a hand moves.</summary>
    HandContact,

    /// <summary>A throw of a relay.</summary>
    RelayContact,

    /// <summary>A resistor, or a capacitor.</summary>
    Resistor,

    /// <summary>Something that is to do its work: lamp, coil, light-emitting diode.</summary>
    Load,

    /// <summary>A diode, or a suppressor.</summary>
    Diode,

    /// <summary>Where the circuit leaves the drawing: an input of a board, a contact of a connector, the end of a wire.</summary>
    End,
}

/// <summary>Something with two ends that a circuit is made of.</summary>
/// <param name="Index">Its place among the links of the map.</param>
/// <param name="Kind">What it is.</param>
/// <param name="From">The terminal that stands uppermost where nothing speaks against it: a common, an anode, <c>A1</c>.</param>
/// <param name="To">The other terminal; of an end and a rail the same.</param>
/// <param name="FromNode">The node of <paramref name="From"/>.</param>
/// <param name="ToNode">The node of <paramref name="To"/>.</param>
internal sealed record CircuitLink(int Index, LinkKind Kind, TerminalId From, TerminalId To, int FromNode, int ToNode)
{
    /// <summary>By its place alone: all that its part states would be counted in each time that it is looked up.</summary>
    public override int GetHashCode() => Index;

    /// <summary>The part it belongs to, or null for a rail.</summary>
    public Part? Part { get; init; }

    /// <summary>The pole that it is a throw of, or null.</summary>
    public PoleUse? Pole { get; init; }

    /// <summary>Of a part that is drawn as two sides which of them it is, from zero; null for all others.</summary>
    public int? Half { get; init; }

    /// <summary>Which throw of the pole it is, from zero.</summary>
    public int Throw { get; init; }

    /// <summary>Where the part stands in the file: what the order of columns goes by.</summary>
    public int FileOrder { get; init; }

    /// <summary>Whether the link is an end that stands at the upper end of its column: an input that a pull-up holds high.</summary>
    public bool IsUpperEnd { get; init; }

    /// <summary>Where a column or a bridge is cut and goes on elsewhere: the name of the pair of ends and which of them this is; else null.</summary>
    public Cut? Cut { get; init; }

    /// <summary>The node at the other side.</summary>
    public int Other(int node) => node == FromNode ? ToNode : FromNode;

    /// <summary>The terminal at that node.</summary>
    public TerminalId At(int node) => node == FromNode ? From : To;
}

/// <summary>One of the two ends of a cut: both name each other's place.</summary>
/// <param name="Name">The name of the cut.</param>
/// <param name="IsSecond">Whether this is the end of the piece that was set apart.</param>
internal sealed record Cut(string Name, bool IsSecond)
{
    /// <summary>What stands at the arrow beside the place; empty where the lines speak for themselves.</summary>
    public string Words { get; init; } = "";
}

/// <summary>A pole of a switch or a relay, as one symbol shows it.</summary>
/// <param name="Index">Its place among the poles.</param>
/// <param name="Part">The switch or the relay.</param>
/// <param name="Pole">Common and throws.</param>
internal sealed record PoleUse(int Index, Part Part, Pole Pole)
{
    /// <summary>Whether the pole is open while it is operated: its positions are told as those in which it is open.</summary>
    public bool IsBreak => Part is Switch { Form: ContactForm.Break };

    /// <summary>The actuator that moves it, or null for a relay's.</summary>
    public string? Actuator => (Part as Switch)?.Actuator;
}
