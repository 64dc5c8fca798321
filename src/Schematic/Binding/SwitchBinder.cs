using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>Builds switch poles: one statement gives one part for each pole of a gang.</summary>
internal sealed class SwitchBinder(
    NameTable names, NameRanges ranges, BindingReporter report, TerminalBinder terminals, ConditionBinder conditions)
{
    private const string CommonName = "common";

    /// <summary>The designators a statement declares, in order.</summary>
    public IReadOnlyList<string> Designators(SwitchSyntax syntax, Scope scope) =>
        ranges.Expand(syntax.First, syntax.Last, scope) is { Count: > 0 } all ? all : [syntax.First.Text];

    /// <summary>Builds the poles.</summary>
    public void Bind(Scope scope, SwitchSyntax syntax, PartList parts)
    {
        var reader = new ClauseReader(syntax.Clauses, scope, report);
        if (!IsSnap(syntax) && reader.Find(SnapTerminals.Keyword) is { } named)
        {
            report.Contradiction(
                scope.At(named.KeywordSpan), $"The terminals of a plain {syntax.Keyword.Text} have their usual names.",
                "Take the names out, or write microswitch or reed.", scope.At(syntax.Keyword.Span));
        }

        var designators = Designators(syntax, scope);
        var movers = MoversOf(scope, syntax, designators.Count);
        var allRows = movers.Select(m => BindRows(scope, syntax, m)).ToList();
        var rating = reader.Rating();
        var own = new List<(Switch Part, int Index)>();
        for (var index = 0; index < designators.Count; index++)
        {
            if (names.Own(scope, designators[index], syntax.First.Span) is not { } declared) continue;
            var (actuator, rows) = (movers[index % movers.Count], allRows[index % movers.Count]);
            // Without actuator, common or throws it is no contact: it stays out of the panel, and its fault is reported.
            var isWhole = actuator?.Actuator is not null && rows.Common is not null && !rows.Throws.IsEmpty;
            declared.IsIncomplete |= syntax.HasErrors || !isWhole;
            if (!isWhole) continue;
            var pole = PoleOf(scope, syntax, rows, actuator, declared.FullName);
            var part = new Switch(declared.FullName, FormOf(syntax), actuator!.FullName, pole, declared.Span)
            {
                Kind = KindOf(syntax),
                IsGray = reader.Has("gray"),
                Description = syntax.Description?.Text ?? "",
                Gang = movers.Count > 1 ? declared.FullName : scope.Full(designators[0]),
                Rating = rating,
                Terminals = [new Terminal(pole.Common, pole.Span), .. pole.Throws.Select(t => new Terminal(t.Terminal, t.Span))],
            };
            part = reader.WithPurchase(part);
            declared.Set(part);
            parts.Add(part);
            own.Add((part, index));
        }

        parts.AttachLater(() =>
        {
            var contacts = ContactsOfRows(scope, allRows[0], designators.Count, syntax.LastActuator is not null);
            foreach (var (part, index) in own)
            {
                foreach (var (terminal, list) in part.Terminals.Zip(contacts)) parts.Attach(part.At(terminal.Name), list, index);
            }
        });
    }

    /// <summary>The actuator of all poles, or one for each where a range of actuators is given.</summary>
    private List<Declared?> MoversOf(Scope scope, SwitchSyntax syntax, int poles)
    {
        if (syntax.LastActuator is null) return [names.ResolveActuator(scope, syntax.Actuator)];
        var words = ranges.Expand(syntax.Actuator, syntax.LastActuator, scope);
        if (words.Count == 0) return [null];
        if (words.Count != poles)
        {
            report.CountMismatch(
                scope.At(syntax.Actuator.Span), $"{words.Count} actuators are given for {poles} {(poles == 1 ? "pole" : "poles")}.",
                "Name one actuator that moves them all, or one for each pole.");
            return [null];
        }

        return [.. words.Select(w => names.ResolveActuator(scope, new WordSyntax(w, syntax.Actuator.Span)))];
    }

    private static ContactForm FormOf(SwitchSyntax syntax) => syntax.Form.Text switch
    {
        "make" => ContactForm.Make,
        "break" => ContactForm.Break,
        "changeover" => ContactForm.Changeover,
        _ => IsSnap(syntax) ? ContactForm.Changeover : ContactForm.Rotary,
    };

    private static SwitchKind KindOf(SwitchSyntax syntax) => syntax.Keyword.Text switch
    {
        "reed" => SwitchKind.Reed,
        "microswitch" => SwitchKind.Micro,
        "coded" => SwitchKind.Coded,
        _ => SwitchKind.Plain,
    };

    private static bool IsSnap(SwitchSyntax syntax) => KindOf(syntax) is SwitchKind.Reed or SwitchKind.Micro;

    private static bool IsSingleThrow(SwitchSyntax syntax) => syntax.Form.Text is "make" or "break";

    private Rows BindRows(Scope scope, SwitchSyntax syntax, Declared? actuator)
    {
        if (KindOf(syntax) == SwitchKind.Coded)
        {
            var coded = new CodedRows(scope, syntax, report, conditions);
            var outputs = coded.Outputs();
            return new Rows(coded.Common(), outputs) { Closed = coded.Closed(outputs, actuator) };
        }

        if (IsSnap(syntax)) return NamedRows(scope, syntax);
        var rows = IsSingleThrow(syntax) ? SingleThrowRows(scope, syntax) : ThrowRows(scope, syntax);
        if (!IsSingleThrow(syntax) && actuator is not null)
        {
            rows = rows with { Closed = [.. rows.Throws.Select(r => conditions.Positions(scope, actuator, syntax.Actuator.Text, r.Names))] };
        }

        return rows;
    }

    /// <summary>Rows named after positions, and one named common.</summary>
    private Rows ThrowRows(Scope scope, SwitchSyntax syntax)
    {
        var commons = syntax.Rows.Where(r => r.Names is [{ Text: CommonName }]).ToList();
        var throws = syntax.Rows.Where(r => !r.Names.IsEmpty && r.Names[0].Text != CommonName).ToImmutableArray();
        foreach (var second in commons.Skip(1))
            report.StatedTwice(scope.At(second.Span), "the common", scope.At(commons[0].Span));
        foreach (var nameless in syntax.Rows.Where(r => r.Names.IsEmpty))
        {
            report.MissingValue(
                scope.At(nameless.Span), "This row does not say which throw it is.",
                "Begin it with `common`, or with the position that closes the throw.");
        }

        if (syntax.When.Length > 0)
        {
            report.Contradiction(
                scope.At(syntax.When[0].Span), $"A {syntax.Form.Text} pole takes its positions from its rows, not from `when`.",
                "Take `when` out, and name each row after the positions that close it.", scope.At(syntax.Form.Span));
        }

        if (!syntax.HasErrors) CheckThrowRows(scope, syntax, commons.Count, throws);
        return new Rows(commons.FirstOrDefault(), throws);
    }

    private void CheckThrowRows(Scope scope, SwitchSyntax syntax, int commons, ImmutableArray<PoleRowSyntax> throws)
    {
        var at = scope.At(syntax.First.Span);
        if (commons == 0)
            report.MissingValue(at, $"`{syntax.First.Text}` has no row named common.", "Add it: common J1:4.");
        if (syntax.Form.Text == "changeover" && throws.Length != 2)
        {
            report.CountMismatch(
                at, $"A changeover pole has two throws; `{syntax.First.Text}` has {throws.Length}.",
                "Give one row for each throw, named after the position that closes it, or write rotary.");
        }
        else if (throws.Length == 0)
        {
            report.MissingValue(at, $"`{syntax.First.Text}` has no throws.", "Give one row for each throw, named after its positions.");
        }

        foreach (var twice in throws.GroupBy(t => t.Names[0].Text, StringComparer.Ordinal).Where(g => g.Count() > 1))
            report.StatedTwice(scope.At(twice.Last().Span), $"the throw `{twice.Key}`", scope.At(twice.First().Span));
    }

    /// <summary>
    /// The terminals of a reed contact or a microswitch, by their own names: rows named after them, or one list of contacts in their
    /// order. What closes a throw is said by <c>when</c>.
    /// </summary>
    private Rows NamedRows(Scope scope, SwitchSyntax syntax)
    {
        var names = SnapTerminals.Of(scope, syntax, report);
        var named = syntax.Rows.Where(r => !r.Names.IsEmpty).ToList();
        PoleRowSyntax RowOf(string name) => named.FirstOrDefault(r => r.Names is [var only] && only.Text == name)
            ?? new PoleRowSyntax([new WordSyntax(name, syntax.First.Span)], [], syntax.First.Span);
        if (!syntax.HasErrors)
        {
            foreach (var strange in named.Where(r => r.Names is not [var only] || !names.Contains(only.Text)))
            {
                report.MissingValue(
                    scope.At(strange.Span), $"`{syntax.First.Text}` has no terminal `{string.Join(',', strange.Names)}`.",
                    $"Its terminals are {string.Join(", ", names)}; give other names so: terminals {string.Join(' ', names)}.");
            }

            foreach (var twice in named.GroupBy(r => r.Names[0].Text, StringComparer.Ordinal).Where(g => g.Count() > 1))
                report.StatedTwice(scope.At(twice.Last().Span), $"the terminal `{twice.Key}`", scope.At(twice.First().Span));
        }

        var list = syntax.Rows.Where(r => r.Names.IsEmpty).SelectMany(r => r.Contacts).ToImmutableArray();
        var rows = new Rows(RowOf(names[0]), [.. names.Skip(1).Select(RowOf)]);
        return named.Count > 0 || list.IsEmpty ? rows : rows with { Common = rows.Common! with { Contacts = list }, IsList = true };
    }

    /// <summary>The two contacts of a make or break contact; for a gang a row named common and a row named make or break.</summary>
    private Rows SingleThrowRows(Scope scope, SwitchSyntax syntax)
    {
        var common = new WordSyntax("1", syntax.First.Span);
        var other = new WordSyntax("2", syntax.First.Span);
        var named = syntax.Rows.Where(r => !r.Names.IsEmpty).ToList();
        if (named.Count > 0)
        {
            var first = named.FirstOrDefault(r => r.Names is [{ Text: CommonName }]);
            var second = named.FirstOrDefault(r => r.Names is [var name] && name.Text == syntax.Form.Text);
            foreach (var strange in syntax.Rows.Where(r => r != first && r != second))
            {
                report.MissingValue(
                    scope.At(strange.Span), $"A gang of {syntax.Form.Text} contacts has the rows common and {syntax.Form.Text}.",
                    $"Name the rows so: common J1:1 2 ; {syntax.Form.Text} J1:3 4.");
            }

            return new Rows(
                new PoleRowSyntax([common], first?.Contacts ?? [], first?.Span ?? syntax.First.Span),
                [new PoleRowSyntax([other], second?.Contacts ?? [], second?.Span ?? syntax.First.Span)]);
        }

        var pair = syntax.Rows.SelectMany(r => r.Contacts).ToImmutableArray();
        var span = pair.IsEmpty ? syntax.First.Span : pair[0].Span;
        return new Rows(
            new PoleRowSyntax([common], [.. pair], span), [new PoleRowSyntax([other], [], pair.IsEmpty ? span : pair[^1].Span)])
        {
            IsList = pair.Length > 0,
        };
    }

    /// <summary>
    /// For each terminal the contacts of all poles, in order. Contacts with actuators of their own may share one.
    /// </summary>
    private List<List<BoundTerminal>> ContactsOfRows(Scope scope, Rows rows, int poles, bool mayShare)
    {
        if (rows.IsList)
        {
            var own = 1 + rows.Throws.Length;
            var (pair, hasBrokenRange) = terminals.BindJoints(scope, rows.Common!.Contacts, own);
            if (pair.Count != own)
            {
                if (hasBrokenRange) return [];
                report.CountMismatch(
                    pair[0].Span, own == 2
                        ? $"A contact pair has two contacts; here {(pair.Count == 1 ? "is 1" : $"are {pair.Count}")}."
                        : $"The contact has {own} terminals; here {(pair.Count == 1 ? "is 1 contact" : $"are {pair.Count} contacts")}.",
                    own == 2
                        ? "Give the two contacts that the switch joins; for a gang give rows named common and make, or common and break."
                        : $"Give one for each of {string.Join(", ", rows.Throws.Prepend(rows.Common).Select(r => r.Names[0].Text))}, in this order.");
                return [];
            }

            return [.. pair.Select(p => new List<BoundTerminal> { p })];
        }

        var all = new List<List<BoundTerminal>>();
        foreach (var row in rows.Throws.Prepend(rows.Common).OfType<PoleRowSyntax>())
        {
            var (contacts, hasBrokenRange) = terminals.BindJoints(scope, row.Contacts, poles);
            if (contacts.Count == 1 && mayShare) contacts = [.. Enumerable.Repeat(contacts[0], poles)];
            all.Add(contacts);
            if (hasBrokenRange || contacts.Count == 0 || contacts.Count == poles) continue;
            report.CountMismatch(
                scope.At(row.Span), $"This row names {contacts.Count} {(contacts.Count == 1 ? "contact" : "contacts")} for {poles} {(poles == 1 ? "pole" : "poles")}.",
                "Give one contact for each pole, in the order of the poles.");
        }

        return all;
    }

    private Pole PoleOf(Scope scope, SwitchSyntax syntax, Rows rows, Declared? actuator, string designator)
    {
        var commonSpan = scope.At(rows.Common?.Span ?? syntax.First.Span);
        var throws = IsSnap(syntax)
            ? rows.Throws.Select((r, i) => NamedThrow(scope, syntax, r, actuator, designator, isMake: syntax.Form.Text != "break" && i == 0))
            : IsSingleThrow(syntax)
            ? [SingleThrow(scope, syntax, rows, actuator, designator)]
            : rows.Throws.Select((r, i) => ThrowOf(scope, r, actuator, rows.Closed[i]));
        return new Pole(IsSnap(syntax) ? rows.Common!.Names[0].Text : IsSingleThrow(syntax) ? "1" : CommonName, [.. throws], commonSpan)
        {
            MakesBeforeBreak = syntax.Clauses.Any(c => c.Keyword == "make-before-break"),
        };
    }

    private static Throw ThrowOf(Scope scope, PoleRowSyntax row, Declared? actuator, ImmutableArray<string> closed) => new(
        row.Names[0].Text, string.Join(", ", row.Names),
        new PositionCondition(actuator?.FullName ?? "", closed, scope.At(row.Names[0].Span)), scope.At(row.Span));

    /// <summary>
    /// A make contact is closed in the positions after <c>when</c>, a break contact in all others. Without <c>when</c> the
    /// contact is operated in every position but the rest position.
    /// </summary>
    private Throw SingleThrow(Scope scope, SwitchSyntax syntax, Rows rows, Declared? actuator, string designator)
    {
        var span = scope.At(rows.Throws[0].Span);
        var when = Closed(scope, syntax, actuator, designator, syntax.Form.Text == "make", span);
        return new Throw("2", when is UntracedCondition ? "positions not traced" : "", when, span);
    }

    /// <summary>A throw of a reed contact or a microswitch: NO makes in the positions after <c>when</c>, NC in all others.</summary>
    private Throw NamedThrow(Scope scope, SwitchSyntax syntax, PoleRowSyntax row, Declared? actuator, string designator, bool isMake)
    {
        var span = scope.At(row.Span);
        return new Throw(row.Names[0].Text, "", Closed(scope, syntax, actuator, designator, isMake, span), span);
    }

    private Condition Closed(Scope scope, SwitchSyntax syntax, Declared? actuator, string designator, bool isMake, SourceSpan span)
    {
        // Of a contact that opens where another closes each is a fact of its own: nobody has seen either.
        if (syntax.When is [{ Text: ContactSyntax.NotTracedMark }])
            return new UntracedCondition(actuator?.FullName ?? "", isMake || IsSingleThrow(syntax) ? designator : $"{designator} NC", span);
        var all = actuator?.Actuator?.Positions ?? [];
        var operated = syntax.When.Length == 0
            ? [.. all.Where(p => !p.IsRest).Select(p => p.Name)]
            : actuator is null ? []
                : conditions.Positions(scope, actuator, syntax.Actuator.Text, syntax.When);
        return new PositionCondition(
            actuator?.FullName ?? "", isMake ? operated : [.. all.Select(p => p.Name).Where(p => !operated.Contains(p))], span);
    }

    /// <summary>The rows of a block, sorted. <see cref="IsList"/>: the common's contacts are all those of one contact, in order.</summary>
    private sealed record Rows(PoleRowSyntax? Common, ImmutableArray<PoleRowSyntax> Throws)
    {
        public bool IsList { get; init; }

        /// <summary>For each throw the positions that close it, where they are named by its row.</summary>
        public ImmutableArray<ImmutableArray<string>> Closed { get; init; } = [.. Throws.Select(_ => ImmutableArray<string>.Empty)];
    }
}
