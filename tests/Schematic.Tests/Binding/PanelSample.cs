using System.Collections.Immutable;
using CsCheck;
using Schematic.Inserts;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Tests.Binding;

/// <summary>Random panels as models, built without the language, to be written out and read back.</summary>
internal static class PanelSample
{
    private static readonly SourceSpan At = SourceSpan.None;

    private static readonly Gen<string> Words = Gen.Char[" abcXYZ09.,;#{}\"\\äµ→:-+"].Array[0, 12].Select(c => new string(c));

    private static readonly Gen<double> Tenths = Gen.Int[1, 4000].Select(n => n / 10.0);

    private static readonly Gen<double> Milli = Gen.Int[1, 5000].Select(n => n / 1000.0);

    private static readonly Gen<ColourCode?> Light =
        Gen.OneOf(Gen.Const((ColourCode?)null), Gen.Enum<ColourCode>().Select(c => (ColourCode?)c));

    private static readonly Gen<Price?> Prices = Gen.OneOf(
        Gen.Const((Price?)null),
        Gen.Select(Gen.Int[0, 99999], OneOf("", "EUR", "GBP")).Select((cents, code) => (Price?)new Price(cents / 100m, code)));

    /// <summary>Panels with something of every kind.</summary>
    public static Gen<Panel> Panels { get; } =
        from connectors in Connectors.Array[1, 3]
        from actuators in Actuators.Array[1, 3]
        from devices in Devices.Array[0, 8]
        from switches in SwitchForms.Array[0, 4]
        from title in Gen.Select(Words, Words, Words)
        from settings in Gen.Select(Gen.Bool, Gen.Enum<SymbolStyle>(), Gen.Int[1, 9], Words.Array[0, 2])
        from limits in Limits
        from random in Gen.Int[0, 1_000_000]
        select Assemble(connectors, actuators, devices, switches, title, settings, limits, random);

    /// <summary>One of the values.</summary>
    public static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    private static Gen<Connector> Connectors =>
        from names in Gen.Int[1, 8].SelectMany(n => Gen.Char["ABCDEFGHJKLabcde12345"].HashSet[n]).Select(s => s.Select(c => c.ToString()).ToArray())
        from data in Gen.Select(Words, Gen.Enum<Gender>(), Gen.Enum<Termination>(), Gen.Int[0, 359], OneOf<string?>(null, "20", "16", "22D"), Gen.Bool)
        from spares in Gen.Bool.Array[8]
        from buying in Gen.Select(Prices, Gen.Int[0, 3], Words)
        select MakeConnector(names, data, spares, buying);

    private static Connector MakeConnector(
        string[] names, (string Description, Gender Gender, Termination Termination, int Key, string? Size, bool HasStrip) data,
        bool[] spares, (Price? Price, int Spares, string Order) buying)
    {
        var positions = names.Select((n, i) => new ContactPosition(n, (i % 3 * 5) - 5.5, i / 3 * -4.25));
        var builder = new PositionsInsert
        {
            Positions = [.. positions],
            DiameterMm = data.Size is null ? null : ContactSizes.PinDiameterMm(data.Size),
        };
        var insert = builder.Build().Arrangement!;
        return new Connector("", insert, At)
        {
            Description = data.Description,
            Gender = data.Gender,
            Termination = data.Termination,
            KeyDegrees = data.Key,
            ContactSize = data.Size,
            StripMm = data.HasStrip ? 5.5 : null,
            Spares = [.. names.Where((_, i) => spares[i % 8])],
            Terminals = [.. insert.Contacts.Select(c => new Terminal(c.Name, At))],
            UnitPrice = buying.Price,
            SparePieces = buying.Spares,
            OrderText = buying.Order.Length == 0 ? null : buying.Order,
        };
    }

    private static Gen<Actuator> Actuators =>
        from count in Gen.Int[2, 5]
        from rest in Gen.Int[0, count - 1]
        from springs in Gen.Int[-3, count - 1].Array[count]
        from data in Gen.Select(Words, Gen.Bool, Gen.Enum<OperatorKind>(), Gen.Bool)
        select new Actuator(
            "", [.. Enumerable.Range(0, count).Select(i => new ActuatorPosition(
                $"p-{i}", i == rest, i == rest || springs[i] < 0 || springs[i] >= i ? null : $"p-{springs[i]}", At))], At)
        {
            Description = data.Item1,
            IsEndless = data.Item2,
            Operator = data.Item3,
            IsPushToTurn = data.Item4,
        };

