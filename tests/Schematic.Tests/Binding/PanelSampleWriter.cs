using System.Globalization;
using System.Text;
using Schematic.Model;

namespace Schematic.Tests.Binding;

/// <summary>Writes a random panel in the language, plainly: the reader must give the same panel back.</summary>
internal static class PanelSampleWriter
{
    public static string Write(Panel panel)
    {
        var text = new StringBuilder();
        var t = panel.Title;
        text.AppendLine(Inv($"title {Text(t.Title)} number {Text(t.Number)} revision {t.Revision} date {t.Date} owner {Text(t.Owner)}"));
        text.AppendLine(Inv($"sheet {panel.Sheet.Name} {(panel.Sheet.IsLandscape ? "landscape" : "portrait")} symbols {(panel.Symbols == SymbolStyle.Iec ? "iec" : "ieee")} build {panel.BuildCount}"));
        foreach (var caution in panel.Cautions) text.AppendLine($"caution {Text(caution)}");
        foreach (var note in panel.Notes) text.AppendLine($"note {Text(note)}");
        var l = panel.Limits;
        text.AppendLine(Inv($"limits {{ {Opt("drop", l.DropVolts, "V")}{Opt("drop", l.DropPercent, "%")} ambient {l.AmbientCelsius} degC insulation {l.InsulationCelsius} degC {(l.BundledWires is { } b ? $"bundle {b}" : "")} }}"));
        foreach (var actuator in panel.Actuators.Where(a => a.Keypad is null)) text.AppendLine(Actuator(actuator, panel));
        foreach (var part in panel.Parts)
        {
            if (part is Switch pole && pole.Gang != pole.Designator) continue;
            text.AppendLine(Part(part, panel));
        }

        foreach (var x in panel.Locks.Where(l => !l.IsPush)) text.AppendLine($"lock {x.Actuator} at {string.Join(' ', x.Positions)} unless {Condition(x.Release, false)}");
        foreach (var net in panel.Nets) text.AppendLine($"net {net.Name} {string.Join(' ', net.Members.Select(m => m.Terminal))}");
        foreach (var wire in panel.Wires.Where(w => w.Cable is null)) text.AppendLine($"wire {wire.Designator} {WireData(wire)} {wire.From} -> {wire.To}");
        foreach (var cable in panel.Cables) text.AppendLine(Cable(cable, panel));
        foreach (var expectation in panel.Expectations) text.AppendLine(Expectation(expectation));
        foreach (var hint in panel.PlaceHints) text.AppendLine($"place {hint.Part} {hint.Side.ToString()!.ToLowerInvariant()} {(hint.Sheet is { } s ? $"sheet {s}" : "")}");
        foreach (var other in panel.Alternatives) text.AppendLine($"alternative {other.Part} {Text(other.OrderText)} {PriceOf(other.UnitPrice)}");
        return text.ToString().ReplaceLineEndings("\n");
    }

    /// <summary>The panel written out, with words of the text put in the places of others: most are wrong then.</summary>
    public static string WriteWithMovedWords(Panel panel, (int From, int To)[] moves)
    {
        var words = Write(panel).Split(' ');
        foreach (var (from, to) in moves) words[to % words.Length] = words[from % words.Length];
        return string.Join(' ', words);
    }

    private static string Inv(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    private static string Text(string text) => '"' + text.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal) + '"';

    private static string Opt(string word, double? value, string unit) => value is { } v ? Inv($" {word} {v} {unit}") : "";

    private static string PriceOf(Price? price) => price is null ? "" : Inv($"price {price.Amount} {price.Currency}");

    private static string Head(string keyword, Part part) => $"{keyword} {part.Designator}" + (part.Description.Length > 0 ? " " + Text(part.Description) : "");

    private static string Buying(Part part) =>
        $" {PriceOf(part.UnitPrice)}" + (part.OrderText is null ? "" : $" order {Text(part.OrderText)}")
        + (part.SparePieces > 0 ? Inv($" spares {part.SparePieces}") : "") + (part.OnHand ? " on-hand" : "");

