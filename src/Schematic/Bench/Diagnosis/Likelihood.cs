using Schematic.Bench.Readings;

namespace Schematic.Bench.Diagnosis;

/// <summary>How well a noted reading agrees with an expected one: the logarithm of a likelihood, zero at best.</summary>
internal static class Likelihood
{
    /// <summary>A reading that cannot be is one in some eight thousand: a slip of the pen or of a lead (judgement).</summary>
    public const double Impossible = -9;

    /// <summary>Below this a reading speaks against an explanation.</summary>
    public const double Against = -4.5;

    /// <summary>What a reading at one of its limits has: two widths from the middle.</summary>
    private const double AtLimit = -2;

    /// <summary>Ohms that old contacts and a last digit add or take.</summary>
    private const double SlackOhms = 0.5;

    public static double Of(NotedValue noted, Reading expected, Meter meter, double extraOhms = 0)
    {
        if (noted.Kind == ReadingKind.Open) return OfOpen(expected, meter);
        if (expected.Kind == ReadingKind.Open) return noted.Kind == ReadingKind.Ohms && noted.Number > Reading.SurelyClosedOhms ? -2 : Impossible;
        if (noted.Kind != expected.Kind) return Impossible;
        if (noted.Kind == ReadingKind.Volts) return OfVolts(noted, expected);
        var lead = (meter.IsZeroed ? 0 : meter.LeadOhms) + extraOhms;
        if (noted.IsBeep) return OfBeep(expected, meter);
        if (expected.Lowest is not { } low) return OfOhms(noted.Number, expected, lead);
        return Math.Max(Impossible, OfOhms(noted.Number, expected, lead) + OfOhms(noted.Lowest ?? noted.Number, expected with { Value = low.Value, Least = low.Least, Most = low.Most }, lead));
    }

    private static double OfOpen(Reading expected, Meter meter) => expected.Kind switch
    {
        ReadingKind.Open => 0,
        ReadingKind.Ohms when expected.Most > meter.RangeOhms / 2 => -1,
        _ => Impossible,
    };

    private static double OfBeep(Reading expected, Meter meter) =>
        expected.Value <= meter.BeepOhms ? 0 : expected.Least <= meter.BeepOhms ? -1 : Impossible;

    private static double OfOhms(double noted, Reading expected, double lead)
    {
        var middle = Math.Log(expected.Value + lead + SlackOhms);
        var width = Math.Log((expected.Most + lead + SlackOhms) / (expected.Least + lead + SlackOhms)) / 4;
        var away = (Math.Log(noted + SlackOhms) - middle) / Math.Max(0.03, width);
        // A wiper may stand anywhere on its track: what lies between the limits never speaks against.
        var isWithin = noted >= expected.Least + lead - SlackOhms && noted <= expected.Most + lead + SlackOhms;
        return Math.Max(isWithin ? AtLimit : Impossible, -away * away / 2);
    }

    private static double OfVolts(NotedValue noted, Reading expected)
    {
        if (noted.IsBeep) return expected.Least <= 0.03 ? 0 : Impossible;
        var away = (noted.Number - expected.Value) / Math.Max(0.03, (expected.Most - expected.Least) / 4);
        return Math.Max(Impossible, -away * away / 2);
    }
}
