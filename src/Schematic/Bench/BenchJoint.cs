using Schematic.Analysis;

namespace Schematic.Bench;

/// <summary>Two terminals held together: a soldered joint inside the unit, a wire, two mated contacts, a jumper, a fuse.</summary>
/// <param name="From">The number of one terminal in the circuit.</param>
/// <param name="To">The number of the other.</param>
/// <param name="Kind">What joins them.</param>
/// <param name="Name">The wire's, net's or fuse's name; empty where it has none.</param>
/// <param name="Ohms">Resistance; an infinite one is an open joint.</param>
public readonly record struct BenchJoint(int From, int To, JointKind Kind, string Name, double Ohms)
{
    /// <summary>Whether it conducts as a joint should, so that its ends are one place.</summary>
    public bool IsSound => Ohms < BenchCircuit.MostJointOhms;

    /// <summary>Whether nothing passes.</summary>
    public bool IsOpen => double.IsPositiveInfinity(Ohms);

    /// <summary>Whether somebody soldered it, and may have soldered it to another contact; plugs and bars stay where they are.</summary>
    public bool IsSoldered => Kind is JointKind.Attachment or JointKind.Wire or JointKind.Net;
}
