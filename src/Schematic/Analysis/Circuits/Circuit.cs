using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Analysis.Circuits;

/// <summary>
/// A panel as a circuit: nodes (everything that wires, nets, mates, jumpers, fuses and breakers join), contacts between
/// nodes that close under a condition, and elements between nodes.
/// </summary>
public sealed class Circuit
{
    private readonly ConductorGraph _conductors;
    private readonly int[] _nodeOfConductor;
    private readonly ImmutableArray<Contact>[] _contactsAt;
    private readonly ImmutableArray<Contact>[] _jointsAt;
    private readonly ImmutableArray<Element>[] _elementsAt;
    private readonly ILookup<int, TerminalId> _terminalsOf;
    private readonly Dictionary<string, Element> _elementOf = new(StringComparer.Ordinal);

    /// <summary>Reads the circuit of a panel.</summary>
    public Circuit(AnalysisContext context)
    {
        Panel = context.Panel;
        _conductors = context.Connectivity.Whole;
        Protectors = [.. Panel.Parts.OfType<Protector>()];
        var joined = new DisjointSets(_conductors.Conductors.Length);
        foreach (var part in Protectors)
            joined.Join(_conductors.ConductorOf(part.At(part.Ends.From)), _conductors.ConductorOf(part.At(part.Ends.To)));
        _nodeOfConductor = joined.Numbered(out var count);
        NodeCount = count;

        var reader = new ElementReader(NodeOf);
        var inside = new InsideJoints(Panel.Parts.SelectMany(p => p.Accept(reader)), NodeOf, count);
        (Elements, InnerNodes) = (inside.Elements, inside.Terminals);
        Contacts = [.. ReadContacts().Concat(inside.Contacts).Select((c, i) => c with { Index = i })];
        foreach (var element in Elements.Where(e => e.Kind != ElementKind.Pull)) _elementOf.TryAdd(element.Name, element);
        Inputs = [.. Panel.Parts.OfType<Board>().SelectMany(b => b.Inputs.Select(i => new InputPoint(b, i, NodeOf(b.At(i.Terminal)),
            b.Grounds.IsEmpty ? -1 : NodeOf(b.At(b.Grounds[0])))))];
        Limits = [.. PairLimit.Of(Panel)];
        var used = Contacts.SelectMany(c => new[] { c.CommonNode, c.ThrowNode }).Concat(Elements.SelectMany(e => new[] { e.FromNode, e.ToNode }))
            .Concat(Inputs.SelectMany(i => new[] { i.Node, i.GroundNode })).Concat(NamedInClaims(Panel).Select(NodeOf)).ToHashSet();
        var open = new UntracedJoints(Panel, NodeOf, used.Contains, count + InnerNodes.Count, Contacts.Length);
        (Untraced, NodeCount) = (open.Terminals, open.NodeCount);
        Joints = [.. Contacts, .. Untraced.SelectMany(t => t.Joints)];
        _contactsAt = ListAt(Contacts, c => c.CommonNode, c => c.ThrowNode);
        _jointsAt = Untraced.IsEmpty ? _contactsAt : ListAt(Joints, c => c.CommonNode, c => c.ThrowNode);
        _elementsAt = ListAt(Elements, e => e.FromNode, e => e.ToNode);
        _terminalsOf = _conductors.Terminals.ToLookup(NodeOf);
    }

    /// <summary>The panel it was read from.</summary>
    public Panel Panel { get; }

    /// <summary>How many nodes there are, numbered from zero.</summary>
    public int NodeCount { get; }

    /// <summary>All contacts as the file lists them, each throw of a pole on its own; behind them those inside parts.</summary>
    public ImmutableArray<Contact> Contacts { get; }

    /// <summary>Terminals of which it is not known what they are joined to inside their unit, where that matters.</summary>
    public ImmutableArray<UntracedTerminal> Untraced { get; }

    /// <summary>The contacts, and behind them what may be joined inside units that are not traced.</summary>
    public ImmutableArray<Contact> Joints { get; }

    /// <summary>All elements in the order of the parts.</summary>
    public ImmutableArray<Element> Elements { get; }

    /// <summary>The inputs of all boards.</summary>
    public ImmutableArray<InputPoint> Inputs { get; }

