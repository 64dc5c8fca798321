using Schematic.Analysis;

namespace Schematic.Bench.Faults;

/// <summary>What can be wrong with one thing.</summary>
public enum FaultKind
{
    /// <summary>A joint, wire or fuse that does not conduct.</summary>
    Open,

    /// <summary>A joint with some tens of ohms: a cold solder joint, a corroded contact.</summary>
    Weak,

    /// <summary>Two contacts that touch each other.</summary>
    Bridge,

    /// <summary>A contact that touches the frame.</summary>
    Frame,

    /// <summary>What belongs on two contacts is exchanged.</summary>
    Exchange,

    /// <summary>A switching contact that never closes.</summary>
    Dead,

    /// <summary>A switching contact that is always closed.</summary>
    Stuck,

    /// <summary>A lamp, coil, resistor or diode that is blown, broken or not fitted.</summary>
    Missing,

    /// <summary>A diode or LED the wrong way round.</summary>
    Reversed,

    /// <summary>A coil some of whose turns are shorted.</summary>
    ShortedTurns,
}

/// <summary>One thing wrong with what lies on the bench.</summary>
/// <param name="Kind">What is wrong.</param>
/// <param name="First">The number of the joint, contact or device, or of the first terminal.</param>
/// <param name="Second">The number of the second terminal, or -1.</param>
/// <param name="Chance">How likely it is beforehand, against a sound unit: judgement, no source.</param>
/// <param name="Words">The fault in words.</param>
public sealed record Fault(FaultKind Kind, int First, int Second, double Chance, string Words)
{
    /// <summary>What a weak joint is given, in ohms.</summary>
    public const double WeakOhms = 25;

    /// <summary>The resistance that is left of a coil with shorted turns, as a share.</summary>
    public const double ShortedShare = 0.6;

    /// <summary>The faulty circuit.</summary>
    public BenchCircuit ApplyTo(BenchCircuit circuit) => Kind switch
    {
        FaultKind.Open => WithJoint(circuit, double.PositiveInfinity),
        FaultKind.Weak => WithJoint(circuit, WeakOhms),
        FaultKind.Bridge or FaultKind.Frame => circuit with
        {
            Joints = circuit.Joints.Add(new BenchJoint(First, Second, JointKind.Jumper, "", BenchCircuit.ContactOhms)),
        },
        FaultKind.Exchange => circuit with { Joints = [.. circuit.Joints.Select(Exchanged)] },
        FaultKind.Dead => circuit with { Contacts = circuit.Contacts.SetItem(First, circuit.Contacts[First] with { Stuck = false }) },
        FaultKind.Stuck => circuit with { Contacts = circuit.Contacts.SetItem(First, circuit.Contacts[First] with { Stuck = true }) },
        FaultKind.Missing => WithElement(circuit, circuit.Elements[First] with { IsMissing = true }),
        FaultKind.Reversed => WithElement(circuit, circuit.Elements[First] with { From = circuit.Elements[First].To, To = circuit.Elements[First].From }),
        _ => WithElement(circuit, circuit.Elements[First] with
        {
            Value = circuit.Elements[First].Value with { Ohms = circuit.Elements[First].Value.Ohms * ShortedShare },
        }),
    };

    private BenchCircuit WithJoint(BenchCircuit circuit, double ohms) =>
        circuit with { Joints = circuit.Joints.SetItem(First, circuit.Joints[First] with { Ohms = ohms }) };

    private BenchCircuit WithElement(BenchCircuit circuit, BenchElement element) =>
        circuit with { Elements = circuit.Elements.SetItem(First, element) };

    /// <summary>The terminals of what is wrong.</summary>
    internal (int One, int Other) Ends(BenchCircuit circuit) => Kind switch
    {
        FaultKind.Open or FaultKind.Weak => (circuit.Joints[First].From, circuit.Joints[First].To),
        FaultKind.Dead or FaultKind.Stuck => (circuit.Contacts[First].From, circuit.Contacts[First].To),
        FaultKind.Bridge or FaultKind.Frame or FaultKind.Exchange => (First, Second),
        _ => (circuit.Elements[First].From, circuit.Elements[First].To),
    };

    private BenchJoint Exchanged(BenchJoint joint) => joint.IsSoldered
        ? joint with { From = Turned(joint.From), To = Turned(joint.To) }
        : joint;

    private int Turned(int terminal) => terminal == First ? Second : terminal == Second ? First : terminal;
}
