using Schematic.Text;

namespace Schematic.Model;

/// <summary>
/// A transistor that something outside the file drives, a program or a board: between collector <c>C</c> and emitter <c>E</c> it is on or
/// off, and nobody says when. An open collector has its emitter on the return, an open emitter its collector on the supply.
/// </summary>
/// <param name="Designator">The reference designator.</param>
/// <param name="Span">Where the designator is declared.</param>
public sealed record TransistorOutput(string Designator, SourceSpan Span) : TwoEndedPart(Designator, new TerminalPair("C", "E"), Span), ISemiconductorOutput
{
    /// <summary>A saturated small transistor (from memory).</summary>
    public const double UsualSaturationVolts = 0.3;

    /// <inheritdoc/>
    public TerminalPair Output => Ends;

    /// <inheritdoc/>
    public double SaturationVolts { get; init; } = UsualSaturationVolts;

    /// <inheritdoc/>
    public bool IsSaturationStated { get; init; }

    /// <inheritdoc/>
    public double? MaxVolts { get; init; }

    /// <inheritdoc/>
    public double? MaxAmps { get; init; }

    /// <inheritdoc/>
    public override Variation Variation => new(["off", "on"], VariationCause.AnyTime);

    /// <inheritdoc/>
    public override bool IsLoad => false;

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}
