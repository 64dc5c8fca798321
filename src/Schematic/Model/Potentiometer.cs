using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>
/// A resistive track between terminals <c>1</c> and <c>3</c> with a wiper, terminal <c>2</c>, that a hand moves along it. Clockwise goes
/// from <c>1</c> to <c>3</c> (common practice, from memory).
/// </summary>
/// <param name="Designator">The reference designator.</param>
/// <param name="Ohms">Resistance from end to end, or null when unknown.</param>
/// <param name="Span">Where the designator is declared.</param>
public sealed record Potentiometer(string Designator, double? Ohms, SourceSpan Span) : Part(Designator, Span)
{
    /// <summary>One end of the track, where the wiper stands at nought.</summary>
    public const string FirstEnd = "1";

    /// <summary>The wiper.</summary>
    public const string WiperEnd = "2";

    /// <summary>The other end of the track.</summary>
    public const string LastEnd = "3";

    /// <summary>Rated dissipation of the whole track in watts, or null when unknown.</summary>
    public double? RatedWatts { get; init; }

    /// <summary>What of its track the wiper passes.</summary>
    public WiperTravel Travel { get; init; } = WiperTravel.Whole;

    /// <summary>Most current at the wiper: what heats the whole track as rated (common practice, no source).</summary>
    public double? MostWiperAmps => RatedWatts is { } watts && Ohms is > 0 and var ohms ? Math.Sqrt(watts / ohms) : null;

    /// <inheritdoc/>
    public override Variation Variation => new(
        [.. Travel.Places.Select(p => $"at {ValueText.Number(p * 100)} %")], VariationCause.AnyTime);

    /// <inheritdoc/>
    public override ImmutableArray<Pole> ContactSets => [];

    /// <inheritdoc/>
    public override ImmutableArray<TerminalPair> Branches => [new(FirstEnd, WiperEnd), new(WiperEnd, LastEnd)];

    /// <inheritdoc/>
    public override CoilData? Winding => null;

    /// <inheritdoc/>
    public override bool IsLoad => false;

    /// <inheritdoc/>
    public override bool IsSymbol => true;

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}

/// <summary>The part of a track that a wiper passes, as shares of the whole.</summary>
/// <param name="From">Where it begins, from 0.</param>
/// <param name="To">Where it ends, up to 1.</param>
public sealed record WiperTravel(double From, double To)
{
    /// <summary>From end to end.</summary>
    public static WiperTravel Whole { get; } = new(0, 1);

    /// <summary>
    /// The places that are looked at: both ends, and the middle, since two halves of a track side by side have most resistance there.
    /// </summary>
    public ImmutableArray<double> Places => [From, (From + To) / 2, To];
}
