using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>
/// Binds statements to a panel: first all names are declared, then actuators and connectors are built, then what refers to
/// them. A statement with errors still declares its name, so that one mistake is reported once.
/// </summary>
internal sealed class PanelBinder
{
    private readonly List<ScopedStatement> _statements;
    private readonly Scope _main;
    private readonly BindingReporter _report;
    private readonly NameTable _names;
    private readonly NameRanges _ranges;
    private readonly TerminalBinder _terminals;
    private readonly ConditionBinder _conditions;
    private readonly SwitchBinder _switches;
    private readonly PartList _parts = new();

    public PanelBinder(
        IReadOnlyList<ScopedStatement> statements, Scope main, BindingReporter report, IReadOnlyList<string> unreadPrefixes)
    {
        _main = main;
        _report = report;
        _names = new NameTable(report);
        foreach (var prefix in unreadPrefixes) _names.Lack(prefix);
        _ranges = new NameRanges(report);
        _statements = Limited(statements.SelectMany(new RunExpander(_ranges).Expand), report);
        _terminals = new TerminalBinder(_names, _ranges, report);
        _conditions = new ConditionBinder(_names, report);
        _switches = new SwitchBinder(_names, _ranges, report, _terminals, _conditions);
    }

    private static List<ScopedStatement> Limited(IEnumerable<ScopedStatement> statements, BindingReporter report)
    {
        var kept = new List<ScopedStatement>();
        foreach (var statement in statements)
        {
            if (kept.Count == UsedFiles.MostStatements)
            {
                report.TooManyStatements(statement.Scope.At(statement.Syntax.Keyword.Span), UsedFiles.MostStatements);
                break;
            }

            kept.Add(statement);
        }

        return kept;
    }

    public Panel Bind()
    {
        foreach (var (scope, syntax) in _statements)
        {
            foreach (var given in syntax.Accept(new NameGiver(scope, _switches)))
                _names.Declare(scope, given.Name, given.Span, given.Keyword, given.Kind);
        }

        var hands = new ActuatorBinder(_names, _report);
        var actuators = BindEach<ActuatorSyntax, Actuator>(hands.Bind);
        var pushes = BindEach<ActuatorSyntax, ActuatorLock>(hands.PushOf);
        BindParts();
        var wires = new WireBinder(_names, _report, _terminals, _parts);
        var proofs = new ProofBinder(_names, _report, _terminals, _conditions);
        var nets = BindEach<NetSyntax, Net>(wires.Net);
        var (cables, wireList) = BindWires(wires);
        var panel = new SettingBinder(_report).Bind(_statements, _main) with
        {
            Actuators = [.. actuators, .. _parts.Parts.OfType<Keypad>().SelectMany(k => k.Hands)],
            Locks = [.. pushes, .. BindEach<LockSyntax, ActuatorLock>(proofs.Lock)],
            Parts = [.. _parts.Parts],
            Attachments = [.. _parts.Attachments],
            Nets = nets,
            Cables = cables,
            Wires = wireList,
            Expectations = BindExpectations(proofs),
            PlaceHints = BindEach<PlaceSyntax, PlaceHint>(Place),
            Alternatives = BindEach<AlternativeSyntax, PartAlternative>(Alternative),
        };
        return new NotTracedBinder(_names, _ranges, _report).Complete(panel, _statements);
    }

    private ImmutableArray<TResult> BindEach<TSyntax, TResult>(Func<Scope, TSyntax, TResult?> bind)
        where TSyntax : StatementSyntax where TResult : class
    {
        var results = ImmutableArray.CreateBuilder<TResult>();
        foreach (var (scope, statement) in _statements)
        {
            if (statement is TSyntax syntax && bind(scope, syntax) is { } result) results.Add(result);
        }

        return results.DrainToImmutable();
    }

    /// <summary>Connectors first, for their contacts are what all the others are joined to; the list keeps the file's order.</summary>
    private void BindParts()
    {
        var connectors = BindConnectors();
        var devices = new DeviceBinder(_names, _ranges, _report, _terminals, _conditions);
        foreach (var (scope, statement) in _statements)
        {
            if (statement is SwitchSyntax pole) _switches.Bind(scope, pole, _parts);
            if (statement is not PartSyntax syntax) continue;
            if (syntax.Keyword.Text != "connector") devices.Bind(scope, syntax, _parts);
            else if (connectors.TryGetValue((scope, syntax), out var connector)) _parts.Add(connector);
        }

        _parts.AttachAll();
    }

