using Schematic.Text;

namespace Schematic.Model;

/// <summary>An incandescent lamp on terminals <c>X1</c> and <c>X2</c>.</summary>
public sealed record Lamp(string Designator, double RatedVolts, double RatedAmps, SourceSpan Span) : TwoEndedPart(Designator, new TerminalPair("X1", "X2"), Span)
{
    /// <summary>Lens colour as an IEC 60757 code, or null.</summary>
    public ColourCode? Colour { get; init; }

    /// <summary>
    /// Its resistance as a meter reads it, cold, where that is all that is known of it: <see cref="RatedVolts"/> and
    /// <see cref="RatedAmps"/> are then zero and mean nothing.
    /// </summary>
    public double? ColdOhms { get; init; }

    /// <summary>Whether the file states its rating.</summary>
    public bool IsRatingKnown => ColdOhms is null;

    /// <summary>
    /// Hot resistance at the rated point, in ohms; of a lamp that was only measured ten times the cold one, which small panel
    /// lamps have about (the same share as for the inrush).
    /// </summary>
    public double HotOhms => ColdOhms is { } cold ? HotByCold * cold : RatedVolts / RatedAmps;

    private const double HotByCold = 10;

    /// <inheritdoc/>
    public override bool IsLoad => true;

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}
