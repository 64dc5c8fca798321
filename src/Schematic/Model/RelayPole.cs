namespace Schematic.Model;

/// <summary>One contact set of a relay: its form and its contacts.</summary>
public sealed record RelayPole(ContactForm Form, Pole Pole)
{
    /// <summary>Whether it moves only after the relay's delay: a contact with a special function, numbered 5 to 8.</summary>
    public bool IsDelayed { get; init; }
}
