using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>Builds devices: lamps, coils, protectors, supplies and the rest, one method for each kind.</summary>
internal sealed class DeviceBinder(NameTable names, NameRanges ranges, BindingReporter report, TerminalBinder terminals, ConditionBinder conditions)
{
    /// <summary>Builds the part that a statement declares.</summary>
    public void Bind(Scope scope, PartSyntax syntax, PartList parts)
    {
        var device = new DeviceStatement(scope, syntax, ranges, report);
        var part = Make(device);
        part = device.Reader.WithPurchase(part with { Description = syntax.Description?.Text ?? "" });
        var declared = names.Own(scope, syntax.Designator.Text, syntax.Designator.Span);
        if (declared is not null)
        {
            declared.IsIncomplete |= syntax.HasErrors && part is (Board or TerminalStrip or Relay);
            declared.Set(part);
            parts.Add(part);
            if (part is Device general) parts.CompleteLater(general, p => GeneralBinder.WithContacts(device, p, conditions));
            if (part is Keypad keypad)
            {
                foreach (var (key, hand) in keypad.Keys.Zip(keypad.Hands))
                    if (names.Find(scope, key.ActuatorOn(syntax.Designator.Text)) is { Kind: DeclaredKind.Actuator } known) known.Actuator = hand;
            }
        }

        parts.AttachLater(() => Attach(device, part, declared is null ? new PartList() : parts));
    }

    private static Part Make(DeviceStatement device) => device.Syntax.Keyword.Text switch
    {
        "lamp" => MakeLamp(device),
        "led" => MakeLed(device),
        "solenoid" => new Solenoid(device.Name, CoilBinder.Make(device), device.Span),
        "relay" => RelayBinder.Make(device),
        "resistor" => ResistorBinder.Make(device),
        "rectifier" => SemiconductorBinder.MakeRectifier(device),
        "transistor" => SemiconductorBinder.MakeTransistor(device),
        "optocoupler" => SemiconductorBinder.MakeOptocoupler(device),
        "transformer" => TransformerBinder.Make(device),
        "thermistor" => SensorBinder.MakeThermistor(device),
        "photoresistor" => SensorBinder.MakePhotoresistor(device),
        "rheostat" => ResistorBinder.MakeRheostat(device),
        "potentiometer" => ResistorBinder.MakePotentiometer(device),
        "diode" => MakeDiode(device),
        "motor" => ConsumerBinder.Make(device, ConsumerKind.Motor),
        "bell" => ConsumerBinder.Make(device, ConsumerKind.Bell),
        "buzzer" => ConsumerBinder.Make(device, ConsumerKind.Buzzer),
        "heater" => ConsumerBinder.Make(device, ConsumerKind.Heater),
        "meter" => ConsumerBinder.Make(device, ConsumerKind.Meter),
        "capacitor" => MakeCapacitor(device),
        "suppressor" => new Suppressor(
            device.Name, DeviceStatement.Stated(device.Ratings("a voltage", Dimension.Voltage), Dimension.Voltage), device.Span),
        "device" => GeneralBinder.Make(device),
        "synchro" => GeneralBinder.Synchro(device),
        "fuse" => new Fuse(device.Name, Amps(device), device.Span) { IsSlow = device.Reader.Has("slow") },
        "breaker" => new Breaker(device.Name, Amps(device), device.Span),
        "supply" => SupplyBinder.Make(device),
        "board" => BoardBinder.Make(device),
        "terminals" => StripBinder.Make(device),
        KeypadBinder.Keyword => KeypadBinder.Make(device),
        "splice" => DeviceStatement.WithTerminals(new Splice(device.Name, device.Span), "1"),
        _ => throw new ArgumentOutOfRangeException(nameof(device), device.Syntax.Keyword.Text, "a device that the grammar has and no binder makes"),
    };

    private static Lamp MakeLamp(DeviceStatement device)
    {
        var ratings = device.Ratings(
            "a voltage, a current, a power or a resistance", Dimension.Voltage, Dimension.Current, Dimension.Power, Dimension.Resistance);
        // The cold resistance is no third of volts and amperes: a filament that is lit has about ten times as much.
        var figures = RatedFigures.Of(ratings.Where(r => r.Key != Dimension.Resistance).ToDictionary());
        var cold = DeviceStatement.Stated(ratings, Dimension.Resistance);
        if (cold is not null && figures is { Volts: not null, Amps: not null })
        {
            device.Report.Contradiction(
                device.Scope.At(ratings[Dimension.Resistance].Span), "The resistance of a lamp is given beside its whole rating.",
                "Give volts and amperes, or the cold resistance where one of them is not known.", device.Span);
        }

        return new Lamp(device.Name, figures.Volts, figures.Amps, device.Span)
        {
            ColdOhms = cold, Reckoned = figures.Reckoned, Colour = device.Reader.Colour()?.Main,
        };
    }

    private static Led MakeLed(DeviceStatement device)
    {
        var ratings = device.Ratings("a voltage or a current", Dimension.Voltage, Dimension.Current);
        return new Led(
            device.Name, DeviceStatement.Stated(ratings, Dimension.Voltage), DeviceStatement.Stated(ratings, Dimension.Current), device.Span)
        {
            Colour = device.Reader.Colour()?.Main,
        };
    }

    private static Diode MakeDiode(DeviceStatement device)
    {
        var ratings = device.Ratings("a current or a voltage", Dimension.Current, Dimension.Voltage);
        var diode = new Diode(device.Name, device.Span)
        {
            MaxAmps = ratings.GetValueOrDefault(Dimension.Current)?.Value,
            ReverseVolts = ratings.GetValueOrDefault(Dimension.Voltage)?.Value,
        };
        if (device.Reader.Quantity("drop", Dimension.Voltage, "a voltage") is { } drop) diode = diode with { ForwardVolts = drop, IsDropStated = true };
        return diode;
    }

