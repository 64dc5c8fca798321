using Schematic.Analysis.Circuits;

namespace Schematic.Analysis.Loads;

/// <summary>What a load gets over all positions in which it is fed.</summary>
/// <param name="Load">The lamp, coil, LED or resistor.</param>
/// <param name="Need">What it needs and stands.</param>
/// <param name="LeastVolts">Lowest voltage across it while it is fed so that it should work, or null when no position does.</param>
/// <param name="MostVolts">Highest voltage across it, or null when it never gets any.</param>
/// <param name="MostAmps">Highest current through it, or null when it never gets any.</param>
/// <param name="Drop">The most that wires and their returns take between supply and load, or null where other parts lie between.</param>
/// <param name="AllowedDrop">What they may take.</param>
public sealed record LoadLevel(
    Element Load, LoadNeed Need, Extreme? LeastVolts, Extreme? MostVolts, Extreme? MostAmps, Extreme? Drop, double AllowedDrop)
{
    /// <summary>Whether its first end (A1, X1, anode) is positive in some position that feeds it.</summary>
    public bool IsForward { get; init; }

    /// <summary>Whether its second end is positive in some position that feeds it.</summary>
    public bool IsBackward { get; init; }

    /// <summary>Lowest voltage across a coil while it is only held, as by an economy resistor; null when it never is.</summary>
    public Extreme? HeldVolts { get; init; }

    /// <summary>The part's designator.</summary>
    public string Name => Load.Name;
}
