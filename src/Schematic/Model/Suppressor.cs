using Schematic.Text;

namespace Schematic.Model;

/// <summary>
/// A varistor or a two-way suppressor diode: open up to its voltage in both directions, so that it may lie across a coil that is
/// fed either way or with alternating current.
/// </summary>
/// <param name="Designator">The reference designator.</param>
/// <param name="StandsVolts">The voltage that it stands for ever, in either direction; null when unknown.</param>
/// <param name="Span">Where the designator is declared.</param>
public sealed record Suppressor(string Designator, double? StandsVolts, SourceSpan Span)
    : TwoEndedPart(Designator, new TerminalPair("1", "2"), Span)
{
    /// <inheritdoc/>
    public override bool IsLoad => false;

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}