    private static Capacitor MakeCapacitor(DeviceStatement device)
    {
        var ratings = device.Ratings("a capacitance or a voltage", Dimension.Capacitance, Dimension.Voltage);
        return new Capacitor(device.Name, DeviceStatement.Stated(ratings, Dimension.Capacitance), device.Span)
        {
            MaxVolts = ratings.GetValueOrDefault(Dimension.Voltage)?.Value,
            IsPolarised = device.Reader.Has("polarised"),
        };
    }

    private static double? Amps(DeviceStatement device) =>
        DeviceStatement.Stated(device.Ratings("a current", Dimension.Current), Dimension.Current);

    private void Attach(DeviceStatement device, Part part, PartList parts)
    {
        if (part is Relay relay)
        {
            if (device.Syntax.Run.IsAlone || device.Syntax.Block.All(c => c.Values.Length == 0))
            {
                AttachRelay(device, relay, parts);
                return;
            }

            report.CountMismatch(
                device.Span, "The contacts of several relays cannot be given in one statement.",
                "Write a statement for each relay, or leave the contacts out and name them in nets and wires: K1:13.");
            return;
        }

        if (part is Keypad keypad)
        {
            KeypadBinder.Attach(device, keypad, terminals, parts);
            return;
        }

        if (part is Splice)
        {
            AttachSplice(device, part, parts);
            return;
        }

        if (part is Device { Form: DeviceForm.Box })
        {
            var contacts = device.Syntax.Block.Where(c => c.Keyword == "contacts").SelectMany(c => c.All<ContactSyntax>()).ToList();
            if (contacts.Count > 0) AttachInOrder(device.Scope, contacts, part, [.. part.Terminals.Select(t => t.Name)], parts);
            return;
        }

        if (!part.IsSymbol && (part is not Supply || SupplyBinder.OwnEnds(device) is not null)) return;
        if (!device.Syntax.Run.IsAlone)
        {
            AttachRow(device, part, parts);
            return;
        }

        var items = device.Syntax.Block.SelectMany(c => c.All<ContactSyntax>()).ToList();
        if (items.Count > 0) AttachInOrder(device.Scope, items, part, [.. part.Terminals.Select(t => t.Name)], parts);
    }

    /// <summary>
    /// Of a run of devices each line of the block belongs to a terminal, and gives one contact for each device, or one for all:
    /// <c>lamp DS1..DS4 28 V 40 mA { J1:1..4 ; J1:9 }</c>.
    /// </summary>
    private void AttachRow(DeviceStatement device, Part part, PartList parts)
    {
        var rows = device.Syntax.Block.Where(c => c.Values.Length > 0).ToList();
        if (rows.Count == 0) return;
        if (rows.Count != part.Terminals.Length)
        {
            report.CountMismatch(
                device.Scope.At(rows[0].Span), $"{rows.Count} {(rows.Count == 1 ? "line is" : "lines are")} given for {part.Terminals.Length} terminals.",
                $"Give a line for each of {string.Join(", ", part.Terminals.Select(t => t.Name))}, with one contact for each device or one for all.");
            return;
        }

        for (var i = 0; i < rows.Count; i++)
        {
            var contact = terminals.Of(device.Scope, [.. rows[i].All<ContactSyntax>()], device.Syntax.Run, mayBeUnknown: true);
            parts.Attach(part.At(part.Terminals[i].Name), [contact], 0);
        }
    }

    private void AttachRelay(DeviceStatement device, Relay relay, PartList parts)
    {
        var set = 0;
        foreach (var clause in device.Syntax.Block)
        {
            if (clause.Keyword == PartGrammar.RelayBridges) continue;
            ImmutableArray<string> own = [Relay.CoilEnds.From, Relay.CoilEnds.To];
            if (clause.Keyword != "coil")
            {
                if (set >= relay.Poles.Length) return;
                var pole = relay.Poles[set++].Pole;
                own = [pole.Common, .. pole.Throws.Select(t => t.Terminal)];
            }

            if (clause.Values.Length > 0) AttachInOrder(device.Scope, clause.All<ContactSyntax>(), relay, own, parts);
        }
    }

    /// <summary>A splice inside a unit joins all the contacts of its block.</summary>
    private void AttachSplice(DeviceStatement device, Part part, PartList parts)
    {
        var items = device.Syntax.Block.SelectMany(c => c.All<ContactSyntax>()).ToList();
        if (items.Count == 0) return;
        var contacts = terminals.Bind(device.Scope, items).Items;
        for (var i = 0; i < contacts.Count; i++) parts.Attach(part.At(part.Terminals[0].Name), contacts, i);
    }

    private void AttachInOrder(
        Scope scope, IEnumerable<ContactSyntax> items, Part part, ImmutableArray<string> own, PartList parts)
    {
        var (contacts, hasBrokenRange) = terminals.BindJoints(scope, items, own.Length);
        if (contacts.Count != own.Length && !hasBrokenRange)
        {
            report.CountMismatch(
                contacts[0].Span,
                $"{contacts.Count} {(contacts.Count == 1 ? "contact is" : "contacts are")} given for {own.Length} terminals.",
                $"Give one contact for each of {string.Join(", ", own)}, in this order.");
        }

        for (var i = 0; i < own.Length; i++) parts.Attach(part.At(own[i]), contacts, i);
    }
}
