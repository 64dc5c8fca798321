namespace Schematic.Analysis.States;

/// <summary>
/// How an actuator stands for a moment while it moves between two neighbouring positions: contacts that make before they
/// break are closed at both. Likewise of a relay while it changes over, from released (0) to operated (1) or back.
/// </summary>
/// <param name="Value">The value of its state variable that stands for the moment.</param>
/// <param name="From">The lower of the two positions, by number; of an endless actuator's wrap the last.</param>
/// <param name="To">The other.</param>
/// <param name="Others">How its contacts that break before they make stand then.</param>
public sealed record Passing(int Value, int From, int To, PassingContacts Others);

/// <summary>How contacts that break before they make stand in passing: nothing says which deck is first.</summary>
public enum PassingContacts
{
    /// <summary>As before.</summary>
    AsFrom,

    /// <summary>As after.</summary>
    AsTo,

    /// <summary>Open, but for those that are closed before and after.</summary>
    Open,
}
