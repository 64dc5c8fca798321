using Schematic.Model;

namespace Schematic.Reports;

/// <summary>What a list calls a part: the user's order text, or words made from the part's data.</summary>
public static class PartNames
{
    private static readonly Words FromData = new();

    /// <summary>The words for a part.</summary>
    public static string Of(Part part) => part.OrderText ?? part.Accept(FromData);

    /// <summary>The words for a cable.</summary>
    public static string Of(Cable cable) =>
        cable.OrderText ?? $"cable, {cable.Cores.Length} {(cable.Cores.Length == 1 ? "core" : "cores")}{(cable.HasScreen ? ", screened" : "")}";

    /// <summary>A form of contact in words.</summary>
    public static string FormWord(ContactForm form) => form switch
    {
        ContactForm.Make => "make",
        ContactForm.Break => "break",
        ContactForm.Changeover => "changeover",
        _ => "rotary",
    };

    private static string GenderWord(Gender gender) => gender switch
    {
        Gender.Pins => "pins",
        Gender.Sockets => "sockets",
        _ => "contacts",
    };

    private static string? TerminationWord(Termination termination) =>
        termination == Termination.Unstated ? null : termination.ToString().ToLowerInvariant();

    private static string KindWord(SwitchKind kind) => kind switch
    {
        SwitchKind.Reed => "reed contact",
        SwitchKind.Micro => "microswitch",
        SwitchKind.Coded => "coded switch",
        _ => "switch",
    };

    private static string? Size(Connector c) => c.ContactSize is { } size ? $"size {size}" : null;

    private static string Forms(Relay relay) => string.Join(
        ", ", relay.Poles.GroupBy(p => (p.Form, p.IsDelayed, p.Pole.MakesBeforeBreak))
            .Select(g => $"{g.Count()} {(g.Key.IsDelayed ? "delayed " : "")}{FormWord(g.Key.Form)}{(g.Key.MakesBeforeBreak ? " make-before-break" : "")}"));

    private static string? Rating(ContactRating? rating) => rating is null ? null
        : rating.Volts is { } volts ? $"{ValueText.Volts(volts)} {ValueText.Amps(rating.Amps)}" : ValueText.Amps(rating.Amps);

    private static string SupplyText(Supply s) => s.IsAdjustable
        ? $"supply {ValueText.Number(s.MinVolts)}..{ValueText.Volts(s.MaxVolts)}"
        : $"supply {ValueText.Volts(s.Volts)}{(s.IsAlternating ? " AC" : "")}";

    private static string Volts(double? volts) => ValueText.Volts(volts);

    private static string Amps(double? amps) => ValueText.Amps(amps);

    private static string Rating(double? volts, double? amps, double? ohms, Reckoned reckoned) => ValueText.Rating(
        volts is { } v ? ValueText.Volts(v) : null, amps is { } a ? ValueText.Amps(a) : null, ohms is { } o ? ValueText.Ohms(o) : null, reckoned);

    private static string Marked(string figure, Reckoned reckoned, Reckoned one) => reckoned.HasFlag(one) ? ValueText.ReckonedMark + figure : figure;

    private static string Joined(params IEnumerable<string?> parts) => string.Join(", ", parts.Where(p => !string.IsNullOrEmpty(p)));

    private sealed class Words : IPartVisitor<string>
    {
        public string Visit(Connector connector) => Joined(
            $"connector, {connector.Terminals.Length} {GenderWord(connector.Gender)}", $"{connector.Insert.Family}", Size(connector),
            TerminationWord(connector.Termination));

        public string Visit(Switch pole) => Joined(
            $"{KindWord(pole.Kind)}, {(pole.Kind == SwitchKind.Coded ? $"{pole.Pole.Throws.Length} outputs" : FormWord(pole.Form))}", pole.Pole.MakesBeforeBreak ? "make-before-break" : null, Rating(pole.Rating));

        public string Visit(Relay relay) => Joined($"{(relay.HasDelay ? "time-delay relay" : "relay")} {CoilVolts(relay.Coil)}", relay.DelayText, Forms(relay), Rating(relay.Rating));

        public string Visit(Solenoid solenoid) => $"solenoid {Rating(solenoid.Coil.RatedVolts, solenoid.Coil.RatedAmps, solenoid.Coil.Ohms, solenoid.Coil.Reckoned)}";

        public string Visit(Lamp lamp) => Joined(
            lamp.ColdOhms is { } cold ? $"lamp {Volts(lamp.RatedVolts)}, {ValueText.Ohms(cold)} cold" : $"lamp {Rating(lamp.RatedVolts, lamp.RatedAmps, null, lamp.Reckoned)}",
            lamp.Colour?.ToString());

