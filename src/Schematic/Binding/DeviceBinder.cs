using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>Builds devices: lamps, coils, protectors, supplies and the rest, one method for each kind.</summary>
internal sealed class DeviceBinder(NameTable names, NameRanges ranges, BindingReporter report, TerminalBinder terminals)
{
    private static readonly string[] MayRepeatInBoard = ["inputs", "max", "pull-up", "pull-down", "low", "high", "ground", "meaning"];
    private static readonly string[] MayRepeatInRelay = ["make", "break", "changeover"];
    private static readonly string[] MayRepeatInStrip = ["jumper", "spare"];

    /// <summary>Builds the part that a statement declares.</summary>
    public void Bind(Scope scope, PartSyntax syntax, PartList parts)
    {
        var reader = new ClauseReader(syntax.Clauses, scope, report);
        var context = new Context(scope, syntax, reader, scope.At(syntax.Designator.Span), scope.Full(syntax.Designator.Text));
        var part = Make(context);
        part = reader.WithPurchase(part with { Description = syntax.Description?.Text ?? "" });
        var declared = names.Own(scope, syntax.Designator.Text, syntax.Designator.Span);
        if (declared is not null)
        {
            declared.IsIncomplete |= syntax.HasErrors && part is (Model.Board or TerminalStrip or Model.Relay);
            declared.Set(part);
            parts.Add(part);
        }

        parts.AttachLater(() => Attach(context, part, declared is null ? new PartList() : parts));
    }

    private Part Make(Context context) => context.Syntax.Keyword.Text switch
    {
        "lamp" => MakeLamp(context),
        "led" => MakeLed(context),
        "solenoid" => Terminals(new Solenoid(context.Name, MakeCoil(context), context.Span), "A1", "A2"),
        "relay" => MakeRelay(context),
        "resistor" => MakeResistor(context),
        "diode" => MakeDiode(context),
        "fuse" => Terminals(new Fuse(context.Name, Amps(context, "1 A"), context.Span) { IsSlow = context.Reader.Has("slow") }, "1", "2"),
        "breaker" => Terminals(new Breaker(context.Name, Amps(context, "3 A"), context.Span), "1", "2"),
        "supply" => MakeSupply(context),
        "board" => MakeBoard(context),
        "terminals" => MakeStrip(context),
        _ => Terminals(new Splice(context.Name, context.Span), "1"),
    };

    private static T Terminals<T>(T part, params ReadOnlySpan<string> terminalNames) where T : Part
    {
        var list = ImmutableArray.CreateBuilder<Terminal>(terminalNames.Length);
        foreach (var name in terminalNames) list.Add(new Terminal(name, part.Span));
        return part with { Terminals = list.MoveToImmutable() };
    }

    private double Need(Context context, Dictionary<Dimension, QuantitySyntax> ratings, Dimension dimension, string example)
    {
        if (ratings.TryGetValue(dimension, out var quantity)) return quantity.Value;
        if (!context.Syntax.HasErrors && context.IsFreeOfWrongUnits(ratings))
        {
            report.MissingValue(
                context.Span, $"`{context.Syntax.Designator.Text}` has no rated {UnitWords.Kind(dimension)[2..]}.", $"Add it, such as {example}.");
        }

        return 0;
    }

    private Lamp MakeLamp(Context context)
    {
        var ratings = context.Ratings("a voltage or a current", Dimension.Voltage, Dimension.Current);
        var lamp = new Lamp(
            context.Name, Need(context, ratings, Dimension.Voltage, "28 V"), Need(context, ratings, Dimension.Current, "40 mA"), context.Span)
        {
            Colour = context.Reader.Colour()?.Main,
        };
        return Terminals(lamp, "X1", "X2");
    }

    private Led MakeLed(Context context)
    {
        var ratings = context.Ratings("a voltage or a current", Dimension.Voltage, Dimension.Current);
        var led = new Led(
            context.Name, Need(context, ratings, Dimension.Voltage, "2.0 V"), Need(context, ratings, Dimension.Current, "20 mA"), context.Span)
        {
            Colour = context.Reader.Colour()?.Main,
        };
        return Terminals(led, "A", "K");
    }

