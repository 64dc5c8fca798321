using Schematic.Text;

namespace Schematic.Model;

/// <summary>An incandescent lamp on terminals <c>X1</c> and <c>X2</c>.</summary>
public sealed record Lamp(string Designator, double RatedVolts, double RatedAmps, SourceSpan Span) : TwoEndedPart(Designator, new TerminalPair("X1", "X2"), Span)
{
    /// <summary>Lens colour as an IEC 60757 code, or null.</summary>
    public ColourCode? Colour { get; init; }

    /// <summary>Hot resistance at the rated point, in ohms.</summary>
    public double HotOhms => RatedVolts / RatedAmps;

    /// <inheritdoc/>
    public override bool IsLoad => true;

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}
