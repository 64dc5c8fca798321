using Schematic.Text;

namespace Schematic.Model;

/// <summary>One switch pole moved by an actuator. A gang statement yields one of these for each pole.</summary>
public sealed record Switch(string Designator, ContactForm Form, string Actuator, Pole Pole, SourceSpan Span)
    : Part(Designator, Span)
{
    /// <summary>The designator of the gang's first pole; poles of one statement share it. Equal to the own designator when alone.</summary>
    public string Gang { get; init; } = Designator;

    /// <summary>What the contact may carry, or null when unknown.</summary>
    public ContactRating? Rating { get; init; }
}
