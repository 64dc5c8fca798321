using System.Collections.Immutable;
using Schematic.Binding;
using Schematic.Language;
using Schematic.Model;

namespace Schematic.Bench.Readings;

/// <summary>Turns a readings file as written into readings of known contacts in known positions.</summary>
internal sealed class ReadingsBinder
{
    /// <summary>The largest resistance that a person can have read, in ohms.</summary>
    private const double MostOhms = 1e9;

    private readonly PanelSyntax _syntax;
    private readonly BindingReporter _report;
    private readonly Scope _scope;
    private readonly NameRanges _ranges;
    private readonly Panel _declared;
    private readonly Panel _panel;
    private readonly Dictionary<string, Part> _parts;
    private readonly Dictionary<string, Actuator> _actuators;

    public ReadingsBinder(PanelSyntax syntax, Panel? panel, BindingReporter report)
    {
        (_syntax, _report) = (syntax, report);
        _scope = new Scope(syntax.Source, "");
        _ranges = new NameRanges(report);
        _declared = Declared();
        _panel = panel ?? _declared;
        _parts = _panel.Parts.DistinctBy(p => p.Designator).ToDictionary(p => p.Designator, StringComparer.Ordinal);
        _actuators = _panel.Actuators.DistinctBy(a => a.Name).ToDictionary(a => a.Name, StringComparer.Ordinal);
    }

    public BenchReadings Bind()
    {
        var side = Once<SideSyntax>(s => s.Keyword.Text is "unit" or "harness" or "mated", "what lies on the bench");
        var settings = new ClauseReader([.. _syntax.Statements.OfType<SettingSyntax>().SelectMany(s => s.Clauses)], _scope, _report);
        var readings = new BenchReadings
        {
            Source = _syntax.Source,
            PanelPath = Once<ReadingsOfSyntax>(_ => true, "the panel")?.Path?.Text,
            Side = side?.Keyword.Text switch { "unit" => BenchSide.Unit, "harness" => BenchSide.Harness, "mated" => BenchSide.Mated, _ => null },
            Part = PartOf(side)?.Designator,
            Date = settings.Word("date")?.Text ?? "",
            By = settings.Word("by")?.Text ?? "",
            Meter = MeterOf(),
            Remarks = [.. _syntax.Statements.OfType<RemarkSyntax>().Where(r => r.Keyword.Text == "remark").Select(r => r.Text.Text)],
            Print = Once<RemarkSyntax>(r => r.Keyword.Text == "print", "the print")?.Text.Text ?? "",
            Declared = _declared,
            DeclaredText = [.. _syntax.Statements.Where(s => s is PartSyntax or ActuatorSyntax).Select(s => _syntax.Source.Slice(s.Span).ToString())],
            Readings = [.. _syntax.Statements.OfType<HeldSyntax>().SelectMany(Bind)],
        };
        CheckOnBench(readings);
        return readings;
    }

    /// <summary>Connectors and actuators that the file declares, bound as a panel of their own.</summary>
    private Panel Declared()
    {
        List<ScopedStatement> own = [.. _syntax.Statements.Where(s => s is PartSyntax or ActuatorSyntax).Select(s => new ScopedStatement(_scope, s))];
        return new PanelBinder(own, _scope, _report, []).Bind();
    }

    private T? Once<T>(Func<T, bool> isMeant, string what) where T : StatementSyntax
    {
        var all = _syntax.Statements.OfType<T>().Where(isMeant).ToList();
        foreach (var second in all.Skip(1)) _report.StatedTwice(_scope.At(second.Keyword.Span), what, _scope.At(all[0].Keyword.Span));
        return all.FirstOrDefault();
    }

    private Part? PartOf(SideSyntax? side)
    {
        if (side?.Part is not { } name) return null;
        if (_parts.TryGetValue(name.Text, out var part)) return part;
        _report.UnknownName(_scope.At(name.Span), name.Text, "a part", _parts.Keys);
        return null;
    }

