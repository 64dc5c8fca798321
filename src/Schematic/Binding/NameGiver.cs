using Schematic.Language;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>A name that a statement gives to something.</summary>
internal sealed record GivenName(string Name, TextSpan Span, string Keyword, DeclaredKind Kind);

/// <summary>The names that a statement gives, so that all are known before anything refers to them.</summary>
internal sealed class NameGiver(Scope scope, SwitchBinder switches) : IStatementVisitor<IEnumerable<GivenName>>
{
    public IEnumerable<GivenName> Visit(PartSyntax part) => part.Keyword.Text != KeypadBinder.Keyword
        ? [Of(part, part.Designator, DeclaredKind.Part)]
        :
        [
            Of(part, part.Designator, DeclaredKind.Part),
            .. KeypadBinder.KeyNames(part, scope).Select(k => new GivenName($"{part.Designator.Text}-{k.Name}", k.Span, "key", DeclaredKind.Actuator)),
        ];

    public IEnumerable<GivenName> Visit(ActuatorSyntax actuator) => [Of(actuator, actuator.Name, DeclaredKind.Actuator)];

    public IEnumerable<GivenName> Visit(SwitchSyntax pole) => switches.Designators(pole, scope)
        .Select(d => new GivenName(d, pole.First.Span, pole.Keyword.Text, DeclaredKind.Part));

    public IEnumerable<GivenName> Visit(WireSyntax wire) => [Of(wire, wire.Name, DeclaredKind.Wire)];

    public IEnumerable<GivenName> Visit(CableSyntax cable) =>
    [
        Of(cable, cable.Designator, DeclaredKind.Cable),
        .. cable.Cores.Select(c => new GivenName(WireBinder.CoreDesignator(cable, c), c.Name.Span, c.Keyword.Text, DeclaredKind.Wire)),
    ];

    public IEnumerable<GivenName> Visit(UnreadableSyntax unreadable) => new NameRanges(new BindingReporter())
        .Expand(unreadable.First, unreadable.Last, scope)
        .Select(n => new GivenName(n, unreadable.First.Span, unreadable.Keyword.Text, DeclaredKind.Unreadable));

    /// <summary>Nothing refers to a net.</summary>
    public IEnumerable<GivenName> Visit(NetSyntax net) => [];

    public IEnumerable<GivenName> Visit(LockSyntax actuatorLock) => [];

    public IEnumerable<GivenName> Visit(ExpectSyntax expect) => [];

    public IEnumerable<GivenName> Visit(NeverSyntax never) => [];

    public IEnumerable<GivenName> Visit(PlaceSyntax place) => [];

    public IEnumerable<GivenName> Visit(AlternativeSyntax alternative) => [];

    public IEnumerable<GivenName> Visit(SettingSyntax setting) => [];

    /// <summary>What a used file gives names to is a scope of its own.</summary>
    public IEnumerable<GivenName> Visit(UseSyntax use) => [];

    private static GivenName Of(StatementSyntax statement, WordSyntax name, DeclaredKind kind) =>
        new(name.Text, name.Span, statement.Keyword.Text, kind);
}
