using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>
/// A transformer with one primary winding, <c>1</c> and <c>2</c>, and one secondary, <c>3</c> and <c>4</c>; <c>1</c> and <c>3</c> are positive in the same
/// half-wave. The secondary feeds while the primary is fed.
/// </summary>
/// <param name="Designator">The reference designator.</param>
/// <param name="PrimaryVolts">Rated effective voltage of the primary.</param>
/// <param name="SecondaryVolts">Rated effective voltage of the secondary.</param>
/// <param name="Span">Where the designator is declared.</param>
public sealed record Transformer(string Designator, double PrimaryVolts, double SecondaryVolts, SourceSpan Span) : Part(Designator, Span)
{
    /// <summary>From this share of its rated voltage on the primary counts as fed (own choice, as for coils).</summary>
    public const double FedFraction = 0.75;

    /// <summary>Its terminals in order.</summary>
    public static ImmutableArray<string> TerminalNames { get; } = ["1", "2", "3", "4"];

    /// <summary>The primary.</summary>
    public static TerminalPair Primary { get; } = new("1", "2");

    /// <summary>The secondary.</summary>
    public static TerminalPair Secondary { get; } = new("3", "4");

    /// <summary>Rated apparent power in volt-amperes, or null when unknown.</summary>
    public double? VoltAmps { get; init; }

    /// <summary>What the primary takes when the secondary gives all that it may, as a resistance in ohms; null when unknown.</summary>
    public double? PrimaryOhms => VoltAmps is { } power && power > 0 ? PrimaryVolts * PrimaryVolts / power : null;

    /// <summary>The secondary as a supply: alternating, fixed, and limited by the rated power.</summary>
    public Supply AsSupply => new(Designator, SecondaryVolts, Span)
    {
        MinVolts = SecondaryVolts, MaxVolts = SecondaryVolts, IsAlternating = true, LimitAmps = VoltAmps / SecondaryVolts, Description = Description,
    };

    /// <summary>The windings.</summary>
    public override ImmutableArray<TerminalPair> Branches => [Primary, Secondary];

    /// <inheritdoc/>
    public override ImmutableArray<PartHalf> Halves => [new("primary", Primary, HalfRole.Load), new("secondary", Secondary, HalfRole.Source)];

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
