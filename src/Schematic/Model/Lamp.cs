using Schematic.Text;

namespace Schematic.Model;

/// <summary>An incandescent lamp on terminals <c>X1</c> and <c>X2</c>.</summary>
/// <param name="Designator">The reference designator.</param>
/// <param name="RatedVolts">Rated voltage, or null when unknown.</param>
/// <param name="RatedAmps">Current at the rated voltage, or null when unknown.</param>
/// <param name="Span">Where the designator is declared.</param>
public sealed record Lamp(string Designator, double? RatedVolts, double? RatedAmps, SourceSpan Span) : TwoEndedPart(Designator, new TerminalPair("X1", "X2"), Span)
{
    /// <summary>Lens colour as an IEC 60757 code, or null.</summary>
    public ColourCode? Colour { get; init; }

    /// <summary>Which of its figures was reckoned from the others.</summary>
    public Reckoned Reckoned { get; init; }

    /// <summary>Its resistance as a meter reads it, cold, or null where it was not measured.</summary>
    public double? ColdOhms { get; init; }

    /// <summary>
    /// Hot resistance at the rated point, in ohms; of a lamp that was only measured ten times the cold one, which small panel
    /// lamps have about (the same share as for the inrush). Null when neither is known.
    /// </summary>
    public double? HotOhms => RatedVolts / RatedAmps ?? HotByCold * ColdOhms;

    /// <inheritdoc/>
    public override bool IsRatingUnknown => RatedVolts is null;

    private const double HotByCold = 10;

    /// <inheritdoc/>
    public override bool IsLoad => true;

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}
