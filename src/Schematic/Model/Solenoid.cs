using Schematic.Text;

namespace Schematic.Model;

/// <summary>A coil that moves or locks something, on terminals <c>A1</c> and <c>A2</c>.</summary>
public sealed record Solenoid(string Designator, CoilData Coil, SourceSpan Span) : TwoEndedPart(Designator, new TerminalPair("A1", "A2"), Span)
{
    /// <inheritdoc/>
    public override bool IsLoad => true;

    /// <inheritdoc/>
    public override CoilData? Winding => Coil;

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}
