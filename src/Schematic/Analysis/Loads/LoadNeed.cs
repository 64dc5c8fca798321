using Schematic.Analysis.Circuits;
using Schematic.Analysis.Quantities;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>The voltages that a load works between.</summary>
/// <param name="RatedVolts">Its rated voltage; null for resistors.</param>
/// <param name="ColdVolts">The lowest voltage at which it surely does its work, cold; null where it has none.</param>
/// <param name="HotVolts">The same when a coil is warm; else as cold.</param>
/// <param name="MostVolts">The highest voltage it stands; null when unknown.</param>
/// <param name="MostIsStated">Whether the file states the highest voltage; else it is a habit of the trade.</param>
public sealed record LoadNeed(double? RatedVolts, double? ColdVolts, double? HotVolts, double? MostVolts, bool MostIsStated)
{
    /// <summary>A coil may get 110 percent of its rated voltage where nothing is stated (one relay series, read).</summary>
    public const double CoilMost = 1.1;

    /// <summary>The mains may lie a tenth below its nominal voltage (EN 50160, from memory).</summary>
    public const double TransformerLeast = 0.9;

    /// <summary>The span in which the re-rating of lamps holds: 0.8 to 1.1 of the rated voltage (common practice, no source).</summary>
    public const double LampLeast = 0.8;

    /// <summary>See <see cref="LampLeast"/>.</summary>
    public const double LampMost = 1.1;

    private static readonly LoadNeed None = new(null, null, null, null, false);

    /// <summary>What an element needs, its surroundings having <paramref name="ambientCelsius"/>.</summary>
    public static LoadNeed Of(Element load, double ambientCelsius) => load.Part.Accept(new Reader(load, ambientCelsius));

    private sealed class Reader(Element load, double ambientCelsius) : IPartVisitor<LoadNeed>
    {
        public LoadNeed Visit(Lamp lamp) => new(
            lamp.RatedVolts, LampLeast * lamp.RatedVolts, LampLeast * lamp.RatedVolts, LampMost * lamp.RatedVolts, false);

        /// <summary>On its straight line an LED carries its rated current at its rated voltage (see the circuit's elements).</summary>
        public LoadNeed Visit(Led led) => led.ForwardVolts is null || led.RatedAmps is null ? None : new(led.ForwardVolts, load.Volts, load.Volts, led.ForwardVolts, true);

        public LoadNeed Visit(Relay relay) => OfCoil(relay.Coil);

        public LoadNeed Visit(Solenoid solenoid) => OfCoil(solenoid.Coil);

        public LoadNeed Visit(Resistor resistor) => resistor is { RatedWatts: { } watts, Ohms: { } ohms }
            ? new(null, null, null, Math.Sqrt(watts * ohms), true)
            : None;

        /// <summary>What a whole track stands as heat, a piece of it stands as current.</summary>
        public LoadNeed Visit(RangedResistor resistor) => resistor.RatedWatts is { } watts && load.Ohms is { } ohms
            ? new(null, null, null, resistor.MostWiperAmps is { } amps ? amps * ohms : Math.Sqrt(watts * ohms), true)
            : None;

        public LoadNeed Visit(Potentiometer track) => track.MostWiperAmps is { } amps && load.Ohms is { } ohms
            ? new(null, null, null, amps * ohms, true)
            : None;

        public LoadNeed Visit(BridgeRectifier rectifier) => None;

        public LoadNeed Visit(Transformer transformer) => load.Kind == ElementKind.Supply ? None : new(
            transformer.PrimaryVolts, TransformerLeast * transformer.PrimaryVolts, TransformerLeast * transformer.PrimaryVolts,
            CoilMost * transformer.PrimaryVolts, false);

        public LoadNeed Visit(TransistorOutput transistor) => None;

        /// <summary>As an LED: on its straight line it carries its rated current at its rated voltage.</summary>
        public LoadNeed Visit(Optocoupler coupler) => load.Kind == ElementKind.Led
            ? new(LoadLimits.ForwardVolts(coupler), load.Volts, load.Volts, coupler.RatedAmps is null ? null : LoadLimits.ForwardVolts(coupler), coupler.RatedAmps is not null)
            : None;

        public LoadNeed Visit(Consumer consumer)
        {
            var least = LoadLimits.OperateVolts(consumer);
            return new(consumer.RatedVolts, least, least, consumer.MaxVolts ?? CoilMost * consumer.RatedVolts, consumer.MaxVolts is not null);
        }

        public LoadNeed Visit(Capacitor capacitor) => None;

        public LoadNeed Visit(Suppressor suppressor) => None;

        public LoadNeed Visit(Device device) => load.Kind == ElementKind.Coil && device.Coil is { } coil ? OfCoil(coil) : None;

        public LoadNeed Visit(Diode diode) => None;

        public LoadNeed Visit(Connector connector) => None;

        public LoadNeed Visit(Switch pole) => None;

        public LoadNeed Visit(Fuse fuse) => None;

        public LoadNeed Visit(Breaker breaker) => None;

        public LoadNeed Visit(Supply supply) => None;

        public LoadNeed Visit(Board board) => None;

        public LoadNeed Visit(TerminalStrip strip) => None;

        public LoadNeed Visit(FarEnd end) => None;

        public LoadNeed Visit(Keypad keypad) => None;

        public LoadNeed Visit(Splice splice) => None;

        private LoadNeed OfCoil(CoilData coil)
        {
            if (LoadLimits.OperateVolts(coil) is not { } cold) return None;
            var hot = new CoilMargin(0, cold, ambientCelsius + CoilMargin.UsualRise).HotOperateVolts;
            return new(coil.RatedVolts, cold, hot, coil.MaxVolts ?? CoilMost * coil.RatedVolts, coil.MaxVolts is not null);
        }
    }
}