    private CoilData MakeCoil(Context context)
    {
        var ratings = context.Ratings(
            "a voltage, a current or a resistance", Dimension.Voltage, Dimension.Current, Dimension.Resistance);
        if (ratings.Count == 3)
        {
            var resistance = ratings[Dimension.Resistance];
            report.Contradiction(
                context.Scope.At(resistance.Span), "Voltage, current and resistance of the coil are all given.",
                "Give two of them; they give the third.", context.Scope.At(ratings[Dimension.Current].Span));
        }

        var (volts, ohms) = TwoOfThree(context, ratings);
        return new CoilData(volts, ohms)
        {
            OperatesVolts = context.Reader.Quantity("operates", Dimension.Voltage, "a voltage"),
            ReleasesVolts = context.Reader.Quantity("releases", Dimension.Voltage, "a voltage"),
            MaxVolts = context.Reader.Quantity("max", Dimension.Voltage, "a voltage"),
            HasSuppression = context.Reader.Has("suppressed"),
        };
    }

    private (double Volts, double Ohms) TwoOfThree(Context context, Dictionary<Dimension, QuantitySyntax> ratings)
    {
        var volts = ratings.GetValueOrDefault(Dimension.Voltage)?.Value;
        var amps = ratings.GetValueOrDefault(Dimension.Current)?.Value;
        var ohms = ratings.GetValueOrDefault(Dimension.Resistance)?.Value;
        if (volts is null && amps is not null && ohms is not null) return (amps.Value * ohms.Value, ohms.Value);
        volts ??= Need(context, ratings, Dimension.Voltage, "28 V");
        if (ohms is not null) return (volts.Value, ohms.Value);
        amps ??= Need(context, ratings, Dimension.Current, "0.7 A, or a resistance such as 40 ohm");
        return (volts.Value, volts.Value / amps.Value);
    }

    private Resistor MakeResistor(Context context)
    {
        var ratings = context.Ratings("a resistance or a power", Dimension.Resistance, Dimension.Power);
        var resistor = new Resistor(context.Name, Need(context, ratings, Dimension.Resistance, "120 ohm"), context.Span)
        {
            RatedWatts = ratings.GetValueOrDefault(Dimension.Power)?.Value,
        };
        return Terminals(resistor, "1", "2");
    }

    private static Diode MakeDiode(Context context)
    {
        var ratings = context.Ratings("a current or a voltage", Dimension.Current, Dimension.Voltage);
        var diode = new Diode(context.Name, context.Span)
        {
            MaxAmps = ratings.GetValueOrDefault(Dimension.Current)?.Value,
            ReverseVolts = ratings.GetValueOrDefault(Dimension.Voltage)?.Value,
        };
        if (context.Reader.Quantity("drop", Dimension.Voltage, "a voltage") is { } drop) diode = diode with { ForwardVolts = drop };
        return Terminals(diode, "A", "K");
    }

    private double Amps(Context context, string example) =>
        Need(context, context.Ratings("a current", Dimension.Current), Dimension.Current, example);

    private Supply MakeSupply(Context context)
    {
        var ratings = context.Ratings("a voltage", Dimension.Voltage);
        var volts = Need(context, ratings, Dimension.Voltage, "24 V");
        var supply = new Supply(context.Name, volts, context.Span)
        {
            LimitAmps = context.Reader.Quantity("limit", Dimension.Current, "a current"),
            SourceOhms = context.Reader.Quantity("source", Dimension.Resistance, "a resistance", zeroAllowed: true) ?? 0,
            IsAlternating = context.Reader.Has("alternating"),
        };
        if (AdjustmentOf(context) is { } range)
        {
            supply = supply with { MinVolts = range.Low, MaxVolts = range.High };
            if (volts > 0 && (volts < range.Low || volts > range.High))
            {
                report.OutOfRange(
                    context.Scope.At(ratings[Dimension.Voltage].Span), "The supply's voltage lies outside its adjustable range.",
                    "Give the voltage it is set to, within the range.");
            }
        }

        return Terminals(supply, "+", "-");
    }