    private static string PushOf(Panel panel, Actuator actuator) =>
        panel.Locks.FirstOrDefault(l => l.IsPush && l.Actuator == actuator.Name)?.Release is PositionCondition push ? push.Actuator : "";

    private static string Actuator(Actuator actuator, Panel panel) =>
        $"actuator {actuator.Name} {(actuator.Description.Length > 0 ? Text(actuator.Description) : "")} {(actuator.Operator == OperatorKind.Unstated ? "" : actuator.Operator.ToString().ToLowerInvariant())} {(actuator.IsEndless ? "endless" : "")} {(actuator.IsPushToTurn ? "push-to-turn" : "")} {(PushOf(panel, actuator))} {{ "
        + string.Join(" ; ", actuator.Positions.Select(p => p.Name + (p.IsRest ? " rest" : "") + (p.SpringsTo is null ? "" : $" springs-to {p.SpringsTo}"))) + " }";

    private static string Part(Part part, Panel panel) => part switch
    {
        Connector c => Connector(c),
        Switch s => Gang(s, panel),
        Lamp x => Head("lamp", x) + Inv($" {x.RatedVolts} V {x.RatedAmps} A") + Light(x.Colour) + Buying(x) + Joints(x, panel),
        Led x => Head("led", x) + Inv($" {x.ForwardVolts} V {x.RatedAmps} A") + Light(x.Colour) + Buying(x) + Joints(x, panel),
        Solenoid x => Head("solenoid", x) + Coil(x.Coil) + Buying(x) + Joints(x, panel),
        Relay x => Relay(x, panel),
        Resistor x => Head("resistor", x) + Inv($" {x.Ohms} ohm{Opt("", x.RatedWatts, "W")}") + Buying(x) + Joints(x, panel),
        Diode x => Head("diode", x) + Opt("", x.MaxAmps, "A") + Opt("", x.ReverseVolts, "V") + Opt("drop", x.ForwardVolts, "V") + Buying(x) + Joints(x, panel),
        Potentiometer x => Head("potentiometer", x) + Inv($" {x.Ohms} ohm{Opt("", x.RatedWatts, "W")}") + Travel(x.Travel) + Buying(x) + Joints(x, panel),
        RangedResistor x => Head(x.Kind.ToString().ToLowerInvariant(), x) + Opt("", x.RatedWatts, "W") + Range(x) + Buying(x) + Joints(x, panel),
        Consumer x => Head(x.Kind.ToString().ToLowerInvariant(), x) + Inv($" {x.RatedVolts} V {x.RatedAmps} A") + Opt("operates", x.OperatesVolts, "V") + Opt("max", x.MaxVolts, "V") + Buying(x) + Joints(x, panel),
        Capacitor x => Head("capacitor", x) + Inv($" {x.Farads * 1e6} uF") + Opt("", x.MaxVolts, "V") + (x.IsPolarised ? " polarised" : "") + Buying(x) + Joints(x, panel),
        Suppressor x => Head("suppressor", x) + Inv($" {x.StandsVolts} V") + Buying(x) + Joints(x, panel),
        BridgeRectifier x => Head("rectifier", x) + Opt("", x.MaxAmps, "A") + Opt("", x.ReverseVolts, "V") + (x.IsDropStated ? Opt("drop", x.ForwardVolts, "V") : "") + Buying(x) + Joints(x, panel),
        Transformer x => Head("transformer", x) + Inv($" {x.PrimaryVolts} V secondary {x.SecondaryVolts} V") + Opt("", x.VoltAmps, "VA") + Buying(x) + Joints(x, panel),
        TransistorOutput x => Head("transistor", x) + Opt("", x.MaxVolts, "V") + Opt("", x.MaxAmps, "A") + Saturates(x) + Buying(x) + Joints(x, panel),
        Optocoupler x => Head("optocoupler", x) + Inv($" {x.ForwardVolts} V {x.RatedAmps} A") + (x.MaxVolts is null ? "" : $" output{Opt("", x.MaxVolts, "V")}{Opt("", x.MaxAmps, "A")}") + Saturates(x) + Buying(x) + Joints(x, panel),
        Fuse x => Head("fuse", x) + Inv($" {x.RatedAmps} A") + (x.IsSlow ? " slow" : "") + Buying(x) + Joints(x, panel),
        Breaker x => Head("breaker", x) + Inv($" {x.RatedAmps} A") + Buying(x) + Joints(x, panel),
        Supply x => Head("supply", x) + Inv($" {x.Volts} V") + (x.IsAdjustable ? Inv($" adjustable {x.MinVolts}..{x.MaxVolts} V") : "") + Opt("limit", x.LimitAmps, "A")
            + (x.SourceOhms > 0 ? Inv($" source {x.SourceOhms} ohm") : "") + (x.IsAlternating ? " alternating" : "") + Buying(x) + Joints(x, panel),
        Board x => Board(x),
        TerminalStrip x => Head("terminals", x) + Buying(x) + $" {{ {string.Join(' ', x.Terminals.Select(t => t.Name))} "
            + string.Concat(x.Jumpers.Select(j => $"; jumper {string.Join(' ', j)} ")) + (x.Spares.Count > 0 ? $"; spare {string.Join(',', x.Spares)} " : "") + Inv($"; wires {x.WiresPerTerminal} }}"),
        Keypad x => Head("keypad", x) + Buying(x) + $" {{\n{string.Concat(x.Rows.Select(r => $"keys {string.Join(' ', x.KeysOn(r))}\n"))}}}",
        _ => Head("splice", part) + Buying(part),
    };

