using Schematic.Model;

namespace Schematic.Bench;

/// <summary>How the meter is set.</summary>
public enum MeterTest
{
    /// <summary>Resistance, both ways alike.</summary>
    Ohms,

    /// <summary>Diode test: volts, current from the red lead to the black one.</summary>
    Diode,
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
    /// <summary>Nothing passes.</summary>
    public static Reading Open => new(ReadingKind.Open, 0, 0, 0);

    /// <summary>Above this many ohms a reading might be taken for an open one: damp and fingers read a megohm (own choice).</summary>
    public const double SurelyClosedOhms = 1e6;

    /// <summary>Whether a person who sees one of the two knows that it is not the other.</summary>
    public bool DiffersFrom(Reading other)
    {
        if (Kind == other.Kind) return Kind != ReadingKind.Open && (Most < other.Least || other.Most < Least);
        if (Kind == ReadingKind.Open) return other.Kind == ReadingKind.Volts || other.Most < SurelyClosedOhms;
        return other.Kind == ReadingKind.Open ? Kind == ReadingKind.Volts || Most < SurelyClosedOhms : true;
    }

    /// <summary>The reading in words: <c>38 ohm</c>, <c>closed</c>, <c>open</c>, <c>0.6 V</c>.</summary>
    public string Text => Kind switch
    {
        ReadingKind.Open => "open",
        ReadingKind.Volts => ValueText.Volts(Value),
        _ when Most <= BenchCircuit.MostJointOhms + 1 => "closed",
        _ => ValueText.Ohms(Value),
    };

    /// <summary>The limits in words: <c>33 to 44 ohm</c>; what beeps is <c>up to 1 ohm</c>.</summary>
    public string Limits => Kind switch
    {
        ReadingKind.Open => "over range",
        ReadingKind.Volts when Least <= 0 => $"up to {ValueText.Volts(Most)}",
        ReadingKind.Volts => $"{ValueText.Volts(Least)} to {ValueText.Volts(Most)}",
        _ when Least <= 0 => $"up to {ValueText.Ohms(Most)}",
        _ => $"{ValueText.Ohms(Least)} to {ValueText.Ohms(Most)}",
    };
}