    /// <summary>Pairs of terminals that stand a stated voltage.</summary>
    public ImmutableArray<PairLimit> Limits { get; }

    /// <summary>Fuses and breakers: whole and switched on.</summary>
    public ImmutableArray<Protector> Protectors { get; }

    /// <summary>The supplies.</summary>
    public IEnumerable<Element> Supplies => Elements.Where(e => e.Kind == ElementKind.Supply);

    /// <summary>The loads: lamps, LEDs, coils.</summary>
    public IEnumerable<Element> Loads => Elements.Where(e => e.IsLoad);

    /// <summary>The node of a terminal, or -1 for a terminal that the panel does not have.</summary>
    public int NodeOf(TerminalId terminal) =>
        _conductors.ConductorOf(terminal) is var c && c < 0 ? InnerNodes.GetValueOrDefault(terminal, -1) : _nodeOfConductor[c];

    /// <summary>The nodes of terminals inside parts, which no wire reaches; numbered behind all others.</summary>
    public IReadOnlyDictionary<TerminalId, int> InnerNodes { get; } = ImmutableDictionary<TerminalId, int>.Empty;

    /// <summary>The terminals of a node.</summary>
    public IEnumerable<TerminalId> TerminalsOf(int node) => _terminalsOf[node];

    /// <summary>The contacts that have an end on a node.</summary>
    public ImmutableArray<Contact> ContactsAt(int node) => _contactsAt[node];

    /// <summary>The joints that have an end on a node.</summary>
    public ImmutableArray<Contact> JointsAt(int node) => _jointsAt[node];

    /// <summary>The elements that have an end on a node.</summary>
    public ImmutableArray<Element> ElementsAt(int node) => _elementsAt[node];

    /// <summary>The contacts of the circuit that an element lies in: all that can be met from its ends without passing a supply.</summary>
    public IEnumerable<Contact> ContactsAround(Element element)
    {
        var seen = Supplies.SelectMany(s => new[] { s.FromNode, s.ToNode }).Append(-1).ToHashSet();
        var waiting = new Queue<int>(new[] { element.FromNode, element.ToNode }.Where(seen.Add));
        var met = new HashSet<Contact>(ReferenceEqualityComparer.Instance);
        while (waiting.TryDequeue(out var node))
        {
            foreach (var contact in ContactsAt(node))
            {
                if (met.Add(contact)) yield return contact;
                if (seen.Add(contact.Other(node))) waiting.Enqueue(contact.Other(node));
            }
        }
    }

    /// <summary>The element of a part, or null for parts that are none.</summary>
    public Element? ElementOf(string designator) => _elementOf.GetValueOrDefault(designator);

    /// <summary>What claims about joints name: there something hangs for them.</summary>
    private static IEnumerable<TerminalId> NamedInClaims(Panel panel) =>
    [
        .. panel.Expectations.OfType<NeverExpectation>().SelectMany(n => n.Sources.Concat(n.Targets)),
        .. panel.Expectations.OfType<ContinuityExpectation>().SelectMany(c => new[] { c.From, c.To }),
    ];

    private IEnumerable<Contact> ReadContacts() =>
        from part in Panel.Parts
        from pole in part.ContactSets
        from t in pole.Throws
        let common = part.At(pole.Common)
        let end = part.At(t.Terminal)
        select new Contact(0, part, common, end, t.Label, t.When, t.Span)
        {
            CommonNode = NodeOf(common), ThrowNode = NodeOf(end), MakesBeforeBreak = pole.MakesBeforeBreak,
        };

    /// <summary>
    /// Stands for an ideal joint or source where a resistance is needed for a current to be known: one milliohm.
    /// </summary>
    public const double LeastOhms = 0.001;

    private ImmutableArray<T>[] ListAt<T>(ImmutableArray<T> items, Func<T, int> one, Func<T, int> other)
    {
        var lists = Enumerable.Range(0, NodeCount).Select(_ => ImmutableArray.CreateBuilder<T>()).ToArray();
        foreach (var item in items)
        {
            var (a, b) = (one(item), other(item));
            if (a < 0 || b < 0) continue;
            lists[a].Add(item);
            if (a != b) lists[b].Add(item);
        }

        return [.. lists.Select(l => l.ToImmutable())];
    }
}
