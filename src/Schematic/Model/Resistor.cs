using Schematic.Text;

namespace Schematic.Model;

/// <summary>A resistor on terminals <c>1</c> and <c>2</c>.</summary>
/// <param name="Designator">The reference designator.</param>
/// <param name="Ohms">Its resistance, or null when unknown.</param>
/// <param name="Span">Where the designator is declared.</param>
public sealed record Resistor(string Designator, double? Ohms, SourceSpan Span) : TwoEndedPart(Designator, new TerminalPair("1", "2"), Span)
{
    /// <summary>Rated dissipation in watts, or null when unknown.</summary>
    public double? RatedWatts { get; init; }

    /// <inheritdoc/>
    public override bool IsLoad => false;

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}
