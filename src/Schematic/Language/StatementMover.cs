using System.Collections.Immutable;

namespace Schematic.Language;

/// <summary>Gives a statement the places that it has after text before it grew or shrank; what it says stays.</summary>
/// <param name="by">How many characters it moved towards the end of the text.</param>
internal sealed class StatementMover(int by) : IStatementVisitor<StatementSyntax>
{
    /// <summary>The statement, moved.</summary>
    public static StatementSyntax Move(StatementSyntax statement, int by) => by == 0 ? statement : new StatementMover(by).Common(statement);

    private StatementSyntax Common(StatementSyntax statement) => statement.Accept(this) with
    {
        Keyword = statement.Keyword.Moved(by),
        Span = statement.Span.Moved(by),
        Through = statement.Through?.Moved(by),
    };

    public StatementSyntax Visit(PartSyntax part) => part with
    {
        Designator = part.Designator.Moved(by),
        Description = part.Description?.Moved(by),
        Clauses = Moved(part.Clauses),
        Block = Moved(part.Block),
    };

    public StatementSyntax Visit(ActuatorSyntax actuator) => actuator with
    {
        Name = actuator.Name.Moved(by),
        Description = actuator.Description?.Moved(by),
        Clauses = Moved(actuator.Clauses),
        Positions = [.. actuator.Positions.Select(p => p.Moved(by))],
    };

    public StatementSyntax Visit(SwitchSyntax pole) => pole with
    {
        First = pole.First.Moved(by),
        Last = pole.Last?.Moved(by),
        Description = pole.Description?.Moved(by),
        Form = pole.Form.Moved(by),
        Actuator = pole.Actuator.Moved(by),
        LastActuator = pole.LastActuator?.Moved(by),
        When = Moved(pole.When),
        Clauses = Moved(pole.Clauses),
        Rows = [.. pole.Rows.Select(r => r.Moved(by))],
    };

    public StatementSyntax Visit(WireSyntax wire) => wire with
    {
        Name = wire.Name.Moved(by),
        Clauses = Moved(wire.Clauses),
        From = Moved(wire.From),
        To = Moved(wire.To),
    };

    public StatementSyntax Visit(CableSyntax cable) => cable with
    {
        Designator = cable.Designator.Moved(by),
        Description = cable.Description?.Moved(by),
        Clauses = Moved(cable.Clauses),
        Cores = [.. cable.Cores.Select(c => (WireSyntax)Common(c))],
    };

    public StatementSyntax Visit(NetSyntax net) => net with { Name = net.Name.Moved(by), Members = Moved(net.Members) };

    public StatementSyntax Visit(LockSyntax actuatorLock) => actuatorLock with
    {
        Actuator = actuatorLock.Actuator.Moved(by),
        Positions = Moved(actuatorLock.Positions),
        Unless = actuatorLock.Unless.Moved(by),
    };

    public StatementSyntax Visit(ExpectSyntax expect) => expect with
    {
        Part = expect.Part?.Moved(by),
        Terminal = expect.Terminal?.Moved(by),
        State = expect.State.Moved(by),
        To = expect.To?.Moved(by),
        When = expect.When?.Moved(by),
    };

    public StatementSyntax Visit(NeverSyntax never) => never with
    {
        Sources = Moved(never.Sources),
        Targets = Moved(never.Targets),
        When = never.When?.Moved(by),
    };

    public StatementSyntax Visit(PlaceSyntax place) => place with { Part = place.Part.Moved(by), Clauses = Moved(place.Clauses) };

    public StatementSyntax Visit(AlternativeSyntax alternative) => alternative with
    {
        Part = alternative.Part.Moved(by),
        Order = alternative.Order.Moved(by),
        Clauses = Moved(alternative.Clauses),
    };

    public StatementSyntax Visit(SettingSyntax setting) => setting with { Clauses = Moved(setting.Clauses) };

    public StatementSyntax Visit(UseSyntax use) => use with { Path = use.Path.Moved(by), Name = use.Name.Moved(by) };

    public StatementSyntax Visit(UnreadableSyntax unreadable) =>
        unreadable with { First = unreadable.First.Moved(by), Last = unreadable.Last?.Moved(by) };

    private ImmutableArray<ClauseSyntax> Moved(ImmutableArray<ClauseSyntax> clauses) => [.. clauses.Select(c => c.Moved(by))];

    private ImmutableArray<ContactSyntax> Moved(ImmutableArray<ContactSyntax> contacts) => [.. contacts.Select(c => c.Moved(by))];

    private ImmutableArray<WordSyntax> Moved(ImmutableArray<WordSyntax> words) => [.. words.Select(w => w.Moved(by))];
}