    private (double Low, double High)? AdjustmentOf(Context context)
    {
        if (context.Reader.Find("adjustable") is not { } clause) return null;
        if (clause.Values[0] is not QuantityRangeSyntax range)
        {
            report.MissingValue(
                context.Scope.At(clause.Span), "An adjustable supply needs the range of its voltage.", "Write it so: adjustable 22..29 V.");
            return null;
        }

        var low = context.Reader.Value(range.Low, Dimension.Voltage, "a voltage", zeroAllowed: true);
        var high = low is null ? null : context.Reader.Value(range.High, Dimension.Voltage, "a voltage");
        if (low is null || high is null) return null;
        if (low <= high) return (low.Value, high.Value);
        report.OutOfRange(context.Scope.At(range.Span), "The range runs backwards.", "Write the lower voltage first.");
        return null;
    }

    private Relay MakeRelay(Context context)
    {
        var coil = MakeCoil(context);
        var poles = ImmutableArray.CreateBuilder<RelayPole>();
        var terminalList = new List<Terminal> { new("A1", context.Span), new("A2", context.Span) };
        foreach (var clause in context.Syntax.Block.Where(c => MayRepeatInRelay.Contains(c.Keyword)))
        {
            var set = poles.Count + 1;
            var span = context.Scope.At(clause.Span);
            if (set == 10) report.OutOfRange(span, "A relay has at most nine contact sets: the tens digit of the marking counts them.", "Give the others to a second relay.");
            if (set >= 10) break;
            var pole = PoleOf(context, clause.Keyword, set, span);
            poles.Add(pole);
            terminalList.Add(new Terminal(pole.Pole.Common, span));
            terminalList.AddRange(pole.Pole.Throws.Select(t => new Terminal(t.Terminal, span)));
        }

        return new Relay(context.Name, coil, poles.DrainToImmutable(), context.Span)
        {
            Rating = context.Reader.Rating(),
            Terminals = [.. terminalList],
        };
    }

    /// <summary>Function digits after EN 50005: 1-2 break, 3-4 make, 1-2-4 changeover; the tens digit counts the sets.</summary>
    private static RelayPole PoleOf(Context context, string form, int set, SourceSpan span)
    {
        Throw Operated(string terminal, string label) =>
            new(terminal, label, new EnergisedCondition(context.Name, true, span), span);
        Throw Released(string terminal, string label) =>
            new(terminal, label, new EnergisedCondition(context.Name, false, span), span);
        return form switch
        {
            "make" => new RelayPole(ContactForm.Make, new Pole($"{set}3", [Operated($"{set}4", "")], span)),
            "break" => new RelayPole(ContactForm.Break, new Pole($"{set}1", [Released($"{set}2", "")], span)),
            _ => new RelayPole(
                ContactForm.Changeover, new Pole($"{set}1", [Released($"{set}2", "released"), Operated($"{set}4", "operated")], span)),
        };
    }

    private Board MakeBoard(Context context)
    {
        var inputs = new Dictionary<string, BoardInput>(StringComparer.Ordinal);
        var order = new List<string>();
        var grounds = new List<(string Name, SourceSpan Span)>();
        List<string> group = [];
        foreach (var clause in context.Syntax.Block)
        {
            switch (clause.Keyword)
            {
                case "inputs":
                    group = DeclareInputs(context, clause, inputs, order);
                    break;
                case "ground":
                    grounds.AddRange(NamesOf(context, clause));
                    break;
                case "meaning":
                    SetMeaning(context, clause, inputs);
                    break;
                default:
                    SetInputData(context, clause, group, inputs);
                    break;
            }
        }

        CheckTwice(order.Select(n => (n, inputs[n].Span)).Concat(grounds));
        if (order.Count == 0 && !context.Syntax.HasErrors)
            report.MissingValue(context.Span, $"`{context.Syntax.Designator.Text}` has no inputs.", "List them in its block: { inputs IN1..IN16 ; ground GND }.");
        return new Board(context.Name, [.. order.Select(n => inputs[n])], [.. grounds.Select(g => g.Name)], context.Span)
        {
            Terminals = [.. order.Select(n => new Terminal(n, inputs[n].Span)), .. grounds.Select(g => new Terminal(g.Name, g.Span))],
        };
    }

