namespace Schematic.Model;

/// <summary>One contact set of a relay, with its form.</summary>
public sealed record RelayPole(ContactForm Form, Pole Pole);