    private Meter MeterOf()
    {
        var meter = new Meter();
        if (Once<MeterSyntax>(m => m.Keyword.Text == "meter", "the meter") is { } stated)
        {
            var reader = new ClauseReader(stated.Clauses, _scope, _report);
            meter = meter with
            {
                Name = stated.Name?.Text ?? "",
                RangeOhms = reader.Quantity("range", Dimension.Resistance, "a resistance, such as 4 Mohm,") ?? meter.RangeOhms,
                BeepOhms = reader.Quantity("beeps", Dimension.Resistance, "a resistance, such as 30 ohm,") ?? meter.BeepOhms,
                DiodeVolts = reader.Quantity("test", Dimension.Voltage, "a voltage, such as 2.8 V,") ?? meter.DiodeVolts,
            };
        }

        if (Once<MeterSyntax>(m => m.Keyword.Text == "leads", "the leads") is not { } leads) return meter;
        var data = new ClauseReader(leads.Clauses, _scope, _report);
        var ohms = data.Clauses.Where(c => c.Keyword.Length == 0).SelectMany(c => c.All<QuantitySyntax>()).FirstOrDefault();
        return meter with
        {
            LeadOhms = ohms is null ? meter.LeadOhms : data.Value(ohms, Dimension.Resistance, "a resistance, such as 0.3 ohm,", zeroAllowed: true) ?? meter.LeadOhms,
            IsZeroed = data.Has("zeroed"),
        };
    }

    private IEnumerable<NotedReading> Bind(HeldSyntax block)
    {
        var held = ImmutableArray.CreateBuilder<HeldPlace>();
        var isKnown = true;
        foreach (var syntax in block.Held)
        {
            if (Place(syntax) is not { } place) isKnown = false;
            else if (!IsAtRest(place)) held.Add(place);
        }

        foreach (var twice in block.Held.GroupBy(h => h.Actuator.Text).Where(g => g.Count() > 1))
            _report.StatedTwice(_scope.At(twice.Last().Actuator.Span), $"`{twice.Key}`", _scope.At(twice.First().Actuator.Span));
        var all = held.ToImmutable();
        foreach (var line in block.Lines)
            if (Bind(line, all) is { } reading && isKnown) yield return reading;
    }

    private bool IsAtRest(HeldPlace place)
    {
        var actuator = _actuators[place.Actuator];
        return place.Place == 2 * actuator.Positions.IndexOf(actuator.Rest);
    }

    private HeldPlace? Place(HeldPlaceSyntax syntax)
    {
        if (!_actuators.TryGetValue(syntax.Actuator.Text, out var actuator))
        {
            _report.UnknownName(_scope.At(syntax.Actuator.Span), syntax.Actuator.Text, "an actuator", _actuators.Keys);
            return null;
        }

        if (Position(actuator, syntax.Position) is not { } one) return null;
        if (syntax.Other is null) return new HeldPlace(actuator.Name, 2 * one);
        if (Position(actuator, syntax.Other) is not { } other) return null;
        var (low, high) = (Math.Min(one, other), Math.Max(one, other));
        if (high - low == 1) return new HeldPlace(actuator.Name, (2 * low) + 1);
        if (actuator.IsEndless && low == 0 && high == actuator.Positions.Length - 1) return new HeldPlace(actuator.Name, (2 * high) + 1);
        _report.OutOfRange(
            _scope.At(syntax.Other.Span), $"{syntax.Position.Text} and {syntax.Other.Text} are not neighbours on {actuator.Name}.",
            "Name two positions between which there is no other.");
        return null;
    }

    private int? Position(Actuator actuator, WordSyntax word)
    {
        var names = actuator.Positions.Select(p => p.Name).ToList();
        if (names.IndexOf(word.Text) is var index and >= 0) return index;
        _report.UnknownPosition(_scope.At(word.Span), actuator.Name, word.Text, names, actuator.Span);
        return null;
    }

    private NotedReading? Bind(ReadingSyntax line, ImmutableArray<HeldPlace> held)
    {
        var (redItems, blackItems) = Leads(line);
        string? part = null;
        var (red, black) = (Terminals(redItems, ref part), Terminals(blackItems, ref part));
        var value = ValueOf(line);
        if (red.IsEmpty || black.IsEmpty) return null;
        if (red.Intersect(black).Any())
        {
            _report.Contradiction(
                _scope.At(line.Span), $"{TerminalText.Of(red.Intersect(black).First())} is under both leads.",
                "Put the leads on two contacts.", _scope.At(redItems[0].Span));
            return null;
        }

        if (value is null && line.Value is not WordSyntax { Text: "?" }) return null;
        return new NotedReading(held, line.Meter, red, black, value, _scope.At(line.Span))
        {
            Seen = line.Seen?.Text ?? "",
            Remark = line.Remark?.Text ?? "",
        };
    }

    /// <summary>A line without a joining word is a pair: the last contact is under the black lead.</summary>
    private (ImmutableArray<ContactSyntax> Red, ImmutableArray<ContactSyntax> Black) Leads(ReadingSyntax line)
    {
        if (line.Joined.Length > 0) return (line.Red, line.Black);
        if (line.Red is [var one, var other] && one.To is null && other.To is null) return ([one], [other]);
        _report.CountMismatch(
            _scope.At(line.Red[0].Span), $"A reading is between two contacts; here {(line.Red.Length == 1 ? "is one" : "are more")}.",
            "Write a pair, J1:4 J1:6, or what is clipped to each lead with `to` between: J1:4 to J1:5..9.");
        return ([], []);
    }

