using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>
/// A relay: a coil on terminals <c>A1</c> and <c>A2</c>, and contact sets numbered as EN 50005 does (11-12-14, 21-22-24):
/// 1 common, 2 break, 4 make, the tens digit counting the sets.
/// </summary>
public sealed record Relay(string Designator, CoilData Coil, ImmutableArray<RelayPole> Poles, SourceSpan Span)
    : Part(Designator, Span)
{
    /// <summary>The ends of its coil.</summary>
    public static readonly TerminalPair CoilEnds = new("A1", "A2");

    /// <inheritdoc/>
    public override ImmutableArray<Pole> ContactSets => [.. Poles.Select(p => p.Pole)];

    /// <inheritdoc/>
    public override ImmutableArray<TerminalPair> Branches => [CoilEnds];

    /// <inheritdoc/>
    public override CoilData? Winding => Coil;

    /// <inheritdoc/>
    public override bool IsLoad => true;

    /// <inheritdoc/>
    public override bool IsSymbol => true;

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}
