using Schematic.Text;

namespace Schematic.Model;

/// <summary>What makes the resistance of a resistor that has a range.</summary>
public enum RangedResistorKind
{
    /// <summary>Nothing that is stated.</summary>
    Resistor,

    /// <summary>A wiper that a hand moves, joined to one end of the track.</summary>
    Rheostat,

    /// <summary>Its temperature.</summary>
    Thermistor,

    /// <summary>The light on it.</summary>
    Photoresistor,
}

/// <summary>A resistor of which a range is known, on terminals <c>1</c> and <c>2</c>.</summary>
/// <param name="Designator">The reference designator.</param>
/// <param name="Kind">What makes its resistance.</param>
/// <param name="Least">The least it has.</param>
/// <param name="Most">The most it has.</param>
/// <param name="Span">Where the designator is declared.</param>
public sealed record RangedResistor(string Designator, RangedResistorKind Kind, ResistanceEnd Least, ResistanceEnd Most, SourceSpan Span)
    : TwoEndedPart(Designator, new TerminalPair("1", "2"), Span)
{
    /// <summary>Rated dissipation in watts, of a rheostat that of the whole track; null when unknown.</summary>
    public double? RatedWatts { get; init; }

    /// <summary>Resistance of the whole track of a rheostat in ohms; of others the most. Null when unknown.</summary>
    public double? WholeOhms { get; init; } = Most.Ohms;

    /// <summary>What of its track the wiper of a rheostat passes.</summary>
    public WiperTravel Travel { get; init; } = WiperTravel.Whole;

    /// <summary>Of a thermistor with a stated characteristic that characteristic; else null.</summary>
    public ThermistorData? Thermistor { get; init; }

    /// <summary>Whether it has one value for good that nobody knows; else it changes at any time.</summary>
    public bool IsFixed { get; init; }

    /// <summary>Most current through the wiper of a rheostat: what heats the whole track as rated (common practice, no source).</summary>
    public double? MostWiperAmps => Kind == RangedResistorKind.Rheostat && RatedWatts is { } watts && WholeOhms is > 0 and var ohms ? Math.Sqrt(watts / ohms) : null;

    /// <summary>Whether nobody knows either end of its range.</summary>
    public bool IsNotMeasured => Least.Ohms is null && Most.Ohms is null;

    /// <inheritdoc/>
    public override Variation Variation => new([Least.Words, Most.Words], IsFixed ? VariationCause.NotKnown : VariationCause.AnyTime);

    /// <inheritdoc/>
    public override bool IsLoad => false;

    /// <inheritdoc/>
    public override T Accept<T>(IPartVisitor<T> visitor) => visitor.Visit(this);
}

/// <summary>What resistors with a range are called.</summary>
public static class RangedResistorWords
{
    /// <summary>The word of the trade, as the language has it.</summary>
    public static string Of(RangedResistorKind kind) => kind.ToString().ToLowerInvariant();
}

/// <summary>One end of a range of resistance.</summary>
/// <param name="Ohms">The resistance; zero where a wiper stands at the end of its track, null when unknown.</param>
/// <param name="Words">What it is called behind the designator: <c>at 100 ohm</c>, <c>at 0 %</c>.</param>
public sealed record ResistanceEnd(double? Ohms, string Words);