    private static string Saturates(ISemiconductorOutput output) => output.IsSaturationStated ? Opt("saturates", output.SaturationVolts, "V") : "";

    private static string Travel(WiperTravel travel) => travel == WiperTravel.Whole ? "" : Inv($" wiper {travel.From * 100}..{travel.To * 100} %");

    private static string Range(RangedResistor x) => x.Kind == RangedResistorKind.Rheostat ? Inv($" {x.WholeOhms} ohm") + Travel(x.Travel)
        : x.Thermistor is { } t ? Inv($" {t.OhmsAt25} ohm beta {t.BetaKelvin} K over {t.LeastCelsius}..{t.MostCelsius} degC")
        : Inv($" {x.Least.Ohms}..{x.Most.Ohms} ohm") + (x is { Kind: RangedResistorKind.Resistor, IsFixed: false } ? " varies" : "");

    private static string Light(ColourCode? colour) => colour is { } c ? $" {c}" : "";

    private static string Coil(CoilData coil) =>
        Inv($" {coil.RatedVolts} V {coil.Ohms} ohm") + Opt("operates", coil.OperatesVolts, "V") + Opt("releases", coil.ReleasesVolts, "V")
        + Opt("max", coil.MaxVolts, "V") + (coil.HasSuppression ? " suppressed" : "");

    private static string Joints(Part part, Panel panel)
    {
        var joints = panel.Attachments.Where(a => a.Device.Part == part.Designator).Select(a => a.Contact).ToList();
        return joints.Count == 0 ? "" : $" {{ {string.Join(' ', joints)} }}";
    }

    private static string Relay(Relay relay, Panel panel)
    {
        var joints = panel.Attachments.Where(a => a.Device.Part == relay.Designator).Select(a => a.Contact).ToList();
        IEnumerable<TerminalId> Take(int count)
        {
            var taken = joints.Take(count).ToList();
            joints.RemoveRange(0, taken.Count);
            return taken;
        }

        var rows = joints.Count == 0 ? "" : $"coil {string.Join(' ', Take(2))}\n";
        foreach (var pole in relay.Poles)
            rows += $"{(pole.IsDelayed ? "delayed-" : "")}{pole.Form.ToString().ToLowerInvariant()} {string.Join(", ", Take(1 + pole.Pole.Throws.Length))}{(pole.Pole.MakesBeforeBreak ? " make-before-break" : "")}\n";
        string Late(string word, Delay? delay) => delay is null ? "" : $" {word}" + (!delay.IsKnown ? ""
            : delay.LeastSeconds == delay.MostSeconds ? Inv($" {delay.MostSeconds} s") : Inv($" {delay.LeastSeconds}..{delay.MostSeconds} s"));
        return Head("relay", relay) + Coil(relay.Coil) + Late("on-delay", relay.OnDelay) + Late("off-delay", relay.OffDelay) + (relay.Rating is { } r ? Inv($" rated {r.Volts} V {r.Amps} A") : "") + Buying(relay) + $" {{\n{rows}}}";
    }

