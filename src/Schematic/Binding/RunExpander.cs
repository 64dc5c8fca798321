using Schematic.Language;

namespace Schematic.Binding;

/// <summary>Counts out statements that were written once for several like things: one statement for each of them.</summary>
internal sealed class RunExpander(NameRanges ranges)
{
    /// <summary>The statements, each for one thing; poles stay together, for a gang is one statement to its binder too.</summary>
    public IEnumerable<ScopedStatement> Expand(ScopedStatement statement) =>
        statement.Syntax.Accept(new Counter(this, statement.Scope))?.Select(s => new ScopedStatement(statement.Scope, s)) ?? [statement];

    private CableSyntax WithCores(Scope scope, CableSyntax cable) => cable with
    {
        Cores = [.. cable.Cores.SelectMany(core => core.Through is null ? [core] : Each(scope, core, core.Name, (c, name) => c with { Name = name }))],
    };

    /// <summary>
    /// One statement for each name. Where the names cannot be counted out, which is then reported, the first stands for all: what
    /// refers to it finds it.
    /// </summary>
    private IEnumerable<T> Each<T>(Scope scope, T syntax, WordSyntax first, Func<T, WordSyntax, T> named) where T : StatementSyntax
    {
        var names = ranges.Expand(first, syntax.Through, scope);
        if (names.Count == 0) return [named(syntax, first) with { HasErrors = true, Run = default }];
        return names.Select((name, i) => named(syntax, new WordSyntax(name, first.Span)) with { Run = new RunPlace(i, names.Count) });
    }

    /// <summary>The statements that one stands for; null where it stands for itself.</summary>
    private sealed class Counter(RunExpander owner, Scope scope) : IStatementVisitor<IEnumerable<StatementSyntax>?>
    {
        public IEnumerable<StatementSyntax>? Visit(PartSyntax part) => Named(part, part.Designator, (p, name) => p with { Designator = name });

        public IEnumerable<StatementSyntax>? Visit(ActuatorSyntax actuator) => Named(actuator, actuator.Name, (a, name) => a with { Name = name });

        public IEnumerable<StatementSyntax>? Visit(NetSyntax net) => Named(net, net.Name, (n, name) => n with { Name = name });

        public IEnumerable<StatementSyntax>? Visit(WireSyntax wire) => Named(wire, wire.Name, (w, name) => w with { Name = name });

        public IEnumerable<StatementSyntax>? Visit(CableSyntax cable) =>
            cable.Cores.Any(c => c.Through is not null) ? [owner.WithCores(scope, cable)] : null;

        public IEnumerable<StatementSyntax>? Visit(ExpectSyntax expect)
        {
            if (expect is { Through: not null, Part: { } load }) return Named(expect, load, (e, name) => e with { Part = name });
            return expect.Terminal is not { To: { } last } terminal ? null : Named(
                expect with { Through = last }, terminal.From, (e, name) => e with { Terminal = terminal with { From = name, To = null } });
        }

        public IEnumerable<StatementSyntax>? Visit(SwitchSyntax pole) => null;

        public IEnumerable<StatementSyntax>? Visit(LockSyntax actuatorLock) => null;

        public IEnumerable<StatementSyntax>? Visit(NeverSyntax never) => null;

        public IEnumerable<StatementSyntax>? Visit(PlaceSyntax place) => null;

        public IEnumerable<StatementSyntax>? Visit(AlternativeSyntax alternative) => null;

        public IEnumerable<StatementSyntax>? Visit(SettingSyntax setting) => null;

        public IEnumerable<StatementSyntax>? Visit(UseSyntax use) => null;

        public IEnumerable<StatementSyntax>? Visit(UnreadableSyntax unreadable) => null;

        private IEnumerable<T>? Named<T>(T syntax, WordSyntax first, Func<T, WordSyntax, T> named) where T : StatementSyntax =>
            syntax.Through is null ? null : owner.Each(scope, syntax, first, named);
    }
}