    private static Gen<(ContactForm Form, bool HasRating, bool MakesBeforeBreak, int Count, SwitchKind Kind)> SwitchForms =>
        Gen.Select(Gen.Enum<ContactForm>(), Gen.Bool, Gen.Bool, Gen.Int[1, 3], Gen.Enum<SwitchKind>());

    private static Gen<DesignLimits> Limits => Gen.Select(Gen.Int[0, 2], Tenths, Gen.Int[-20, 60], Gen.Int[60, 200], Gen.Int[0, 9])
        .Select((kind, drop, ambient, insulation, bundle) => new DesignLimits
        {
            DropVolts = kind == 1 ? drop : null,
            DropPercent = kind == 2 ? Math.Round(drop / 10, 2) + 0.1 : null,
            AmbientCelsius = ambient,
            InsulationCelsius = insulation,
            BundledWires = bundle == 0 ? null : bundle,
        });

    private static Gen<Part> Devices =>
        from kind in Gen.Int[0, 24]
        from volts in Tenths
        from amps in Milli
        from ohms in Tenths
        from light in Light
        from flags in Gen.Select(Gen.Bool, Gen.Bool, Gen.Bool)
        from description in Words
        from buying in Gen.Select(Prices, Gen.Int[0, 3], Words)
        from forms in Gen.Enum<ContactForm>().Array[0, 3]
        select MakeDevice(kind, volts, amps, ohms, light, flags, forms) with
        {
            Description = description,
            UnitPrice = buying.Item1,
            SparePieces = buying.Item2,
            OrderText = buying.Item3.Length == 0 ? null : buying.Item3,
            OnHand = flags.Item3,
        };

    private static Part MakeDevice(
        int kind, double volts, double amps, double ohms, ColourCode? light, (bool A, bool B, bool C) flags, ContactForm[] forms)
    {
        double? maybe = flags.A ? volts : null;
        var coil = new CoilData(volts, flags.B ? ohms : volts / amps)
        {
            Reckoned = Reckoned.Amps,
            OperatesVolts = maybe,
            ReleasesVolts = flags.B ? 1.5 : null,
            MaxVolts = maybe,
            HasSuppression = flags.C,
        };
        return kind switch
        {
            0 => Named(new Lamp("", volts, amps, At) { Colour = light }, "X1", "X2"),
            1 => Named(new Led("", volts, amps, At) { Colour = light }, "A", "K"),
            2 => Named(new Solenoid("", coil, At), "A1", "A2"),
            3 => MakeRelay(coil, forms, flags.A, flags.B ? new Delay(amps, amps) : null, flags.C ? flags.A ? Delay.Unknown : new Delay(amps, amps + 1) : null),
            4 => Named(new Resistor("", ohms, At) { RatedWatts = maybe }, "1", "2"),
            5 => Named(new Diode("", At) { MaxAmps = flags.B ? amps : null, ReverseVolts = maybe, ForwardVolts = flags.C ? 0.3 : 0.7, IsDropStated = true }, "A", "K"),
            6 => Named(new Fuse("", amps, At) { IsSlow = flags.A }, "1", "2"),
            7 => Named(new Breaker("", amps, At), "1", "2"),
            8 => Named(new Supply("", volts, At) { MinVolts = flags.A ? volts / 2 : volts, MaxVolts = volts, LimitAmps = flags.B ? amps : null, SourceOhms = flags.C ? ohms : 0, IsAlternating = flags.B }, "+", "-"),
            9 => MakeBoard(volts, ohms, flags),
            10 => Named(new TerminalStrip("", At) { Jumpers = flags.A ? [["1", "2"], ["3", "04"]] : [], Spares = flags.B ? ["T5"] : [], WiresPerTerminal = flags.C ? 3 : 2 }, "1", "2", "3", "04", "T5"),
            11 => MakeConsumer(ConsumerKind.Meter, volts, amps, maybe),
            12 => MakeConsumer((ConsumerKind)((int)(ohms * 10) % 4), volts, amps, maybe),
            13 => Named(new Capacitor("", amps / 1e6, At) { MaxVolts = maybe, IsPolarised = flags.B }, "1", "2"),
            14 => Named(new Suppressor("", volts, At), "1", "2"),
            15 => Named(new Potentiometer("", ohms, At) { RatedWatts = maybe, Travel = flags.B ? new WiperTravel(0.1, 0.85) : WiperTravel.Whole }, "1", "2", "3"),
            16 => MakeRheostat(ohms, maybe, flags.B ? new WiperTravel(0.1, 0.85) : WiperTravel.Whole),
            17 => Named(MakeRanged(RangedResistorKind.Resistor, ohms, volts, maybe) with { IsFixed = flags.B }, "1", "2"),
            18 => MakeSensor(ohms, volts, maybe, flags.B),
            19 => Named(new BridgeRectifier("", At) { MaxAmps = flags.A ? amps : null, ReverseVolts = maybe, ForwardVolts = flags.B ? 0.9 : 0.7, IsDropStated = flags.B }, "AC1", "AC2", "+", "-"),
            23 => Named(new Transformer("", volts, ohms, At) { VoltAmps = maybe }, "1", "2", "3", "4"),
            21 => Named(new TransistorOutput("", At) { MaxVolts = maybe, MaxAmps = flags.A ? amps : null, SaturationVolts = flags.B ? 0.2 : 0.3, IsSaturationStated = flags.B }, "C", "E"),
            22 => Named(new Optocoupler("", volts, amps, At) { MaxVolts = maybe, MaxAmps = flags.A ? amps : null, SaturationVolts = flags.B ? 0.2 : 0.3, IsSaturationStated = flags.B }, "A", "K", "C", "E"),
            20 => MakeKeypad(1 + (int)(ohms % 4), 1 + (int)(volts % 5)),
            _ => Named(new Splice("", At), "1"),
        };
    }