    private static string Connector(Connector c)
    {
        var text = new StringBuilder(Head("connector", c)).Append(" {\n");
        if (c.Gender != Gender.Unstated) text.Append(c.Gender.ToString().ToLowerInvariant()).Append(' ');
        if (c.Termination != Termination.Unstated) text.Append(c.Termination.ToString().ToLowerInvariant()).Append(' ');
        text.Append(CultureInfo.InvariantCulture, $"key {c.KeyDegrees}\npositions {{\n");
        foreach (var p in c.Insert.Contacts) text.Append(CultureInfo.InvariantCulture, $"{p.Name} {p.XMm} mm {p.YMm} mm\n");
        text.Append("}\n");
        if (c.ContactSize is not null) text.Append($"size {c.ContactSize} ");
        if (c.StripMm is { } strip) text.Append(CultureInfo.InvariantCulture, $"strip {strip} mm\n");
        if (c.Spares.Count > 0) text.Append($"spare {string.Join(' ', c.Spares)} ");
        if (c.Mates is not null) text.Append($"mates {c.Mates} ");
        return text.Append(Buying(c)).Append("\n}").ToString();
    }

    private static string Coded(Switch s, Panel panel, string range)
    {
        var positions = panel.Actuators.Single(a => a.Name == s.Actuator).Positions.Select(p => p.Name).ToList();
        string Digits(Throw t) => string.Concat(positions.Select(p => ((PositionCondition)t.When).Positions.Contains(p) ? '1' : '0'));
        var isByLines = positions.Count % 2 == 0;
        var rows = s.Pole.Throws.Select(t => isByLines ? t.Terminal : $"{t.Terminal} \"{Digits(t)}\"")
            .Concat(isByLines ? positions.Select((p, i) => $"at {p} {string.Join(' ', s.Pole.Throws.Where(t => Digits(t)[i] == '1').Select(t => t.Terminal))}") : []);
        return $"coded {range} on {s.Actuator}{(s.IsGray ? " gray" : "")}{(s.Rating is { } r ? Inv($" rated {r.Volts} V {r.Amps} A") : "")}"
            + $"{(s.Pole.MakesBeforeBreak ? " make-before-break" : "")} {{ common ; {string.Join(" ; ", rows)} }}";
    }

    private static string Gang(Switch s, Panel panel)
    {
        var poles = panel.Parts.OfType<Switch>().Where(p => p.Gang == s.Designator).ToList();
        var range = poles.Count == 1 ? s.Designator : $"{s.Designator}..{poles[^1].Designator}";
        if (s.Kind == SwitchKind.Coded) return Coded(s, panel, range);
        var condition = (PositionCondition)s.Pole.Throws[0].When;
        var others = panel.Actuators.Single(a => a.Name == s.Actuator).Positions.Select(p => p.Name).Except(condition.Positions);
        var when = s.Form switch
        {
            ContactForm.Make => $" when {string.Join(' ', condition.Positions)}",
            ContactForm.Break => $" when {string.Join(' ', others)}",
            _ => s.Kind == SwitchKind.Plain ? "" : $" when {string.Join(' ', condition.Positions)}",
        };
        if (s.Pole.Common == "C") when += " terminals C 2";
        var rows = s.Kind != SwitchKind.Plain || s.Form is ContactForm.Make or ContactForm.Break ? "" : " { common ; "
            + string.Join(" ; ", s.Pole.Throws.Select(t => string.Join(',', ((PositionCondition)t.When).Positions))) + " }";
        return $"{s.Kind switch { SwitchKind.Reed => "reed", SwitchKind.Micro => "microswitch", _ => "poles" }} {range} {s.Form.ToString().ToLowerInvariant()} on {s.Actuator}{when}"
            + (s.Rating is { } r ? Inv($" rated {r.Volts} V {r.Amps} A") : "") + (s.Pole.MakesBeforeBreak ? " make-before-break" : "") + rows;
    }

