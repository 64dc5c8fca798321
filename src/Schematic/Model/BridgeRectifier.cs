using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>Four diodes in a bridge: alternating current in at <c>AC1</c> and <c>AC2</c>, direct current out at <c>+</c> and <c>-</c>.</summary>
/// <param name="Designator">The reference designator.</param>
/// <param name="Span">Where the designator is declared.</param>
public sealed record BridgeRectifier(string Designator, SourceSpan Span) : Part(Designator, Span)
{
    /// <summary>Its terminals, the alternating ones first.</summary>
    public static ImmutableArray<string> TerminalNames { get; } = ["AC1", "AC2", "+", "-"];

    /// <summary>What one of its diodes drops; current passes two of them. 0.7 V unless stated.</summary>
    public double ForwardVolts { get; init; } = 0.7;

    /// <summary>Whether the file states the drop.</summary>
    public bool IsDropStated { get; init; }

    /// <summary>Most direct current that it gives, or null when unknown.</summary>
    public double? MaxAmps { get; init; }

    /// <summary>Highest voltage it stands backwards, a peak value; null when unknown.</summary>
    public double? ReverseVolts { get; init; }

    /// <summary>The four diodes, each in the direction of its current.</summary>
    public override ImmutableArray<TerminalPair> Branches => [new("AC1", "+"), new("AC2", "+"), new("-", "AC1"), new("-", "AC2")];

    /// <inheritdoc/>
    public override ImmutableArray<PartHalf> Halves =>
    [
        new("alternating side", new TerminalPair("AC1", "AC2"), HalfRole.Load), new("direct side", new TerminalPair("+", "-"), HalfRole.Source),
    ];

    /// <inheritdoc/>
    public override ImmutableArray<Pole> ContactSets => [];

    /// <inheritdoc/>
    public override CoilData? Winding => null;

    /// <inheritdoc/>
    public override bool IsLoad => false;

    /// <inheritdoc/>
    public override bool IsSymbol => true;

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}
