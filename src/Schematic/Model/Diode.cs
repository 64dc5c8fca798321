using Schematic.Text;

namespace Schematic.Model;

/// <summary>A diode on terminals <c>A</c> (anode) and <c>K</c> (cathode).</summary>
public sealed record Diode(string Designator, SourceSpan Span) : TwoEndedPart(Designator, new TerminalPair("A", "K"), Span)
{
    /// <summary>Forward drop in volts: 0.7 for silicon unless stated.</summary>
    public double ForwardVolts { get; init; } = 0.7;

    /// <summary>Whether the file states the drop.</summary>
    public bool IsDropStated { get; init; }

    /// <summary>Highest forward current in amperes, or null when unknown.</summary>
    public double? MaxAmps { get; init; }

    /// <summary>Highest reverse voltage in volts, or null when unknown.</summary>
    public double? ReverseVolts { get; init; }

    /// <inheritdoc/>
    public override bool IsLoad => false;

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}