        private static string CoilVolts(CoilData coil) =>
            coil.RatedVolts is { } volts ? Marked(ValueText.Volts(volts), coil.Reckoned, Reckoned.Volts)
            : $"? V {(coil.StatedAmps is { } amps ? ValueText.Amps(amps) : ValueText.Ohms(coil.Ohms))}";

        public string Visit(Led led) => Joined($"LED {Volts(led.ForwardVolts)} {Amps(led.RatedAmps)}", led.Colour?.ToString());

        public string Visit(Diode diode) => Joined(
            "diode", diode.MaxAmps is { } amps ? ValueText.Amps(amps) : null, diode.ReverseVolts is { } volts ? ValueText.Volts(volts) : null);

        public string Visit(Resistor resistor) =>
            Joined($"resistor {ValueText.Ohms(resistor.Ohms)}", resistor.RatedWatts is { } watts ? ValueText.Watts(watts) : null);

        public string Visit(RangedResistor resistor) => Joined(
            resistor.Kind == RangedResistorKind.Rheostat ? $"rheostat {ValueText.Ohms(resistor.WholeOhms)}"
                : resistor.Thermistor is { } thermistor ? $"thermistor {ValueText.Ohms(thermistor.OhmsAt25)} at 25 °C, B {ValueText.Number(thermistor.BetaKelvin)} K"
                : resistor.IsNotMeasured ? $"{RangedResistorWords.Of(resistor.Kind)} {ValueText.Ohms(resistor.WholeOhms)}"
                : $"{RangedResistorWords.Of(resistor.Kind)} {ValueText.Ohms(resistor.Least.Ohms)} to {ValueText.Ohms(resistor.Most.Ohms)}",
            resistor.RatedWatts is { } watts ? ValueText.Watts(watts) : null);

        public string Visit(Potentiometer track) =>
            Joined($"potentiometer {ValueText.Ohms(track.Ohms)}", track.RatedWatts is { } watts ? ValueText.Watts(watts) : null);

        public string Visit(BridgeRectifier rectifier) => Joined(
            "bridge rectifier", rectifier.MaxAmps is { } amps ? ValueText.Amps(amps) : null, rectifier.ReverseVolts is { } volts ? ValueText.Volts(volts) : null);

        public string Visit(Transformer transformer) => Joined(
            $"transformer {ValueText.Volts(transformer.PrimaryVolts)} to {ValueText.Volts(transformer.SecondaryVolts)}",
            transformer.VoltAmps is { } power ? $"{ValueText.Number(power)} VA" : null);

        public string Visit(TransistorOutput transistor) => Joined("transistor", Limits(transistor));

        public string Visit(Optocoupler coupler) => Joined($"optocoupler {Amps(coupler.RatedAmps)}", Limits(coupler));

        private static string? Limits(ISemiconductorOutput output) => Joined(
            output.MaxVolts is { } volts ? ValueText.Volts(volts) : null, output.MaxAmps is { } amps ? ValueText.Amps(amps) : null);

        public string Visit(Consumer consumer) =>
            $"{consumer.Kind.ToString().ToLowerInvariant()} {Rating(consumer.RatedVolts, consumer.RatedAmps, consumer.Ohms, consumer.Reckoned)}";

        public string Visit(Capacitor capacitor) => Joined(
            $"capacitor {(capacitor.Farads is { } farads ? ValueText.Farads(farads) : "? F")}", capacitor.MaxVolts is { } volts ? ValueText.Volts(volts) : null,
            capacitor.IsPolarised ? "polarised" : null);

        public string Visit(Suppressor suppressor) => $"varistor or suppressor {ValueText.Volts(suppressor.StandsVolts)}";

        public string Visit(Device device) => device.Form == DeviceForm.Synchro
            ? Joined("synchro" + (device.RatedVolts is { } volts ? $" {ValueText.Volts(volts)}" : ""), $"{device.Terminals.Length} terminals")
            : $"device, {device.Terminals.Length} terminals";

        public string Visit(Fuse fuse) => $"fuse {ValueText.Amps(fuse.RatedAmps)}{(fuse.IsSlow ? ", slow" : "")}";

        public string Visit(Breaker breaker) => $"circuit breaker {ValueText.Amps(breaker.RatedAmps)}";

        public string Visit(Supply supply) =>
            Joined(SupplyText(supply), supply.LimitAmps is { } amps ? ValueText.Amps(amps) : null);

        public string Visit(Board board) => $"input board, {board.Inputs.Length} inputs";

        public string Visit(TerminalStrip strip) => $"terminal strip, {strip.Terminals.Length} terminals";

        public string Visit(FarEnd end) => "far end not traced";

        public string Visit(Keypad keypad) =>
            Joined($"keypad, {keypad.Keys.Length} keys in {keypad.Rows.Length} rows and {keypad.Columns.Length} columns", Rating(keypad.Rating));

        public string Visit(Splice splice) => "splice";
    }
}