    /// <summary>The connectors that have contacts; one without is no connector to draw, and its fault is reported.</summary>
    private Dictionary<(Scope, PartSyntax), Connector> BindConnectors()
    {
        var binder = new ConnectorBinder(_names, _ranges, _report);
        var own = new List<(Scope Scope, PartSyntax Syntax, Connector Connector)>();
        foreach (var (scope, statement) in _statements)
        {
            if (statement is PartSyntax { Keyword.Text: "connector" } syntax && binder.Bind(scope, syntax) is { } connector)
                own.Add((scope, syntax, connector));
        }

        var mates = MatesOf(own.Select(c => c.Connector));
        var whole = own.Select(c => c with { Connector = binder.WithContacts(binder.Complete(c.Connector, mates), c.Scope, c.Syntax) })
            .Where(c => !c.Connector.Insert.Contacts.IsEmpty).ToList();
        var known = whole.Select(c => c.Connector.Designator).ToHashSet(StringComparer.Ordinal);
        return whole.ToDictionary(c => (c.Scope, c.Syntax), c => c.Connector.Mates is { } mate && !known.Contains(mate)
            ? c.Connector with { Mates = null }
            : c.Connector);
    }

    /// <summary>The other half of each pair, whichever half states it.</summary>
    private static Dictionary<string, Connector> MatesOf(IEnumerable<Connector> connectors)
    {
        var byName = connectors.ToDictionary(c => c.Designator, StringComparer.Ordinal);
        var mates = new Dictionary<string, Connector>(StringComparer.Ordinal);
        foreach (var connector in byName.Values.OrderBy(c => c.Designator, StringComparer.Ordinal))
        {
            if (connector.Mates is null || !byName.TryGetValue(connector.Mates, out var mate)) continue;
            mates[connector.Designator] = mate;
            mates.TryAdd(mate.Designator, connector);
        }

        return mates;
    }

    private (ImmutableArray<Cable> Cables, ImmutableArray<Wire> Wires) BindWires(WireBinder binder)
    {
        var cables = ImmutableArray.CreateBuilder<Cable>();
        var wires = ImmutableArray.CreateBuilder<Wire>();
        foreach (var (scope, statement) in _statements)
        {
            if (statement is WireSyntax wireSyntax && binder.Wire(scope, wireSyntax) is { } wire) wires.Add(wire);
            if (statement is not CableSyntax cableSyntax) continue;
            var (cable, cores) = binder.Cable(scope, cableSyntax);
            if (cable is not null) cables.Add(cable);
            wires.AddRange(cores);
        }

        return (cables.DrainToImmutable(), wires.DrainToImmutable());
    }

    private ImmutableArray<Expectation> BindExpectations(ProofBinder binder)
    {
        var found = ImmutableArray.CreateBuilder<Expectation>();
        foreach (var (scope, statement) in _statements)
        {
            var expectation = statement is ExpectSyntax expect ? binder.Expect(scope, expect)
                : statement is NeverSyntax never ? binder.Never(scope, never) : null;
            if (expectation is not null) found.Add(expectation);
        }

        return found.DrainToImmutable();
    }

    private PlaceHint? Place(Scope scope, PlaceSyntax syntax)
    {
        var reader = new ClauseReader(syntax.Clauses, scope, _report);
        var part = _names.ResolvePart(scope, syntax.Part);
        SheetSide? side = reader.Choice("left", "right", "top", "bottom") switch
        {
            "left" => SheetSide.Left,
            "right" => SheetSide.Right,
            "top" => SheetSide.Top,
            "bottom" => SheetSide.Bottom,
            _ => null,
        };
        var sheet = reader.Count("sheet", 1, 10_000);
        return part?.Part is null ? null : new PlaceHint(part.FullName, side, sheet, scope.At(syntax.Part.Span));
    }

    private PartAlternative? Alternative(Scope scope, AlternativeSyntax syntax)
    {
        var reader = new ClauseReader(syntax.Clauses, scope, _report);
        var part = _names.Resolve(scope, syntax.Part, "a part or a cable", d => d.Kind is DeclaredKind.Part or DeclaredKind.Cable);
        var price = reader.Price();
        return part is null or { Kind: DeclaredKind.Unreadable }
            ? null
            : new PartAlternative(part.FullName, syntax.Order.Text, price, scope.At(syntax.Part.Span));
    }
}