    private static Consumer MakeConsumer(ConsumerKind kind, double volts, double amps, double? most) =>
        new("", kind, volts, amps, At) { MaxVolts = most, OperatesVolts = most / 2, StatedOhms = volts / amps };

    private static RangedResistor MakeRheostat(double ohms, double? watts, WiperTravel travel)
    {
        ResistanceEnd End(double share) => new(share * ohms, $"at {ValueText.Number(share * 100)} %");
        return new("", RangedResistorKind.Rheostat, End(travel.From), End(travel.To), At) { RatedWatts = watts, WholeOhms = ohms, Travel = travel };
    }

    private static RangedResistor MakeRanged(RangedResistorKind kind, double least, double more, double? watts) => new(
        "", kind, new ResistanceEnd(least, $"at {ValueText.Ohms(least)}"), new ResistanceEnd(least + more, $"at {ValueText.Ohms(least + more)}"), At) { RatedWatts = watts };

    /// <summary>A photoresistor, or a thermistor by its range or its characteristic.</summary>
    private static RangedResistor MakeSensor(double least, double more, double? watts, bool byRange)
    {
        if (byRange) return MakeRanged(more > 200 ? RangedResistorKind.Thermistor : RangedResistorKind.Photoresistor, least, more, watts);
        var data = new ThermistorData(least, 3950, -20, 60);
        ResistanceEnd End(double celsius) => new(data.OhmsAt(celsius), $"at {ValueText.Number(celsius)} °C ({ValueText.Ohms(data.OhmsAt(celsius))})");
        return new("", RangedResistorKind.Thermistor, End(60), End(-20), At) { RatedWatts = watts, Thermistor = data };
    }

    private static T Named<T>(T part, params string[] terminals) where T : Part =>
        part with { Terminals = [.. terminals.Select(t => new Terminal(t, At))] };

    private static Keypad MakeKeypad(int rows, int columns)
    {
        var keypad = new Keypad("", [.. Enumerable.Range(0, rows * columns).Select(i => new KeypadKey($"k{i}", $"R{(i / columns) + 1}", $"C{(i % columns) + 1}", At))], At);
        return Named(keypad, [.. keypad.Rows, .. keypad.Columns]);
    }