    private static string Board(Board board)
    {
        var text = new StringBuilder(Head("board", board)).Append(Buying(board)).Append(" {\n");
        foreach (var input in board.Inputs)
        {
            text.Append($"inputs {input.Terminal}{Opt("max", input.MaxVolts, "V")}");
            if (input.PullUpVolts is { } up) text.Append(CultureInfo.InvariantCulture, $" pull-up {up} V {input.PullUpOhms} ohm");
            text.Append($"{Opt("pull-down", input.PullDownOhms, "ohm")}{Opt("low", input.LowVolts, "V")}{Opt("high", input.HighVolts, "V")}\n");
            if (input.Meaning.Length > 0) text.Append($"meaning {input.Terminal} {Text(input.Meaning)}\n");
        }

        return text.Append($"ground {string.Join(' ', board.Grounds)} }}").ToString();
    }

    private static string WireData(Wire wire) =>
        (wire.Gauge is { } g ? g.Text : "") + (wire.Colour is { } c ? " " + (c.Tracer is { } t ? $"{c.Main}/{t}" : c.Main.ToString()) : "") + Opt("", wire.LengthMm, "mm");

    private static string Cable(Cable cable, Panel panel)
    {
        var text = new StringBuilder(Inv($"cable {cable.Designator} {cable.LengthMm} mm {PriceOf(cable.PricePerMetre)} {{\n"));
        foreach (var core in cable.Cores)
        {
            var wire = panel.Wires.FirstOrDefault(w => w.Cable == cable.Designator && w.Core == core);
            text.Append(wire is null ? $"core {core}\n" : $"core {core} {WireData(wire with { LengthMm = null })} {wire.From} -> {wire.To}\n");
        }

        var screen = panel.Wires.FirstOrDefault(w => w.Designator == cable.Screen);
        if (cable.HasScreen) text.Append($"screen {(screen is null ? cable.ScreenTerminal : $"{screen.From} -> {screen.To}")}\n");
        return text.Append('}').ToString();
    }

    private static string Condition(Condition condition, bool inside) => condition switch
    {
        PositionCondition p => $"{p.Actuator} {string.Join(' ', p.Positions)}",
        EnergisedCondition e => $"{e.Part} {(e.Energised ? "energised" : "released")}",
        DelayedCondition d => $"{d.Relay} {(d.Operated ? "delayed-operated" : "delayed-released")}",
        SupplyCondition s => $"{s.Supply} {(s.On ? "on" : "off")}",
        AllCondition a => Group(string.Join(" and ", a.Parts.Select(p => Condition(p, true))), inside),
        AnyCondition a => Group(string.Join(" or ", a.Parts.Select(p => Condition(p, true))), inside),
        _ => throw new InvalidOperationException(),
    };

    private static string Group(string text, bool inside) => inside ? $"({text})" : text;

    private static string When(Condition when) => when is AllCondition { Parts.IsEmpty: true } ? "" : $" when {Condition(when, false)}";

    private static string Expectation(Expectation expectation) => expectation switch
    {
        LevelExpectation l => $"expect {l.Input} {(l.Level == InputLevel.Low ? "low" : "high")}{When(l.When)}",
        ContinuityExpectation c => $"expect {c.From} {(c.Closed ? "closed" : "open")} to {c.To}{When(c.When)}",
        EnergisedExpectation e => $"expect {e.Part} {(e.Energised ? "energised" : "released")}{When(e.When)}",
        NeverExpectation n => $"never {string.Join(' ', n.Sources)} reaches {string.Join(' ', n.Targets)}{When(n.When)}",
        _ => throw new InvalidOperationException(),
    };
}
