using Schematic.Model;

namespace Schematic.Analysis.Circuits;

/// <summary>
/// When a load counts as energised and when an input reads low or high. What the user states always wins; the rest are
/// the habits of the trade.
/// </summary>
public static class LoadLimits
{
    /// <summary>
    /// A coil whose operate voltage is not stated surely operates at three quarters of its rated voltage: relays of general
    /// use are sold with 70 to 80 % (from memory).
    /// </summary>
    public const double OperateFraction = 0.75;

    /// <summary>
    /// A coil whose release voltage is not stated surely releases below a tenth of its rated voltage (from memory).
    /// </summary>
    public const double ReleaseFraction = 0.10;

    /// <summary>
    /// A lamp counts as lit from half its rated voltage: by the usual law (flux as the power 3.4 of voltage) that is a tenth
    /// of its light.
    /// </summary>
    public const double LampFraction = 0.5;

    /// <summary>An LED counts as lit from a fifth of its rated current (own choice).</summary>
    public const double LedFraction = 0.2;

    /// <summary>An optocoupler switches from half its diode's rated current (own choice: below, its output need not saturate).</summary>
    public const double CouplerFraction = 0.5;

    /// <summary>Below a tenth of the rated voltage, or of an LED's rated current, a load counts as not fed (own choice).</summary>
    public const double PartFraction = 0.1;

    /// <summary>
    /// A motor, a bell, a buzzer or a heater counts as working from three quarters of its rated voltage where nothing is stated
    /// (own choice, as for coils); the needle of a meter from a tenth of its scale.
    /// </summary>
    public const double ConsumerFraction = 0.75;

    /// <summary>The forward drop of a diode of which none is stated: silicon.</summary>
    public const double DiodeVolts = 0.7;

    /// <summary>The current of an indicator LED whose data are not known: 20 mA (common practice, no source).</summary>
    public const double UsualLedAmps = 0.02;

    /// <summary>The voltage of an LED at its current: as stated, or 2 V, which red, yellow and orange ones have about (second-hand).</summary>
    public static double ForwardVolts(Led led) => led.ForwardVolts ?? 2;

    /// <summary>What the diode of an optocoupler drops: 1.2 V where nothing is stated (an infrared diode, from memory).</summary>
    public static double ForwardVolts(Optocoupler coupler) => coupler.ForwardVolts ?? 1.2;

    /// <summary>The current at which the diode of an optocoupler is meant to work: 10 mA where nothing is stated (from memory).</summary>
    public static double RatedAmps(Optocoupler coupler) => coupler.RatedAmps ?? 0.01;

    /// <summary>The lowest voltage at which a load counts as working; null when nobody can tell.</summary>
    public static double? OperateVolts(Consumer consumer) => consumer.OperatesVolts
        ?? (consumer.Kind == ConsumerKind.Meter ? PartFraction : ConsumerFraction) * consumer.RatedVolts;

    /// <summary>The lowest voltage at which a coil surely operates; null when nobody can tell.</summary>
    public static double? OperateVolts(CoilData coil) => coil.OperatesVolts ?? OperateFraction * coil.RatedVolts;

    /// <summary>The voltage below which an operated coil surely releases; null when nobody can tell.</summary>
    public static double? ReleaseVolts(CoilData coil) => (coil.ReleasesVolts ?? ReleaseFraction * coil.RatedVolts, OperateVolts(coil)) switch
    {
        ({ } releases, { } operates) => Math.Min(releases, operates),
        ({ } releases, null) => releases,
        // What pulls in at a known voltage and is not rated lets go below a tenth of that at the least.
        (null, { } operates) => ReleaseFraction * operates,
        (null, null) => null,
    };

    /// <summary>
    /// At or below this voltage an input reads low: as stated, or a third of its pull-up voltage, or a third of its highest
    /// voltage, or 1.5 V.
    /// </summary>
    public static double LowVolts(BoardInput input) =>
        input.LowVolts ?? (input.PullUpVolts ?? input.MaxVolts) / 3 ?? 1.5;

    /// <summary>
    /// At or above this voltage an input reads high: as stated, or two thirds of its pull-up voltage, or of its highest
    /// voltage, or 3.5 V.
    /// </summary>
    public static double HighVolts(BoardInput input) =>
        input.HighVolts ?? (input.PullUpVolts ?? input.MaxVolts) * 2 / 3 ?? 3.5;

    /// <summary>How much of what it needs a load gets: volts over rated volts; of an LED amperes over rated amperes.</summary>
    public static double FedFraction(Element load, double volts, double amps) =>
        load.Scale is { } scale ? scale.Measure(volts, amps) / scale.Rated : 0;

    /// <summary>Whether a load does what it is there for, never having been energised before.</summary>
    public static bool IsEnergised(Element load, double volts, double amps) =>
        load.Scale is { } scale && scale.Measure(volts, amps) >= scale.Operates;

    /// <summary>Whether a load that is energised stays so: of a relay, down to its release voltage.</summary>
    public static bool StaysEnergised(Element load, double volts, double amps) =>
        load.Scale is { } scale && scale.Measure(volts, amps) >= scale.Holds;
}
