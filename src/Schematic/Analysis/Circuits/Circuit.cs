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
    private readonly ImmutableArray<Element>[] _elementsAt;
    private readonly ILookup<int, TerminalId> _terminalsOf;
    private readonly Dictionary<string, Element> _elementOf = new(StringComparer.Ordinal);

    /// <summary>Reads the circuit of a panel.</summary>
    public Circuit(AnalysisContext context)
    {
        Panel = context.Panel;
        _conductors = context.Connectivity.Whole;
        Protectors = [.. Panel.Parts.Where(p => p is Fuse or Breaker).Where(p => p.Terminals.Length == 2)];
        var joined = new DisjointSets(_conductors.Conductors.Length);
        foreach (var part in Protectors)
            joined.Join(ConductorOf(part, part.Terminals[0]), ConductorOf(part, part.Terminals[1]));
        _nodeOfConductor = joined.Numbered(out var count);
        NodeCount = count;

        Contacts = [.. ReadContacts().Select((c, i) => c with { Index = i })];
        Elements = [.. Panel.Parts.SelectMany(ReadElements)];
        foreach (var element in Elements.Where(e => e.Kind != ElementKind.Pull)) _elementOf.TryAdd(element.Name, element);
        Inputs = [.. Panel.Parts.OfType<Board>().SelectMany(b => b.Inputs.Select(i => new InputPoint(b, i, NodeOf(b.At(i.Terminal)),
            b.Grounds.IsEmpty ? -1 : NodeOf(b.At(b.Grounds[0])))))];
        _contactsAt = ListAt(Contacts, c => c.CommonNode, c => c.ThrowNode);
        _elementsAt = ListAt(Elements, e => e.FromNode, e => e.ToNode);
        _terminalsOf = _conductors.Terminals.ToLookup(NodeOf);
    }

    /// <summary>The panel it was read from.</summary>
    public Panel Panel { get; }

    /// <summary>How many nodes there are, numbered from zero.</summary>
    public int NodeCount { get; }

    /// <summary>All contacts: switches first as the file lists them, each throw of a pole on its own.</summary>
    public ImmutableArray<Contact> Contacts { get; }

    /// <summary>All elements in the order of the parts.</summary>
    public ImmutableArray<Element> Elements { get; }

    /// <summary>The inputs of all boards.</summary>
    public ImmutableArray<InputPoint> Inputs { get; }

    /// <summary>Fuses and breakers: whole and switched on.</summary>
    public ImmutableArray<Part> Protectors { get; }

    /// <summary>The supplies.</summary>
    public IEnumerable<Element> Supplies => Elements.Where(e => e.Kind == ElementKind.Supply);

    /// <summary>The loads: lamps, LEDs, coils.</summary>
    public IEnumerable<Element> Loads => Elements.Where(e => e.IsLoad);

    /// <summary>The node of a terminal, or -1 for a terminal that the panel does not have.</summary>
    public int NodeOf(TerminalId terminal) =>
        _conductors.ConductorOf(terminal) is var c && c < 0 ? -1 : _nodeOfConductor[c];

    /// <summary>The terminals of a node.</summary>
    public IEnumerable<TerminalId> TerminalsOf(int node) => _terminalsOf[node];

    /// <summary>The contacts that have an end on a node.</summary>
    public ImmutableArray<Contact> ContactsAt(int node) => _contactsAt[node];

    /// <summary>The elements that have an end on a node.</summary>
    public ImmutableArray<Element> ElementsAt(int node) => _elementsAt[node];

    /// <summary>The element of a part, or null for parts that are none.</summary>
    public Element? ElementOf(string designator) => _elementOf.GetValueOrDefault(designator);

    private int ConductorOf(Part part, Terminal terminal) => _conductors.ConductorOf(part.At(terminal.Name));

    private IEnumerable<Contact> ReadContacts() =>
        from part in Panel.Parts
        from pole in part switch
        {
            Switch s => [s.Pole],
            Relay r => r.Poles.Select(p => p.Pole),
            _ => Enumerable.Empty<Pole>(),
        }
        from t in pole.Throws
        let common = part.At(pole.Common)
        let end = part.At(t.Terminal)
        select new Contact(0, part, common, end, t.Label, t.When, t.Span)
        {
            CommonNode = NodeOf(common), ThrowNode = NodeOf(end),
        };

    private IEnumerable<Element> ReadElements(Part part) => part switch
    {
        Resistor r => [Make(ElementKind.Resistor, r, "1", "2", r.Ohms)],
        Lamp l => [Make(ElementKind.Lamp, l, "X1", "X2", l.HotOhms)],
        Relay r => [Make(ElementKind.Coil, r, "A1", "A2", r.Coil.Ohms)],
        Solenoid s => [Make(ElementKind.Coil, s, "A1", "A2", s.Coil.Ohms)],
        // The straight line through the rated point that cuts the axis a tenth below it: close enough for an indicator.
        Led d => [Make(ElementKind.Led, d, "A", "K", 0.1 * d.ForwardVolts / d.RatedAmps) with { Volts = 0.9 * d.ForwardVolts }],
        Diode d => [Make(ElementKind.Diode, d, "A", "K", DiodeSlopeOhms) with { Volts = d.ForwardVolts }],
        Supply s => [Make(ElementKind.Supply, s, "+", "-", Math.Max(s.SourceOhms, LeastOhms)) with { Volts = s.Volts }],
        Board b when !b.Grounds.IsEmpty => b.Inputs.SelectMany(i => Pulls(b, i)),
        _ => [],
    };

    private IEnumerable<Element> Pulls(Board board, BoardInput input)
    {
        if (input.PullUpVolts is { } volts && input.PullUpOhms > 0)
            yield return Make(ElementKind.Pull, board, input.Terminal, board.Grounds[0], input.PullUpOhms) with { Volts = volts };
        if (input.PullDownOhms is > 0 and var ohms)
            yield return Make(ElementKind.Pull, board, input.Terminal, board.Grounds[0], ohms);
    }

    private Element Make(ElementKind kind, Part part, string from, string to, double ohms) =>
        new(kind, part, part.At(from), part.At(to))
        {
            FromNode = NodeOf(part.At(from)), ToNode = NodeOf(part.At(to)), Ohms = Math.Max(ohms, LeastOhms),
        };

    /// <summary>
    /// Stands for an ideal joint or source where a resistance is needed for a current to be known: one milliohm.
    /// </summary>
    public const double LeastOhms = 0.001;

    private const double DiodeSlopeOhms = 0.01;

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
