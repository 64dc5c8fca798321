using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Text;

namespace Schematic.Editor;

/// <summary>Finds every name in the statements of one file.</summary>
internal sealed class MentionCollector(PanelSyntax syntax, FileNames names) : IStatementVisitor<bool>
{
    private readonly ImmutableArray<Mention>.Builder _found = ImmutableArray.CreateBuilder<Mention>();

    /// <summary>Clauses in whose lists a part's own terminals get their names.</summary>
    private static readonly ImmutableHashSet<string> Naming = ["", "inputs", "ground", "names", "position"];

    private string File => syntax.Source.FileName;

    /// <summary>The names, in the order of the text.</summary>
    public ImmutableArray<Mention> Collect()
    {
        foreach (var statement in syntax.Statements) statement.Accept(this);
        _found.Sort((a, b) => a.Span.Span.Start.CompareTo(b.Span.Span.Start));
        return _found.ToImmutable();
    }

    public bool Visit(PartSyntax part)
    {
        Declare(NamedKind.Part, part.Designator, part.Through);
        foreach (var clause in part.Clauses.Concat(part.Block))
        {
            if (clause.Keyword == "mates" && clause.All<WordSyntax>().FirstOrDefault() is { } mate) Refer(mate);
            if (clause.Keyword is "meaning" or "position" && clause.All<WordSyntax>().FirstOrDefault() is { } own)
                OwnContacts(part, clause, [new ContactSyntax(null, own, null, own.Span)]);
            OwnContacts(part, clause, Contacts(clause.All<ContactSyntax>()));
        }

        return true;
    }

    public bool Visit(ActuatorSyntax actuator)
    {
        Declare(NamedKind.Actuator, actuator.Name, actuator.Through);
        foreach (var name in FileNames.Count(actuator.Name, actuator.Through))
        {
            foreach (var position in actuator.Positions)
            {
                Add(PositionOf(File, name, position.Name), position.Name.Span, isDeclaration: true, isCounted: false);
                if (position.SpringsTo is { } target) Add(PositionOf(File, name, target), target.Span, false, isCounted: false);
            }
        }

        return true;
    }

    public bool Visit(SwitchSyntax pole)
    {
        Declare(NamedKind.Part, pole.First, pole.Last);
        var actuator = Refer(pole.Actuator, pole.LastActuator);
        Positions(actuator, pole.When);
        foreach (var row in pole.Rows)
        {
            if (row.Names is not [{ Text: "common" }]) Positions(actuator, row.Names);
            Contacts(row.Contacts);
        }

        return true;
    }

    public bool Visit(WireSyntax wire)
    {
        Declare(NamedKind.Wire, wire.Name, wire.Through);
        Contacts(wire.From);
        Contacts(wire.To);
        return true;
    }

    public bool Visit(CableSyntax cable)
    {
        Declare(NamedKind.Cable, cable.Designator, cable.Through);
        foreach (var core in cable.Cores)
        {
            Contacts(core.From);
            Contacts(core.To);
        }

        return true;
    }

    public bool Visit(NetSyntax net)
    {
        foreach (var name in FileNames.Count(net.Name, net.Through))
            Add(new NamedThing(NamedKind.Net, File, name), net.Name.Span, isDeclaration: true, isCounted: net.Through is not null);
        Contacts(net.Members);
        return true;
    }

    public bool Visit(LockSyntax actuatorLock)
    {
        Positions(Refer(actuatorLock.Actuator), actuatorLock.Positions);
        Condition(actuatorLock.Unless);
        return true;
    }

    public bool Visit(ExpectSyntax expect)
    {
        if (expect.Part is { } part) Refer(part, expect.Through);
        if (expect.Terminal is { } terminal) Contacts([terminal]);
        if (expect.To is { } to) Contacts([to]);
        Condition(expect.When);
        return true;
    }

    public bool Visit(NeverSyntax never)
    {
        Contacts(never.Sources);
        Contacts(never.Targets);
        Condition(never.When);
        return true;
    }

    public bool Visit(PlaceSyntax place) => Refer(place.Part) is not null;

    public bool Visit(AlternativeSyntax alternative) => Refer(alternative.Part) is not null;

    public bool Visit(SettingSyntax setting) => false;

    public bool Visit(UseSyntax use)
    {
        Declare(NamedKind.UsedFile, use.Name, null);
        return true;
    }

    public bool Visit(UnreadableSyntax unreadable)
    {
        foreach (var (kind, first, last) in unreadable.Accept(GivenNames.Instance)) Declare(kind, first, last);
        return true;
    }

