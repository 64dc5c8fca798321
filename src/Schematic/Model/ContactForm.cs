namespace Schematic.Model;

/// <summary>The form of a switching contact.</summary>
public enum ContactForm
{
    /// <summary>Open at rest, closed when operated.</summary>
    Make,

    /// <summary>Closed at rest, open when operated.</summary>
    Break,

    /// <summary>A common and two throws.</summary>
    Changeover,

    /// <summary>A common and any number of throws, one for each position or group of positions.</summary>
    Rotary,
}
