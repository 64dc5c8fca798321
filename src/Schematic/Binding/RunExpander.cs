using Schematic.Language;

namespace Schematic.Binding;

/// <summary>Counts out statements that were written once for several like things: one statement for each of them.</summary>
internal sealed class RunExpander(NameRanges ranges)
{
    /// <summary>The statements, each for one thing; poles stay together, for a gang is one statement to its binder too.</summary>
    public IEnumerable<ScopedStatement> Expand(ScopedStatement statement) => statement.Syntax switch
    {
        PartSyntax { Through: not null } part => Each(statement.Scope, part, part.Designator, (p, name) => p with { Designator = name }),
        ActuatorSyntax { Through: not null } actuator => Each(statement.Scope, actuator, actuator.Name, (a, name) => a with { Name = name }),
        NetSyntax { Through: not null } net => Each(statement.Scope, net, net.Name, (n, name) => n with { Name = name }),
        WireSyntax { Through: not null } wire => Each(statement.Scope, wire, wire.Name, (w, name) => w with { Name = name }),
        CableSyntax cable when cable.Cores.Any(c => c.Through is not null) => [statement with { Syntax = WithCores(statement.Scope, cable) }],
        ExpectSyntax { Through: not null, Part: { } load } expect => Each(statement.Scope, expect, load, (e, name) => e with { Part = name }),
        ExpectSyntax { Terminal: { To: { } last } terminal } expect => Each(
            statement.Scope, expect with { Through = last }, terminal.From, (e, name) => e with { Terminal = terminal with { From = name, To = null } }),
        _ => [statement],
    };

    private CableSyntax WithCores(Scope scope, CableSyntax cable) => cable with
    {
        Cores = [.. cable.Cores.SelectMany(core => core.Through is null
            ? [core]
            : Each(scope, core, core.Name, (c, name) => c with { Name = name }).Select(s => (WireSyntax)s.Syntax))],
    };

    /// <summary>
    /// One statement for each name. Where the names cannot be counted out, which is then reported, the first stands for all: what
    /// refers to it finds it.
    /// </summary>
    private IEnumerable<ScopedStatement> Each<T>(Scope scope, T syntax, WordSyntax first, Func<T, WordSyntax, T> named) where T : StatementSyntax
    {
        var names = ranges.Expand(first, syntax.Through, scope);
        if (names.Count == 0) return [new ScopedStatement(scope, named(syntax, first) with { HasErrors = true, Run = default })];
        return names.Select((name, i) => new ScopedStatement(
            scope, named(syntax, new WordSyntax(name, first.Span)) with { Run = new RunPlace(i, names.Count) }));
    }
}