    private void Declare(NamedKind kind, WordSyntax first, WordSyntax? last)
    {
        foreach (var name in FileNames.Count(first, last))
        {
            var thing = names.Own(File, name) is { } own && own.Kind == kind ? own : new NamedThing(kind, File, name);
            Add(thing, SpanIn(name, first, last), isDeclaration: true, isCounted: last is not null);
        }
    }

    /// <summary>Of the names of a range, the first and the last are written out; the others stand for the whole range.</summary>
    private static TextSpan SpanIn(string name, WordSyntax first, WordSyntax? last) =>
        last is null || name == first.Text ? first.Span
        : name == last.Text ? last.Span
        : TextSpan.FromBounds(first.Span.Start, last.Span.End);

    /// <summary>Takes note of a name, prefixes included, and of each of a range; gives what the first stands for.</summary>
    private NamedThing? Refer(WordSyntax word, WordSyntax? last = null)
    {
        if (last is null) return Refer(word, word.Text, isCounted: false);
        NamedThing? found = null;
        foreach (var name in FileNames.Count(word, last))
        {
            if (names.Own(File, name) is not { } thing) continue;
            found ??= thing;
            Add(thing, SpanIn(name, word, last), isDeclaration: false, isCounted: true);
        }

        return found;
    }

    private NamedThing? Refer(WordSyntax word, string full, bool isCounted)
    {
        var file = File;
        var at = word.Span.Start;
        var steps = full.Split('.');
        // Hidden characters are written out in the text of a word: its places are then not those of its letters.
        if (word.Span.Length != full.Length) return null;
        for (var i = 0; i < steps.Length - 1; i++)
        {
            if (names.Own(file, steps[i]) is not { Kind: NamedKind.UsedFile } prefix || names.UsedAs(file, steps[i]) is not { } next) return null;
            Add(prefix, new TextSpan(at, steps[i].Length), isDeclaration: false, isCounted);
            at += steps[i].Length + 1;
            file = next;
        }

        if (names.Own(file, steps[^1]) is not { } thing) return null;
        Add(thing, new TextSpan(at, steps[^1].Length), isDeclaration: false, isCounted);
        return thing;
    }

    private void Positions(NamedThing? actuator, IEnumerable<WordSyntax> words)
    {
        if (actuator is not { Kind: NamedKind.Actuator }) return;
        foreach (var word in words) Add(PositionOf(actuator.File, actuator.Name, word), word.Span, isDeclaration: false, isCounted: false);
    }

    private static NamedThing PositionOf(string file, string actuator, WordSyntax word) => new(NamedKind.Position, file, word.Text, actuator);

    private void Condition(ConditionSyntax? condition)
    {
        if (condition is JoinedConditionSyntax joined)
        {
            foreach (var part in joined.Parts) Condition(part);
        }
        else if (condition is StateConditionSyntax state)
        {
            Positions(Refer(state.Subject), state.States);
        }
    }

    /// <summary>Takes note of a list of terminals; gives those that name no part, and follow none.</summary>
    private List<ContactSyntax> Contacts(IEnumerable<ContactSyntax> items)
    {
        var bare = new List<ContactSyntax>();
        var isCarried = false;
        NamedThing? part = null;
        foreach (var item in items)
        {
            if (item.Part is { } word)
            {
                part = Refer(word);
                isCarried = true;
            }

            if (!isCarried) bare.Add(item);
            else if (part is not null) OfPart(part, item, isDeclaration: false);
        }

        return bare;
    }

    private void OwnContacts(PartSyntax part, ClauseSyntax clause, IEnumerable<ContactSyntax> items)
    {
        var thing = new NamedThing(NamedKind.Part, File, part.Designator.Text);
        foreach (var item in items) OfPart(thing, item, Naming.Contains(clause.Keyword));
    }

    private void OfPart(NamedThing part, ContactSyntax item, bool isDeclaration)
    {
        if (item.IsNotTraced || part.Kind != NamedKind.Part) return;
        var bound = names.PartOf(part);
        foreach (var name in FileNames.Count(item.From, item.To, bound is null ? default : [.. bound.Terminals.Select(t => t.Name)]))
        {
            Add(
                new NamedThing(NamedKind.Contact, part.File, name, part.Name), SpanIn(name, item.From, item.To), isDeclaration,
                isCounted: item.To is not null);
        }
    }

    private void Add(NamedThing thing, TextSpan span, bool isDeclaration, bool isCounted) =>
        _found.Add(new Mention(thing, new SourceSpan(syntax.Source, span), isDeclaration, isCounted));
}
