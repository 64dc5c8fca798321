using Schematic.Text;

namespace Schematic.Model;

/// <summary>A capacitor: open for direct current, and holding its charge. A polarised one has its plus on <c>1</c>.</summary>
/// <param name="Designator">The reference designator.</param>
/// <param name="Farads">Its capacitance, or null when unknown.</param>
/// <param name="Span">Where the designator is declared.</param>
public sealed record Capacitor(string Designator, double? Farads, SourceSpan Span)
    : TwoEndedPart(Designator, new TerminalPair("1", "2"), Span)
{
    /// <summary>Highest voltage it stands, or null when unknown.</summary>
    public double? MaxVolts { get; init; }

    /// <summary>Whether it has a right way round, as an electrolytic one.</summary>
    public bool IsPolarised { get; init; }

    /// <summary>The energy it holds at a voltage, in joules: half the capacitance times the voltage squared; null when unknown.</summary>
    public double? JoulesAt(double volts) => Farads * volts * volts / 2;

    /// <inheritdoc/>
    public override bool IsLoad => false;

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}
