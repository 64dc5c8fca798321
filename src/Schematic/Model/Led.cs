using Schematic.Text;

namespace Schematic.Model;

/// <summary>A light-emitting diode on terminals <c>A</c> (anode) and <c>K</c> (cathode).</summary>
/// <param name="Designator">The reference designator.</param>
/// <param name="ForwardVolts">Voltage at the rated current, or null when unknown.</param>
/// <param name="RatedAmps">Rated current, or null when unknown.</param>
/// <param name="Span">Where the designator is declared.</param>
public sealed record Led(string Designator, double? ForwardVolts, double? RatedAmps, SourceSpan Span) : TwoEndedPart(Designator, new TerminalPair("A", "K"), Span)
{
    /// <summary>Colour of the light, or null.</summary>
    public ColourCode? Colour { get; init; }

    /// <inheritdoc/>
    public override bool IsRatingUnknown => RatedAmps is null;

    /// <inheritdoc/>
    public override bool IsLoad => true;

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}
