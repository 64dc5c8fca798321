namespace Schematic.Model;

/// <summary>
/// One of two sides of a part that meet inside it without a conductor, or by something that a drawing shows apart: the windings of a
/// transformer, lamp and eye of an optocoupler. Each is drawn where it acts and names the place of the other.
/// </summary>
/// <param name="Name">What the side is called.</param>
/// <param name="Ends">Its terminals; current is counted positive from the first to the second.</param>
/// <param name="Role">What the side does in its circuit.</param>
public sealed record PartHalf(string Name, TerminalPair Ends, HalfRole Role);

/// <summary>What a side of a part does in its circuit.</summary>
public enum HalfRole
{
    /// <summary>It is fed.</summary>
    Load,

    /// <summary>It feeds.</summary>
    Source,

    /// <summary>It lets current pass or not.</summary>
    Switch,
}
