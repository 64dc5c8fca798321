using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>Builds devices that the language has no kind for, and synchros.</summary>
internal static class GeneralBinder
{
    private const string Rest = "rest";

    private static readonly string[] MayRepeat = ["ohms", "winding", "diode", "joined", "when", "open", "limit"];

    private static readonly string[] SynchroTerminals = ["R1", "R2", "S1", "S2", "S3"];

    /// <summary>Builds a device; what is joined under conditions is added by <see cref="WithContacts"/>.</summary>
    public static Device Make(DeviceStatement device)
    {
        var block = new ClauseReader(device.Syntax.Block, device.Scope, device.Report, MayRepeat);
        var named = block.Find("terminals") is { } list ? device.NamesOf(list).ToList() : [];
        device.CheckTwice(named);
        if (named.Count == 0 && !device.Syntax.HasErrors)
            device.Report.MissingValue(device.Span, $"`{device.ShownName}` has no terminals.", "Name them in its block: { terminals 1 2 3 }.");
        var own = named.DistinctBy(n => n.Name, StringComparer.Ordinal).Select(n => new Terminal(n.Name, n.Span)).ToImmutableArray();
        var pairs = new PairReader(device, block, [.. own.Select(t => t.Name)]);
        var coil = block.Find("coil");
        return new Device(device.Name, device.Span)
        {
            Terminals = own,
            Resistances = [.. pairs.Of("ohms").Select(p => pairs.Ohms(p, isWinding: false)), .. pairs.Of("winding").Select(p => pairs.Ohms(p, isWinding: true))],
            Diodes = [.. pairs.Of("diode").Select(p => new DeviceDiode(p.Ends, pairs.Figure(p.Clause, Dimension.Voltage)))],
            CoilEnds = coil is null ? null : pairs.Of("coil").Select(p => (TerminalPair?)p.Ends).FirstOrDefault(),
            Coil = coil is null ? null : pairs.Coil(coil),
            Limits = [.. pairs.Of("limit").Select(p => new DeviceLimit(p.Ends, pairs.Figure(p.Clause, Dimension.Voltage), pairs.Figure(p.Clause, Dimension.Current)))],
            OpenPairs = [.. pairs.Among("open")],
            IsRestOpen = block.Clauses.Any(c => c.Keyword == "open" && IsRest(c)),
            Bars = [.. block.Clauses.Where((c, i) => c.Keyword == "joined" && ConditionAfter(block, i) is null).SelectMany(pairs.Among)],
        };
    }

    /// <summary>The device with what is joined under conditions, once every name is known that they may speak of.</summary>
    public static Device WithContacts(DeviceStatement device, Device part, ConditionBinder conditions)
    {
        var clauses = device.Syntax.Block;
        var block = new ClauseReader(clauses, device.Scope, new BindingReporter(), MayRepeat);
        var pairs = new PairReader(device, block, [.. part.Terminals.Select(t => t.Name)]) { IsQuiet = true };
        var contacts = ImmutableArray.CreateBuilder<Pole>();
        for (var i = 0; i < clauses.Length; i++)
        {
            if (clauses[i].Keyword != "joined" || ConditionAfter(block, i) is not { } written) continue;
            var span = device.Scope.At(clauses[i].Span);
            if (conditions.Bind(device.Scope, written, span) is not { } when) continue;
            contacts.AddRange(pairs.Among(clauses[i]).Select(p => new Pole(p.From, [new Throw(p.To, "", when, span)], span)));
        }

        return part with { Contacts = contacts.ToImmutable() };
    }

    /// <summary>Builds a synchro: a rotor and three stator windings in a star, measured between their ends.</summary>
    public static Device Synchro(DeviceStatement device)
    {
        var volts = DeviceStatement.Stated(device.Ratings("a voltage", Dimension.Voltage), Dimension.Voltage);
        var rotor = device.Reader.Quantity("rotor", Dimension.Resistance, "a resistance");
        var stator = device.Reader.Quantity("stator", Dimension.Resistance, "a resistance");
        DeviceOhms Winding(string from, string to, double? ohms) => new(new TerminalPair(from, to), ohms, ohms, true);
        return DeviceStatement.WithTerminals(
            new Device(device.Name, device.Span)
            {
                Form = DeviceForm.Synchro,
                RatedVolts = volts,
                Resistances = [Winding("R1", "R2", rotor), Winding("S1", "S2", stator), Winding("S2", "S3", stator), Winding("S1", "S3", stator)],
                IsRestOpen = true,
            },
            SynchroTerminals);
    }

    private static bool IsRest(ClauseSyntax clause) => clause.All<ContactSyntax>().Any(c => c is { To: null, From.Text: Rest });

    /// <summary>The condition of the clause that follows, where it is one.</summary>
    private static ConditionSyntax? ConditionAfter(ClauseReader block, int index) =>
        index + 1 < block.Clauses.Length && block.Clauses[index + 1] is { Keyword: "when" } when ? when.All<ConditionValueSyntax>().FirstOrDefault()?.Condition : null;

