using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>One switch pole moved by an actuator. A gang statement yields one of these for each pole.</summary>
public sealed record Switch(string Designator, ContactForm Form, string Actuator, Pole Pole, SourceSpan Span)
    : Part(Designator, Span)
{
    /// <summary>The designator of the gang's first pole; poles of one statement share it. Equal to the own designator when alone.</summary>
    public string Gang { get; init; } = Designator;

    /// <summary>How its contact is built.</summary>
    public SwitchKind Kind { get; init; }

    /// <summary>Whether it is said to be coded so that neighbouring positions differ in one contact.</summary>
    public bool IsGray { get; init; }

    /// <inheritdoc/>
    public override ImmutableArray<Pole> ContactSets => [Pole];

    /// <inheritdoc/>
    public override ImmutableArray<TerminalPair> Branches => [];

    /// <inheritdoc/>
    public override CoilData? Winding => null;

    /// <inheritdoc/>
    public override bool IsLoad => false;

    /// <inheritdoc/>
    public override bool IsSymbol => true;

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}