    private static Relay MakeRelay(CoilData coil, ContactForm[] forms, bool isRated, Delay? on, Delay? off)
    {
        // The conditions name the relay, which has its designator only later: see Assemble.
        RelayPole Set(ContactForm form, int set, bool isDelayed)
        {
            string Terminal(int digit) => $"{set}{digit + (isDelayed ? 4 : 0)}";
            Throw To(int digit, string label, bool operated) => new(
                Terminal(digit), label, isDelayed ? new DelayedCondition("", operated, At) : new EnergisedCondition("", operated, At), At);
            return form switch
            {
                ContactForm.Make => new RelayPole(form, new Pole(Terminal(3), [To(4, "", true)], At)),
                ContactForm.Break => new RelayPole(form, new Pole(Terminal(1), [To(2, "", false)], At)),
                _ => new RelayPole(
                    ContactForm.Changeover,
                    new Pole(Terminal(1), [To(2, "released", false), To(4, "operated", true)], At) { MakesBeforeBreak = !isDelayed && form == ContactForm.Rotary }),
            } with { IsDelayed = isDelayed };
        }

        var poles = forms.Select((f, i) => Set(f, i + 1, (on ?? off) is not null && i % 2 == 0)).ToImmutableArray();
        var names = poles.SelectMany(p => p.Pole.Throws.Select(t => t.Terminal).Prepend(p.Pole.Common));
        return Named(
            new Relay("", coil, poles, At) { Rating = isRated ? new ContactRating(30, 5) : null, OnDelay = on, OffDelay = off }, ["A1", "A2", .. names]);
    }

    private static Board MakeBoard(double volts, double ohms, (bool A, bool B, bool C) flags)
    {
        var first = new BoardInput("IN1", flags.A ? volts : null, At)
        {
            PullUpVolts = flags.B ? 5 : null,
            PullUpOhms = flags.B ? ohms : 0,
            LowVolts = flags.C ? 0.8 : null,
            HighVolts = flags.C ? 2 : null,
            Meaning = flags.A ? "door \"open\"" : "",
        };
        var second = new BoardInput("D+", null, At) { PullDownOhms = flags.C ? ohms : null };
        return Named(new Board("", [first, second], ["GND", "0V"], At), "IN1", "D+", "GND", "0V");
    }

    private static Panel Assemble(
        Connector[] connectors, Actuator[] actuators, Part[] devices, (ContactForm Form, bool HasRating, bool MakesBeforeBreak, int Count, SwitchKind Kind)[] switches,
        (string, string, string) title, (bool Landscape, SymbolStyle Symbols, int Build, string[] Notes) settings, DesignLimits limits, int random)
    {
        var pick = new Picker(random);
        ImmutableArray<Actuator> levers = [.. actuators.Select((a, i) => a with { Name = $"LEVER_{i}" })];
        var parts = connectors.Select((c, i) => (Part)(c with { Designator = $"J{i + 1}", Mates = i == 1 ? "J1" : null })).ToList();
        parts.AddRange(devices.Select((d, i) => Rename(d, $"D-{i + 1}")));
        foreach (var (form, index) in switches.Select((f, i) => (f, i))) parts.AddRange(Gang(form, index, levers[pick.Next(levers.Length)], pick));
        var all = parts.SelectMany(p => p.Terminals.Select(t => p.At(t.Name))).ToArray();
        var ends = parts.OfType<Connector>().SelectMany(p => p.Terminals.Select(t => p.At(t.Name))).ToArray();
        var joined = parts.Where(p => p is not (Connector or Board or TerminalStrip or Splice or Switch or Keypad) && pick.Next(2) == 0);
        var wires = Enumerable.Range(0, pick.Next(6)).Select(i => MakeWire(i, all, pick)).ToImmutableArray();
        var cable = MakeCable(all, pick);
        return new Panel
        {
            Title = new TitleData { Title = title.Item1, Number = title.Item2, Revision = "B/2", Date = "2026-11-25", Owner = title.Item3 },
            Sheet = SheetSize.Find(settings.Landscape ? "A3" : "Letter", settings.Landscape)!,
            Symbols = settings.Symbols,
            BuildCount = settings.Build,
            Limits = limits,
            Cautions = [.. settings.Notes.Distinct()],
            Notes = [.. settings.Notes],
            Actuators = [.. levers, .. parts.OfType<Keypad>().SelectMany(k => k.Hands)],
            Locks = [.. Pushes(levers), .. Enumerable.Range(0, pick.Next(2)).Select(_ => new ActuatorLock(levers[0].Name, [levers[0].Positions[0].Name], MakeCondition(parts, levers, pick, 3), At))],
            Parts = [.. parts],
            Cables = [cable.Cable],
            Attachments = [.. joined.SelectMany(p => p.Terminals.Select(t => new Attachment(p.At(t.Name), ends[pick.Next(ends.Length)], At)))],
            Nets = [.. Enumerable.Range(0, pick.Next(4)).Select(i => new Net($"+{i}V", [.. Enumerable.Range(0, 1 + pick.Next(5)).Select(_ => new NetMember(all[pick.Next(all.Length)], At))], At))],
            Wires = [.. wires, .. cable.Wires],
            Expectations = [.. Enumerable.Range(0, pick.Next(5)).Select(_ => MakeExpectation(parts, levers, all, pick))],
            PlaceHints = [new PlaceHint("J1", SheetSide.Right, pick.Next(2) == 0 ? null : 2, At)],
            Alternatives = [new PartAlternative("J1", "used", new Price(1.50m, "EUR"), At)],
        };
    }

