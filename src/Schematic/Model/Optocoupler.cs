using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>
/// A light-emitting diode, <c>A</c> and <c>K</c>, and a transistor, <c>C</c> and <c>E</c>, that its light switches on. Nothing conducts between
/// the two sides.
/// </summary>
/// <param name="Designator">The reference designator.</param>
/// <param name="ForwardVolts">What the diode drops, or null when unknown.</param>
/// <param name="RatedAmps">The current at which the diode is meant to work, or null when unknown.</param>
/// <param name="Span">Where the designator is declared.</param>
public sealed record Optocoupler(string Designator, double? ForwardVolts, double? RatedAmps, SourceSpan Span) : Part(Designator, Span), ISemiconductorOutput
{
    /// <summary>Its terminals in order.</summary>
    public static ImmutableArray<string> TerminalNames { get; } = ["A", "K", "C", "E"];

    /// <summary>The diode.</summary>
    public static TerminalPair Input { get; } = new("A", "K");

    /// <inheritdoc/>
    public TerminalPair Output { get; } = new("C", "E");

    /// <inheritdoc/>
    public double SaturationVolts { get; init; } = TransistorOutput.UsualSaturationVolts;

    /// <inheritdoc/>
    public bool IsSaturationStated { get; init; }

    /// <inheritdoc/>
    public double? MaxVolts { get; init; }

    /// <inheritdoc/>
    public double? MaxAmps { get; init; }

    /// <inheritdoc/>
    public override ImmutableArray<TerminalPair> Branches => [Input, Output];

    /// <inheritdoc/>
    public override ImmutableArray<PartHalf> Halves => [new("diode", Input, HalfRole.Load), new("output", Output, HalfRole.Switch)];

    /// <inheritdoc/>
    public override ImmutableArray<Pole> ContactSets => [];

    /// <inheritdoc/>
    public override CoilData? Winding => null;

    /// <inheritdoc/>
    public override bool IsLoad => true;

    /// <inheritdoc/>
    public override bool IsSymbol => true;

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}
