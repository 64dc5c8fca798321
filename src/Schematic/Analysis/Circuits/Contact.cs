using Schematic.Model;
using Schematic.Text;

namespace Schematic.Analysis.Circuits;

/// <summary>A pair of terminals that a switch or a relay joins while a condition holds: a common and one throw.</summary>
/// <param name="Index">Its place among the contacts of the circuit.</param>
/// <param name="Part">The switch or relay.</param>
/// <param name="Common">The common.</param>
/// <param name="Throw">The throw.</param>
/// <param name="Label">What the drawing calls the throw, or empty.</param>
/// <param name="When">When the two are joined.</param>
/// <param name="Span">Where the throw is declared.</param>
public sealed record Contact(
    int Index, Part Part, TerminalId Common, TerminalId Throw, string Label, Condition When, SourceSpan Span)
{
    /// <summary>The node of <see cref="Common"/>.</summary>
    public required int CommonNode { get; init; }

    /// <summary>The node of <see cref="Throw"/>.</summary>
    public required int ThrowNode { get; init; }

    /// <summary>Whether its pole makes the new contact before it breaks the old one.</summary>
    public bool MakesBeforeBreak { get; init; }

    /// <summary>
    /// Of a joint that may be inside a unit that is not traced the hidden node it leads to, counted from one; zero for contacts.
    /// </summary>
    public int HiddenGroup { get; init; }

    /// <summary>Whether it is no contact that anybody can see, but stands for how a part may stand (<see cref="InsideJoints"/>).</summary>
    public bool IsInside { get; init; }

    /// <summary>Of a joint inside a part that varies in which of its ways it is closed; null for all others.</summary>
    public int? Way { get; init; }

    /// <summary>Whether a relay's coil moves it.</summary>
    public bool IsRelayContact => Part is Relay;

    /// <summary>The node at the other side.</summary>
    public int Other(int node) => node == CommonNode ? ThrowNode : CommonNode;
}