    /// <summary>Reads clauses that speak of terminals of the device itself.</summary>
    private sealed class PairReader(DeviceStatement device, ClauseReader block, ImmutableArray<string> own)
    {
        /// <summary>Whether faults were reported before.</summary>
        public bool IsQuiet { get; init; }

        /// <summary>The two terminals of every clause of a keyword.</summary>
        public IEnumerable<(TerminalPair Ends, ClauseSyntax Clause)> Of(string keyword)
        {
            foreach (var clause in block.Clauses.Where(c => c.Keyword == keyword))
            {
                var names = Known(clause).Take(2).ToList();
                if (names.Count == 2) yield return (new TerminalPair(names[0], names[1]), clause);
            }
        }

        /// <summary>Every two of the terminals that the clauses of a keyword list.</summary>
        public IEnumerable<TerminalPair> Among(string keyword) => block.Clauses.Where(c => c.Keyword == keyword).SelectMany(Among);

        /// <summary>Every two of the terminals that a clause lists.</summary>
        public IEnumerable<TerminalPair> Among(ClauseSyntax clause)
        {
            if (IsRest(clause)) yield break;
            var names = Known(clause).ToList();
            if (names.Count == 1 && !IsQuiet)
                device.Report.CountMismatch(device.Scope.At(clause.Span), "One terminal is named; two or more are needed.", $"Name what it is joined to, or not: {clause.Keyword} {names[0]} {own.FirstOrDefault(o => o != names[0], "2")}.");
            for (var i = 0; i < names.Count; i++)
                for (var j = i + 1; j < names.Count; j++) yield return new TerminalPair(names[i], names[j]);
        }

        public DeviceOhms Ohms((TerminalPair Ends, ClauseSyntax Clause) pair, bool isWinding)
        {
            var range = pair.Clause.All<QuantityRangeSyntax>().FirstOrDefault();
            if (range is null)
            {
                var ohms = Figure(pair.Clause, Dimension.Resistance);
                return new DeviceOhms(pair.Ends, ohms, ohms, isWinding);
            }

            var (low, high) = (device.Reader.Value(range.Low, Dimension.Resistance, "a resistance"), device.Reader.Value(range.High, Dimension.Resistance, "a resistance"));
            return new DeviceOhms(pair.Ends, Math.Min(low ?? 0, high ?? 0) is > 0 and var least ? least : null, Math.Max(low ?? 0, high ?? 0) is > 0 and var most ? most : null, isWinding);
        }

        /// <summary>A figure of a clause, or null.</summary>
        public double? Figure(ClauseSyntax clause, Dimension dimension)
        {
            var usable = clause.Keyword == "limit" ? new[] { Dimension.Voltage, Dimension.Current } : [dimension];
            var found = clause.All<QuantitySyntax>().ToList();
            if (dimension == usable[0])
            {
                foreach (var wrong in found.Where(q => !usable.Contains(q.Dimension))) device.Reader.Value(wrong, dimension, UnitWords.Kind(dimension));
            }

            CheckOnce(found.FindAll(q => q.Dimension == dimension));
            return found.Find(q => q.Dimension == dimension) is { } quantity ? device.Reader.Value(quantity, dimension, UnitWords.Kind(dimension)) : null;
        }

        public CoilData Coil(ClauseSyntax clause)
        {
            foreach (var same in clause.All<QuantitySyntax>().GroupBy(q => q.Dimension)) CheckOnce([.. same]);
            var ratings = clause.All<QuantitySyntax>().DistinctBy(q => q.Dimension).ToDictionary(q => q.Dimension);
            var figures = RatedFigures.Of(ratings);
            return new CoilData(figures.Volts, figures.Ohms)
            {
                StatedAmps = figures.Reckoned.HasFlag(Reckoned.Amps) ? null : figures.Amps,
                Reckoned = figures.Reckoned,
                OperatesVolts = block.Quantity("operates", Dimension.Voltage, "a voltage"),
                ReleasesVolts = block.Quantity("releases", Dimension.Voltage, "a voltage"),
                MaxVolts = block.Quantity("max", Dimension.Voltage, "a voltage"),
                HasSuppression = block.Has("suppressed"),
            };
        }

        private void CheckOnce(List<QuantitySyntax> same)
        {
            foreach (var second in same.Skip(1))
                device.Report.StatedTwice(device.Scope.At(second.Span), UnitWords.Kind(second.Dimension), device.Scope.At(same[0].Span));
        }

        private IEnumerable<string> Known(ClauseSyntax clause)
        {
            var seen = new HashSet<string>(StringComparer.Ordinal);
            foreach (var (name, span) in device.NamesOf(clause))
            {
                if (own.Contains(name) && seen.Add(name)) yield return name;
                else if (!own.Contains(name) && !IsQuiet && !own.IsEmpty && !device.Syntax.HasErrors) device.Report.UnknownContact(span, device.ShownName, [name], own, device.Span);
            }
        }
    }
}
