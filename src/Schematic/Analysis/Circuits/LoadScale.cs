using Schematic.Model;

namespace Schematic.Analysis.Circuits;

/// <summary>From where on a load does what it is there for: volts, or amperes for an LED.</summary>
/// <param name="Rated">The rated value.</param>
/// <param name="Operates">From here on it works.</param>
/// <param name="Holds">Down to here it stays at work, once it was.</param>
/// <param name="IsCurrent">Whether the three are amperes; else volts.</param>
public sealed record LoadScale(double Rated, double Operates, double Holds, bool IsCurrent)
{
    private static readonly Reader Scales = new();

    /// <summary>The scale of a part; null for those of which nobody asks whether they are energised.</summary>
    public static LoadScale? Of(Part part) => part.Accept(Scales);

    /// <summary>What counts of the voltage across it and the current through it: an LED takes current one way only.</summary>
    public double Measure(double volts, double amps) => IsCurrent ? Math.Max(0, amps) : Math.Abs(volts);

    private sealed class Reader : IPartVisitor<LoadScale?>
    {
        public LoadScale? Visit(Lamp lamp) => !lamp.IsRatingKnown ? Unknown : Volts(lamp.RatedVolts, LoadLimits.LampFraction * lamp.RatedVolts);

        public LoadScale? Visit(Led led) =>
            new(led.RatedAmps, LoadLimits.LedFraction * led.RatedAmps, LoadLimits.LedFraction * led.RatedAmps, true);

        public LoadScale? Visit(Relay relay) => IsUnknown(relay.Coil) ? Unknown : new(
            RatedOf(relay.Coil), LoadLimits.OperateVolts(relay.Coil), LoadLimits.ReleaseVolts(relay.Coil), false);

        public LoadScale? Visit(Solenoid solenoid) => IsUnknown(solenoid.Coil) ? Unknown : Volts(RatedOf(solenoid.Coil), LoadLimits.OperateVolts(solenoid.Coil));

        public LoadScale? Visit(Consumer consumer) => Volts(consumer.RatedVolts, LoadLimits.OperateVolts(consumer));

        public LoadScale? Visit(Capacitor capacitor) => null;

        public LoadScale? Visit(Suppressor suppressor) => null;

        public LoadScale? Visit(Connector connector) => null;

        public LoadScale? Visit(Switch pole) => null;

        public LoadScale? Visit(Diode diode) => null;

        public LoadScale? Visit(Resistor resistor) => null;

        public LoadScale? Visit(Fuse fuse) => null;

        public LoadScale? Visit(Breaker breaker) => null;

        public LoadScale? Visit(Supply supply) => null;

        public LoadScale? Visit(Board board) => null;

        public LoadScale? Visit(TerminalStrip strip) => null;

        public LoadScale? Visit(Splice splice) => null;

        /// <summary>Values that nothing reaches.</summary>
        private static LoadScale Unknown { get; } = new(double.MaxValue, double.MaxValue, double.MaxValue, false);

        private static bool IsUnknown(CoilData coil) => !coil.IsRatingKnown && coil.OperatesVolts is null;

        /// <summary>Without a rating, the voltage at which it surely operates stands for it.</summary>
        private static double RatedOf(CoilData coil) => coil.IsRatingKnown ? coil.RatedVolts : coil.OperatesVolts ?? 0;

        private static LoadScale Volts(double rated, double operates) => new(rated, operates, operates, false);
    }
}