    private List<string> DeclareInputs(Context context, ClauseSyntax clause, Dictionary<string, BoardInput> inputs, List<string> order)
    {
        var group = new List<string>();
        foreach (var (name, span) in NamesOf(context, clause))
        {
            if (inputs.TryAdd(name, new BoardInput(name, null, span)))
            {
                order.Add(name);
                group.Add(name);
            }
            else
            {
                report.DuplicateName(span, name, inputs[name].Span);
            }
        }

        return group;
    }

    private void SetMeaning(Context context, ClauseSyntax clause, Dictionary<string, BoardInput> inputs)
    {
        var words = clause.All<WordSyntax>().ToList();
        if (inputs.TryGetValue(words[0].Text, out var input)) inputs[words[0].Text] = input with { Meaning = words[1].Text };
        else if (!context.Syntax.HasErrors)
            report.UnknownContact(context.Scope.At(words[0].Span), context.Syntax.Designator.Text, [words[0].Text], [.. inputs.Keys], context.Span);
    }

    private void SetInputData(Context context, ClauseSyntax clause, List<string> group, Dictionary<string, BoardInput> inputs)
    {
        if (group.Count == 0)
        {
            if (context.Syntax.HasErrors) return;
            report.MissingValue(
                context.Scope.At(clause.KeywordSpan), $"`{clause.Keyword}` does not say for which inputs it holds.", "Write it after them: inputs IN1..IN16 max 5.5 V.");
            return;
        }

        var isPull = clause.Keyword is "pull-up" or "pull-down";
        double? volts = null;
        double? ohms = null;
        foreach (var quantity in clause.All<QuantitySyntax>())
        {
            if (isPull && quantity.Dimension == Dimension.Resistance) ohms = context.Reader.Value(quantity, Dimension.Resistance, "");
            else if (clause.Keyword != "pull-down") volts = context.Reader.Value(quantity, Dimension.Voltage, "a voltage", zeroAllowed: true);
            else context.Reader.Value(quantity, Dimension.Resistance, "a resistance");
        }

        if (clause.Keyword == "pull-up" && (volts is null || ohms is null) && clause.Values.Length < 2)
        {
            report.MissingValue(
                context.Scope.At(clause.Span), "A pull-up needs the voltage it goes to and its resistance.", "Write it so: pull-up 5 V 10 kohm.");
        }

        foreach (var name in group)
        {
            inputs[name] = clause.Keyword switch
            {
                "max" => inputs[name] with { MaxVolts = volts },
                "low" => inputs[name] with { LowVolts = volts },
                "high" => inputs[name] with { HighVolts = volts },
                "pull-up" => inputs[name] with { PullUpVolts = volts, PullUpOhms = ohms ?? 0 },
                _ => inputs[name] with { PullDownOhms = ohms },
            };
        }
    }

    private TerminalStrip MakeStrip(Context context)
    {
        var block = new ClauseReader(context.Syntax.Block, context.Scope, report, MayRepeatInStrip);
        var own = context.Syntax.Block.Where(c => c.Keyword.Length == 0).SelectMany(c => NamesOf(context, c)).ToList();
        CheckTwice(own);
        if (own.Count == 0 && !context.Syntax.HasErrors)
            report.MissingValue(context.Span, $"`{context.Syntax.Designator.Text}` has no terminals.", "List them in its block: { 1..12 }.");
        var known = own.Select(o => o.Name).Distinct(StringComparer.Ordinal).ToList();
        var strip = new TerminalStrip(context.Name, context.Span)
        {
            Terminals = [.. own.DistinctBy(o => o.Name, StringComparer.Ordinal).Select(o => new Terminal(o.Name, o.Span))],
            Jumpers = [.. OwnLists(context, "jumper", known)],
            Spares = [.. OwnLists(context, "spare", known).SelectMany(s => s)],
        };
        return block.Count("wires", 1, 100) is { } wires ? strip with { WiresPerTerminal = wires } : strip;
    }