    private ImmutableArray<TerminalId> Terminals(ImmutableArray<ContactSyntax> items, ref string? part)
    {
        var found = ImmutableArray.CreateBuilder<TerminalId>();
        foreach (var item in items)
        {
            if (item.Part is null && item.To is null && item.From.Text == BenchCircuit.FrameName)
            {
                found.Add(BenchCircuit.Frame);
                continue;
            }

            var span = _scope.At(item.Span);
            part = item.Part?.Text ?? part;
            if (part is null)
            {
                _report.MissingValue(span, $"`{item.From.Text}` does not say of which part it is a contact.", $"Write the part before it: J1:{item.From.Text}.");
                return [];
            }

            if (!_parts.TryGetValue(part, out var known))
            {
                if (item.Part is not null) _report.UnknownName(_scope.At(item.Part.Span), part, "a part", _parts.Keys);
                return [];
            }

            ImmutableArray<string> names = [.. known.Terminals.Select(t => t.Name)];
            var contacts = _ranges.Expand(item.From, item.To, _scope, names);
            var unknown = contacts.Where(c => !names.Contains(c)).ToList();
            if (unknown.Count > 0) _report.UnknownContact(span, part, unknown, names, known.Span);
            if (unknown.Count > 0 || contacts.Count == 0) return [];
            found.AddRange(contacts.Select(known.At));
        }

        return found.ToImmutable();
    }

    private NotedValue? ValueOf(ReadingSyntax line)
    {
        switch (line.Value)
        {
            case WordSyntax { Text: "open" }:
                return new NotedValue(ReadingKind.Open, 0);
            case WordSyntax { Text: "closed" }:
                return new NotedValue(line.Meter == MeterTest.Diode ? ReadingKind.Volts : ReadingKind.Ohms, 0, IsBeep: true);
            case QuantitySyntax quantity:
                return Quantity(quantity, line.Meter == MeterTest.Diode);
            case QuantityRangeSyntax range:
                return Range(range, line.Meter == MeterTest.Diode);
            default:
                return null;
        }
    }

    /// <summary>The lowest and the highest reading on the way from one end to the other.</summary>
    private NotedValue? Range(QuantityRangeSyntax range, bool isDiode)
    {
        if (isDiode)
        {
            _report.Contradiction(_scope.At(range.Span), "A diode test shows one voltage.", "Leave `diode` away, or write the one voltage.", _scope.At(range.Span));
            return null;
        }

        if (Quantity(range.Low, isDiode: false) is not { } from || Quantity(range.High, isDiode: false) is not { } to) return null;
        return new NotedValue(ReadingKind.Ohms, Math.Max(from.Number, to.Number)) { Lowest = Math.Min(from.Number, to.Number) };
    }

    private NotedValue? Quantity(QuantitySyntax quantity, bool isDiode)
    {
        var span = _scope.At(quantity.Span);
        var needed = isDiode ? Dimension.Voltage : Dimension.Resistance;
        if (quantity.Dimension != needed)
        {
            _report.WrongUnit(span, quantity, isDiode ? "the voltage of a diode test" : "a resistance (or, with `diode` behind it, a voltage)");
            return null;
        }

        if (double.IsFinite(quantity.Value) && quantity.Value >= 0 && quantity.Value <= MostOhms)
            return new NotedValue(isDiode ? ReadingKind.Volts : ReadingKind.Ohms, quantity.Value);
        _report.OutOfRange(span, $"No meter shows {quantity.Number} {quantity.Unit} here.", "Give what it showed, or write open.");
        return null;
    }

    /// <summary>A contact that is covered, or on the other half, cannot have been measured.</summary>
    private void CheckOnBench(BenchReadings readings)
    {
        if (readings.Side is not { } side || _panel.Parts.IsEmpty || ReferenceEquals(_panel, _declared)) return;
        var reach = BenchCut.Cut(_panel, side, readings.Part).Accessible.ToHashSet();
        foreach (var reading in readings.Readings)
        {
            var off = reading.Red.Concat(reading.Black).Where(t => t != BenchCircuit.Frame && !reach.Contains(t)).ToList();
            if (off.Count == 0) continue;
            _report.NotOnBench(reading.Span, TerminalText.Of(off[0]), side switch
            {
                BenchSide.Unit => "the unit alone",
                BenchSide.Harness => "the harness alone",
                _ => "all of it, plugged together",
            });
        }
    }
}