    /// <summary>Of two levers the second, where it is pushed to be turned, is pushed by the first, if that is not.</summary>
    private static IEnumerable<ActuatorLock> Pushes(ImmutableArray<Actuator> levers) => levers is [{ IsPushToTurn: false } push, { IsPushToTurn: true } turned, ..]
        ? [new ActuatorLock(
            turned.Name, [.. turned.Positions.Select(p => p.Name)],
            new PositionCondition(push.Name, [.. push.Positions.Where(p => !p.IsRest).Select(p => p.Name)], At), At) { IsPush = true }]
        : [];

    private static Part Rename(Part part, string designator) => part is not Relay relay ? part with { Designator = designator } : relay with
    {
        Designator = designator,
        Poles = [.. relay.Poles.Select(p => p with
        {
            Pole = p.Pole with { Throws = [.. p.Pole.Throws.Select(t => t with { When = t.When is DelayedCondition d ? d with { Relay = designator } : ((EnergisedCondition)t.When) with { Part = designator } })] },
        })],
    };

    private static IEnumerable<Part> Gang(
        (ContactForm Form, bool HasRating, bool MakesBeforeBreak, int Count, SwitchKind Kind) form, int index, Actuator actuator, Picker pick)
    {
        var names = actuator.Positions.Select(p => p.Name).ToArray();
        var first = pick.Next(names.Length);
        Throw To(string terminal, string label, params string[] positions) =>
            new(terminal, label, new PositionCondition(actuator.Name, [.. positions], At), At);
        Pole pole = form.Form switch
        {
            ContactForm.Make => new Pole("1", [To("2", "", names[first])], At),
            ContactForm.Break => new Pole("1", [To("2", "", [.. names.Where((_, i) => i != first)])], At),
            ContactForm.Changeover => new Pole("common", [To(names[0], names[0], names[0]), To(names[1], names[1], names[1])], At),
            _ => new Pole("common", [To(names[0], $"{names[0]}, {names[1]}", names[0], names[1]), .. names.Skip(2).Select(n => To(n, n, n))], At),
        };
        var kind = (form.Form == ContactForm.Rotary) == (form.Kind == SwitchKind.Coded) ? form.Kind : SwitchKind.Plain;
        if (kind == SwitchKind.Coded)
        {
            Throw Output(string name, Func<int, bool> isClosed) => To(name, name, [.. names.Where((_, i) => isClosed(i))]);
            pole = new Pole("common", [Output("Q1", i => i % 2 == 1), Output("Q2", i => i > 0)], At);
        }
        else if (kind != SwitchKind.Plain)
        {
            var others = names.Where((_, i) => i != first).ToArray();
            pole = form.Form switch
            {
                ContactForm.Make => kind == SwitchKind.Reed ? pole : new Pole("COM", [To("NO", "", names[first])], At),
                ContactForm.Break => kind == SwitchKind.Reed ? pole : new Pole("C", [To("2", "", others)], At),
                _ => new Pole("COM", [To("NO", "", names[first]), To("NC", "", others)], At),
            };
        }

        pole = pole with { MakesBeforeBreak = form.MakesBeforeBreak };
        for (var i = 0; i < form.Count; i++)
        {
            yield return Named(
                new Switch($"S{index}0{i + 1}", form.Form, actuator.Name, pole, At)
                {
                    Gang = $"S{index}01",
                    Kind = kind,
                    IsGray = kind == SwitchKind.Coded && form.HasRating,
                    Rating = form.HasRating ? new ContactRating(i == -1 ? null : 28, 5) : null,
                },
                [pole.Common, .. pole.Throws.Select(t => t.Terminal)]);
        }
    }

