using Schematic.Analysis.Circuits;

namespace Schematic.Analysis.Loads;

/// <summary>A wire, a protector or a contact between two nodes of a wired network.</summary>
/// <param name="One">One node.</param>
/// <param name="Other">The other.</param>
/// <param name="Wire">The place of the wire in the panel, or -1 for a protector or a contact.</param>
/// <param name="Protector">The place of the fuse or breaker in the circuit, or -1.</param>
/// <param name="Contact">The contact, or null.</param>
internal readonly record struct WiredJoint(int One, int Other, int Wire, int Protector, Contact? Contact)
{
    /// <summary>The node at the other side.</summary>
    public int Opposite(int node) => node == One ? Other : One;
}
