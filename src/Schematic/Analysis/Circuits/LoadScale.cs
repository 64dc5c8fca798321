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
        public LoadScale? Visit(Lamp lamp) => lamp.RatedVolts is { } rated ? Volts(rated, LoadLimits.LampFraction * rated) : Unknown;

        public LoadScale? Visit(Led led) => led.RatedAmps is not { } rated ? Unknown with { IsCurrent = true }
            : new(rated, LoadLimits.LedFraction * rated, LoadLimits.LedFraction * rated, true);

        public LoadScale? Visit(Relay relay) => OfCoil(relay.Coil) is { } scale && LoadLimits.ReleaseVolts(relay.Coil) is { } releases
            ? scale with { Holds = releases } : Unknown;

        public LoadScale? Visit(Solenoid solenoid) => OfCoil(solenoid.Coil) ?? Unknown;

        public LoadScale? Visit(Consumer consumer) =>
            LoadLimits.OperateVolts(consumer) is { } operates ? Volts(consumer.RatedVolts ?? operates, operates) : Unknown;

        public LoadScale? Visit(Capacitor capacitor) => null;

        public LoadScale? Visit(Suppressor suppressor) => null;

        public LoadScale? Visit(Device device) => device.Coil is not { } coil ? null
            : OfCoil(coil) is { } scale && LoadLimits.ReleaseVolts(coil) is { } releases ? scale with { Holds = releases } : Unknown;

        public LoadScale? Visit(Connector connector) => null;

        public LoadScale? Visit(Switch pole) => null;

        public LoadScale? Visit(Diode diode) => null;

        public LoadScale? Visit(Resistor resistor) => null;

        public LoadScale? Visit(RangedResistor resistor) => null;

        public LoadScale? Visit(Potentiometer track) => null;

        public LoadScale? Visit(BridgeRectifier rectifier) => null;

        public LoadScale? Visit(Transformer transformer) => Volts(transformer.PrimaryVolts, Transformer.FedFraction * transformer.PrimaryVolts);

        public LoadScale? Visit(TransistorOutput transistor) => null;

        public LoadScale? Visit(Optocoupler coupler) =>
            new(LoadLimits.RatedAmps(coupler), LoadLimits.CouplerFraction * LoadLimits.RatedAmps(coupler), LoadLimits.CouplerFraction * LoadLimits.RatedAmps(coupler), true);

        public LoadScale? Visit(Fuse fuse) => null;

        public LoadScale? Visit(Breaker breaker) => null;

        public LoadScale? Visit(Supply supply) => null;

        public LoadScale? Visit(Board board) => null;

        public LoadScale? Visit(TerminalStrip strip) => null;

        public LoadScale? Visit(FarEnd end) => null;

        public LoadScale? Visit(Keypad keypad) => null;

        public LoadScale? Visit(Splice splice) => null;

        /// <summary>Values that nothing reaches.</summary>
        private static LoadScale Unknown { get; } = new(double.MaxValue, double.MaxValue, double.MaxValue, false);

        /// <summary>Without a rating, the voltage at which it surely operates stands for it.</summary>
        private static LoadScale? OfCoil(CoilData coil) =>
            LoadLimits.OperateVolts(coil) is { } operates ? Volts(coil.RatedVolts ?? operates, operates) : null;

        private static LoadScale Volts(double rated, double operates) => new(rated, operates, operates, false);
    }
}
