using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>
/// A relay: a coil on terminals <c>A1</c> and <c>A2</c>, and contact sets numbered as EN 50005 does (11-12-14, 21-22-24):
/// 1 common, 2 break, 4 make, the tens digit counting the sets. Delayed sets of a time-delay relay end in 5-6-8 (15-16-18): the
/// digits 5 to 8 are those of contacts with special functions (EN 50005 as a secondary page lists it; that 5-6 breaks and 7-8 makes
/// is from memory).
/// </summary>
public sealed record Relay(string Designator, CoilData Coil, ImmutableArray<RelayPole> Poles, SourceSpan Span)
    : Part(Designator, Span)
{
    /// <summary>The ends of its coil.</summary>
    public static readonly TerminalPair CoilEnds = new("A1", "A2");

    /// <summary>How long after its coil operates the delayed contacts operate; null: at once.</summary>
    public Delay? OnDelay { get; init; }

    /// <summary>How long after its coil releases the delayed contacts release; null: at once.</summary>
    public Delay? OffDelay { get; init; }

    /// <summary>Whether it is a time-delay relay.</summary>
    public bool HasDelay => OnDelay is not null || OffDelay is not null;

    /// <summary>Its delays in words, such as <c>on-delay 5 s</c>; empty without one.</summary>
    public string DelayText => string.Join(", ", new[]
    {
        OnDelay is { } on ? $"on-delay {on.Text}" : "",
        OffDelay is { } off ? $"off-delay {off.Text}" : "",
    }.Where(t => t.Length > 0));

    /// <summary>Whether the contact set with that common is delayed.</summary>
    public bool IsDelayed(string common) => Poles.Any(p => p.IsDelayed && p.Pole.Common == common);

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