    private static Wire MakeWire(int index, TerminalId[] all, Picker pick) => new($"{100 + index}", all[pick.Next(all.Length)], all[pick.Next(all.Length)], At)
    {
        Gauge = pick.Next(3) switch { 0 => null, 1 => WireGauge.FromAwg(pick.Next(44) - 3), _ => WireGauge.FromMm2(0.5) },
        Colour = pick.Next(3) switch { 0 => null, 1 => new WireColour((ColourCode)pick.Next(15)), _ => new WireColour(ColourCode.WH, ColourCode.BU) },
        LengthMm = pick.Next(2) == 0 ? null : 5 + pick.Next(5000),
    };

    private static (Cable Cable, IEnumerable<Wire> Wires) MakeCable(TerminalId[] all, Picker pick)
    {
        var wires = new List<Wire>();
        for (var i = 1; i <= 2; i++)
            wires.Add(MakeWire(0, all, pick) with { Designator = $"C1-{i}", Cable = "C1", Core = $"{i}", LengthMm = 14_000 });
        var screen = pick.Next(3);
        if (screen == 2) wires.Add(MakeWire(0, all, pick) with { Designator = "C1-screen", Cable = "C1", LengthMm = 14_000, Gauge = null, Colour = null });
        var cable = new Cable("C1", ["1", "2", "spare"], At)
        {
            LengthMm = 14_000,
            HasScreen = screen > 0,
            Screen = screen == 2 ? "C1-screen" : null,
            ScreenTerminal = screen == 1 ? all[0] : null,
            PricePerMetre = new Price(3.20m, "EUR"),
        };
        return (cable, wires);
    }

    private static Condition MakeCondition(List<Part> parts, ImmutableArray<Actuator> levers, Picker pick, int depth)
    {
        var kind = depth == 0 ? 0 : pick.Next(3);
        if (kind == 0)
        {
            var loads = parts.Where(p => p is Lamp or Led or Relay or Solenoid or Supply).ToList();
            var lever = levers[pick.Next(levers.Length)];
            if (loads.Count == 0 || pick.Next(2) == 0)
                return new PositionCondition(lever.Name, [.. lever.Positions.Take(1 + pick.Next(lever.Positions.Length)).Select(p => p.Name)], At);
            var load = loads[pick.Next(loads.Count)];
            if (load is Relay { HasDelay: true } && pick.Next(2) == 0) return new DelayedCondition(load.Designator, pick.Next(2) == 0, At);
            return load is Supply ? new SupplyCondition(load.Designator, pick.Next(2) == 0, At) : new EnergisedCondition(load.Designator, pick.Next(2) == 0, At);
        }

        ImmutableArray<Condition> inner = [.. Enumerable.Range(0, 2 + pick.Next(2)).Select(_ => MakeCondition(parts, levers, pick, depth - 1))];
        return kind == 1 ? new AllCondition(inner, At) : new AnyCondition(inner, At);
    }

    private static Expectation MakeExpectation(List<Part> parts, ImmutableArray<Actuator> levers, TerminalId[] all, Picker pick)
    {
        var when = pick.Next(3) == 0 ? new AllCondition([], At) : MakeCondition(parts, levers, pick, 2);
        var board = parts.OfType<Board>().FirstOrDefault();
        var load = parts.FirstOrDefault(p => p is Lamp or Led or Relay or Solenoid);
        return pick.Next(4) switch
        {
            0 when board is not null => new LevelExpectation(board.At("IN1"), pick.Next(2) == 0 ? InputLevel.Low : InputLevel.High, when, At),
            1 when load is not null => new EnergisedExpectation(load.Designator, pick.Next(2) == 0, when, At),
            2 => new NeverExpectation([all[pick.Next(all.Length)]], [all[0], all[^1]], when, At),
            _ => new ContinuityExpectation(all[0], all[^1], pick.Next(2) == 0, when, At),
        };
    }

    /// <summary>A small generator of choices that one number fixes, so that a failure is found again from the seed.</summary>
    private sealed class Picker(int seed)
    {
        private uint _state = (uint)seed + 12345;

        public int Next(int count)
        {
            _state = (_state * 1664525) + 1013904223;
            return (int)((_state >> 8) % (uint)count);
        }
    }
}
