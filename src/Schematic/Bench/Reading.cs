using Schematic.Model;

namespace Schematic.Bench;

/// <summary>How the meter is set.</summary>
public enum MeterTest
{
    /// <summary>Resistance, both ways alike.</summary>
    Ohms,

    /// <summary>Diode test: volts, current from the red lead to the black one.</summary>
    Diode,

    /// <summary>Resistance while what varies between the leads is turned slowly from one end to the other.</summary>
    Turned,
}

/// <summary>What a meter shows.</summary>
public enum ReadingKind
{
    /// <summary>Over range: nothing passes.</summary>
    Open,

    /// <summary>A resistance in ohms.</summary>
    Ohms,

    /// <summary>The voltage of a diode test.</summary>
    Volts,
}

/// <summary>What a meter is to show, with the limits between which it may.</summary>
/// <param name="Kind">What it shows.</param>
/// <param name="Value">Ohms or volts; zero when open.</param>
/// <param name="Least">The lowest to be expected.</param>
/// <param name="Most">The highest to be expected.</param>
public readonly record struct Reading(ReadingKind Kind, double Value, double Least, double Most)
{
    /// <summary>With more than this between its limits an expected reading is said by its limits alone.</summary>
    private const double WideShare = 8;

    /// <summary>Nothing passes.</summary>
    public static Reading Open => new(ReadingKind.Open, 0, 0, 0);

    /// <summary>Nobody knows what it shows: nothing speaks against anything.</summary>
    public static Reading Unknown => new(ReadingKind.Ohms, 1000, 0, 1e9);

    /// <summary>Of what is turned from end to end the lowest it shows on the way, with its limits; <see cref="Value"/> is the highest.</summary>
    public (double Value, double Least, double Most)? Lowest { get; init; }

    /// <summary>Above this many ohms a reading might be taken for an open one: damp and fingers read a megohm (own choice).</summary>
    public const double SurelyClosedOhms = 1e6;

    /// <summary>Whether a person who sees one of the two knows that it is not the other.</summary>
    public bool DiffersFrom(Reading other)
    {
        if (Kind == other.Kind)
            return Kind != ReadingKind.Open && (Most < other.Least || other.Most < Least || (Lowest is { } low && other.Lowest is { } there && (low.Most < there.Least || there.Most < low.Least)));
        if (Kind == ReadingKind.Open) return other.IsSurelyClosed;
        return other.Kind == ReadingKind.Open ? IsSurelyClosed : true;
    }

    /// <summary>The reading in words: <c>38 ohm</c>, <c>closed</c>, <c>open</c>, <c>0.6 V</c>; what may be anything between far limits by them.</summary>
    public string Text => IsSteady ? $"{(this with { Lowest = null }).Text} throughout" : Kind switch
    {
        ReadingKind.Open => "open",
        ReadingKind.Volts => ValueText.Volts(Value),
        _ when Lowest is { } low => $"{ValueText.Ohms(Math.Round(low.Value, 1))} to {ValueText.Ohms(Value)}",
        _ when Most <= BenchCircuit.MostJointOhms + 1 => "closed",
        _ when Most >= Unknown.Most => "anything",
        _ when Most > WideShare * Math.Max(1, Least) => Limits,
        _ => ValueText.Ohms(Value),
    };

    /// <summary>The limits in words: <c>33 to 44 ohm</c>; what beeps is <c>up to 1 ohm</c>.</summary>
    public string Limits => Kind switch
    {
        ReadingKind.Open => "over range",
        ReadingKind.Volts when Least <= 0 => $"up to {ValueText.Volts(Most)}",
        ReadingKind.Volts => $"{ValueText.Volts(Least)} to {ValueText.Volts(Most)}",
        _ when Lowest is { } low && !IsSteady => $"lowest {Between(low.Least, low.Most)}, highest {Between(Least, Most)}, no jumps",
        _ => Between(Least, Most),
    };

    private bool IsSurelyClosed => Kind == ReadingKind.Volts || (Lowest?.Most ?? Most) < SurelyClosedOhms;

    /// <summary>Whether it stays as it is, to a few parts in a hundred, while something is turned.</summary>
    public bool IsSteady => Lowest is { } low && Value - low.Value <= 0.03 * Math.Max(1, Value);

    private static string Between(double least, double most) =>
        least <= 0 ? $"up to {ValueText.Ohms(most)}" : $"{ValueText.Ohms(least)} to {ValueText.Ohms(most)}";
}