    /// <summary>The lists after a keyword, each name one of the strip's own.</summary>
    private IEnumerable<ImmutableArray<string>> OwnLists(Context context, string keyword, List<string> known)
    {
        var set = known.ToHashSet(StringComparer.Ordinal);
        foreach (var clause in context.Syntax.Block.Where(c => c.Keyword == keyword))
        {
            var list = ImmutableArray.CreateBuilder<string>();
            foreach (var (name, span) in NamesOf(context, clause))
            {
                if (set.Contains(name)) list.Add(name);
                else if (!context.Syntax.HasErrors)
                    report.UnknownContact(span, context.Syntax.Designator.Text, [name], known, context.Span);
            }

            yield return list.DrainToImmutable();
        }
    }

    /// <summary>The names a clause lists, ranges counted out.</summary>
    private IEnumerable<(string Name, SourceSpan Span)> NamesOf(Context context, ClauseSyntax clause)
    {
        foreach (var item in clause.All<ContactSyntax>())
        {
            if (item.Part is not null)
            {
                report.WrongKind(context.Scope.At(item.Span), item.Part.Text, "another part", "a name of its own terminals", context.Span);
                continue;
            }

            foreach (var name in ranges.Expand(item.From, item.To, context.Scope))
                yield return (name, context.Scope.At(item.Span));
        }
    }

    private void CheckTwice(IEnumerable<(string Name, SourceSpan Span)> all)
    {
        var first = new Dictionary<string, SourceSpan>(StringComparer.Ordinal);
        foreach (var (name, span) in all)
        {
            if (!first.TryAdd(name, span)) report.DuplicateName(span, name, first[name]);
        }
    }

    private void Attach(Context context, Part part, PartList parts)
    {
        switch (part)
        {
            case Board or TerminalStrip or Splice:
                return;
            case Relay relay:
                AttachRelay(context, relay, parts);
                return;
            case Supply when context.Syntax.Block.SelectMany(c => c.All<ContactSyntax>()).All(c => c.Part is null && c.From.Text is "+" or "-"):
                return; // The block only names the supply's own terminals.
        }

        var items = context.Syntax.Block.SelectMany(c => c.All<ContactSyntax>()).ToList();
        if (items.Count > 0) AttachInOrder(context.Scope, items, part, [.. part.Terminals.Select(t => t.Name)], parts);
    }

    private void AttachRelay(Context context, Relay relay, PartList parts)
    {
        var set = 0;
        foreach (var clause in context.Syntax.Block)
        {
            ImmutableArray<string> own = ["A1", "A2"];
            if (clause.Keyword != "coil")
            {
                if (set >= relay.Poles.Length) return;
                var pole = relay.Poles[set++].Pole;
                own = [pole.Common, .. pole.Throws.Select(t => t.Terminal)];
            }

            if (clause.Values.Length > 0) AttachInOrder(context.Scope, clause.All<ContactSyntax>(), relay, own, parts);
        }
    }

    private void AttachInOrder(
        Scope scope, IEnumerable<ContactSyntax> items, Part part, ImmutableArray<string> own, PartList parts)
    {
        var contacts = terminals.Bind(scope, items);
        if (contacts.Count != own.Length)
        {
            report.CountMismatch(
                contacts[0].Span, $"{contacts.Count} {(contacts.Count == 1 ? "contact is" : "contacts are")} given for {own.Length} terminals.",
                $"Give one contact for each of {string.Join(", ", own)}, in this order.");
        }

        for (var i = 0; i < own.Length; i++) parts.Attach(part.At(own[i]), contacts, i);
    }

    private sealed record Context(Scope Scope, PartSyntax Syntax, ClauseReader Reader, SourceSpan Span, string Name)
    {
        public Dictionary<Dimension, QuantitySyntax> Ratings(string example, params IReadOnlyCollection<Dimension> dimensions) =>
            Reader.Ratings(example, dimensions);

        /// <summary>Whether every rating was understood: a wrong unit is reported by itself and not as missing as well.</summary>
        public bool IsFreeOfWrongUnits(Dictionary<Dimension, QuantitySyntax> ratings) =>
            Reader.Clauses.Where(c => c.Keyword.Length == 0).SelectMany(c => c.All<QuantitySyntax>())
                .All(q => ratings.ContainsKey(q.Dimension));
    }
}
