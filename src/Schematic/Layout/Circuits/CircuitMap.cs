using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Analysis.Circuits;
using Schematic.Bench.Record;
using Schematic.Model;

namespace Schematic.Layout.Circuits;

/// <summary>
/// A panel as its circuit sheets need it: what is permanently joined is a node; supplies, protectors, contacts, loads and the
/// places where the circuit leaves the drawing are links between nodes.
/// </summary>
internal sealed class CircuitMap
{
    private readonly AnalysisContext _context;
    private readonly ConductorGraph _whole;
    private readonly Circuit _circuit;
    private readonly ILookup<int, Joint> _jointsOf;
    private readonly Dictionary<int, NodeTree> _trees = [];
    private readonly Dictionary<string, int> _fileOrder = new(StringComparer.Ordinal);
    private readonly List<CircuitLink> _links = [];
    private readonly Dictionary<TerminalId, PoleUse> _poles = [];
    private readonly List<Part> _bridged = [];
    private int _nodes;

    /// <summary>Reads the map of a panel.</summary>
    public CircuitMap(AnalysisContext context)
    {
        _context = context;
        _whole = context.Connectivity.Whole;
        Proofs = BenchRecord.ProofOf(context.Panel);
        _circuit = new Circuit(context);
        _nodes = _whole.Conductors.Length;
        _jointsOf = _whole.Joints.ToLookup(j => _whole.ConductorOf(j.From));
        foreach (var part in context.Panel.Parts) _fileOrder.TryAdd(part.Designator, _fileOrder.Count);
        AddProtectors();
        AddElements();
        AddContacts();
        AddEnds();
        Links = [.. _links];
    }

    /// <summary>The panel.</summary>
    public Panel Panel => _context.Panel;

    /// <summary>How far contacts were proved with the meter; empty where the panel keeps no readings.</summary>
    public ImmutableDictionary<TerminalId, ContactProof> Proofs { get; }

    /// <summary>All links, numbered in this order.</summary>
    public ImmutableArray<CircuitLink> Links { get; }

    /// <summary>How many nodes there are; the last ones are free ends.</summary>
    public int NodeCount => _nodes;

    /// <summary>Parts of which both ends are one node: nothing to draw, since no current can tell them from a wire.</summary>
    public IReadOnlyList<Part> Bridged => _bridged;

    /// <summary>The node of a terminal, or -1.</summary>
    public int NodeOf(TerminalId terminal) => _whole.ConductorOf(terminal);

    /// <summary>How the terminals of a node hang together, or null for a free end.</summary>
    public NodeTree? TreeOf(int node)
    {
        if (node >= _whole.Conductors.Length) return null;
        if (!_trees.TryGetValue(node, out var tree)) _trees[node] = tree = new NodeTree(_whole.Conductors[node], _jointsOf[node]);
        return tree;
    }

    /// <summary>The part of that name, or null.</summary>
    public Part? Part(string designator) => _context.Part(designator);

    /// <summary>Whether a wire or a net ends on the terminal.</summary>
    public bool IsWired(TerminalId terminal) => _context.IsInHarness(terminal);

    /// <summary>Whether a wire, a core or a net belongs to the node: whether somebody has led it somewhere.</summary>
    public bool IsWired(int node) => node < _whole.Conductors.Length && _jointsOf[node].Any(j => j.Kind is JointKind.Wire or JointKind.Net);

    private void AddProtectors()
    {
        foreach (var part in _circuit.Protectors)
            Add(LinkKind.Protector, part, part.At(part.Terminals[0].Name), part.At(part.Terminals[1].Name));
    }

    private void AddElements()
    {
        foreach (var element in _circuit.Elements.Where(e => e.Kind != ElementKind.Pull && e.Part is { Variation: null, Halves.IsEmpty: true }))
            Add(KindOf(element), element.Part, element.From, element.To);
        AddOtherDevices();
        foreach (var track in _context.Panel.Parts.OfType<Potentiometer>()) AddTrack(track);
        foreach (var part in _context.Panel.Parts.Where(p => !p.Halves.IsEmpty)) AddHalves(part);
    }

    /// <summary>A side that nothing is wired to is not drawn.</summary>
    private void AddHalves(Part part)
    {
        for (var i = 0; i < part.Halves.Length; i++)
        {
            var ends = part.Halves[i].Ends;
            if (!HasOthers(part.At(ends.From)) && !HasOthers(part.At(ends.To))) continue;
            var before = _links.Count;
            Add(KindOf(part.Halves[i].Role), part, part.At(ends.From), part.At(ends.To));
            if (_links.Count > before) _links[^1] = _links[^1] with { Half = i };
        }
    }

    private static LinkKind KindOf(HalfRole role) => role switch
    {
        HalfRole.Load => LinkKind.Load,
        HalfRole.Source => LinkKind.Source,
        HalfRole.Switch => LinkKind.Diode,
        _ => throw new ArgumentOutOfRangeException(nameof(role)),
    };

    /// <summary>The track from end to end; the wiper's arm leads to an arrow, and from another the circuit goes on.</summary>
    private void AddTrack(Potentiometer track)
    {
        Add(LinkKind.Resistor, track, track.At(Potentiometer.FirstEnd), track.At(Potentiometer.LastEnd));
        var wiper = track.At(Potentiometer.WiperEnd);
        if (!HasOthers(wiper)) return;
        _links.Add(new CircuitLink(_links.Count, LinkKind.End, wiper, wiper, NodeOf(wiper), _nodes++)
        {
            Part = track, FileOrder = OrderOf(track.Designator), IsUpperEnd = true, Cut = new Cut(wiper.ToString(), true) { Words = $"{wiper} wiper" },
        });
    }

    /// <summary>Whether anything but itself belongs to the node of a terminal.</summary>
    public bool HasOthers(TerminalId terminal) => _whole.MembersWith(terminal).Length > 1;

    /// <summary>
    /// Devices that the proof counts as open, such as capacitors: they carry no direct current, and are drawn all the same. Those
    /// that vary are several elements in one.
    /// </summary>
    private void AddOtherDevices()
    {
        foreach (var part in _context.Panel.Parts.OfType<TwoEndedPart>())
        {
            if (part is not Protector && (part.Variation is not null || _circuit.ElementOf(part.Designator) is null))
                Add(part is Suppressor ? LinkKind.Diode : LinkKind.Resistor, part, part.At(part.Ends.From), part.At(part.Ends.To));
        }
    }

    private static LinkKind KindOf(Element element) => element switch
    {
        { Kind: ElementKind.Supply } => LinkKind.Source,
        { IsLoad: true } => LinkKind.Load,
        { Kind: ElementKind.Diode } => LinkKind.Diode,
        _ => LinkKind.Resistor,
    };

    private void AddContacts()
    {
        foreach (var contact in _circuit.Contacts.Where(c => !c.IsInside && c.Part is not Keypad))
        {
            if (!_poles.TryGetValue(contact.Common, out var pole))
            {
                var found = contact.Part.ContactSets.First(p => p.Common == contact.Common.Name);
                _poles[contact.Common] = pole = new PoleUse(_poles.Count, contact.Part, found);
            }

            var index = IndexOf(pole.Pole, contact.Throw.Name);
            if (index < 0 || (pole.Pole.Throws.Length > 1 && IsUnused(contact.Throw))) continue;
            Add(contact.IsRelayContact ? LinkKind.RelayContact : LinkKind.HandContact, contact.Part, contact.Common, contact.Throw, pole, index);
        }
    }

    /// <summary>Whether the throw is led nowhere: the symbol of its pole shows it all the same.</summary>
    private bool IsUnused(TerminalId terminal) =>
        !IsWired(NodeOf(terminal)) && !_whole.MembersWith(terminal).Any(t => t != terminal && Part(t.Part) is not (null or Connector));

    private static int IndexOf(Pole pole, string terminal)
    {
        for (var i = 0; i < pole.Throws.Length; i++)
        {
            if (pole.Throws[i].Terminal == terminal) return i;
        }

        return -1;
    }

    /// <summary>Inputs and grounds of boards, contacts of connectors that lead on to where the panel does not say, ends of wires.</summary>
    private void AddEnds()
    {
        // The lines of a keypad end on it: its keys are on the contact chart, for a matrix is no circuit to follow with a finger.
        var pads = _context.Panel.Parts.OfType<Keypad>().SelectMany(k => k.Terminals.Select(t => k.At(t.Name))).Where(t => HasOthers(t) && NodeOf(t) >= 0);
        HashSet<TerminalId> wanted = [.. _links.SelectMany(l => new[] { l.From, l.To }), .. pads];
        foreach (var node in wanted.Select(NodeOf).Distinct().Order().ToList())
        {
            var tree = TreeOf(node)!;
            var boards = tree.Terminals.Where(t => (Part(t.Part) is Board && IsWired(t)) || Part(t.Part) is Keypad).ToList();
            HashSet<TerminalId> here = [.. tree.Terminals.Where(wanted.Contains), .. boards];
            foreach (var end in boards.Concat(tree.LooseEnds(here))) AddEnd(end, node);
        }
    }

    private void AddEnd(TerminalId terminal, int node)
    {
        var input = (Part(terminal.Part) as Board)?.Inputs.FirstOrDefault(i => i.Terminal == terminal.Name);
        _links.Add(new CircuitLink(_links.Count, LinkKind.End, terminal, terminal, node, _nodes++)
        {
            Part = Part(terminal.Part),
            FileOrder = OrderOf(terminal.Part),
            IsUpperEnd = input is { PullUpVolts: not null },
        });
    }

    private void Add(LinkKind kind, Part part, TerminalId from, TerminalId to, PoleUse? pole = null, int way = 0)
    {
        var (a, b) = (NodeOf(from), NodeOf(to));
        if (a < 0 || b < 0) return;
        if (a == b)
        {
            if (!_bridged.Contains(part)) _bridged.Add(part);
            return;
        }

        _links.Add(new CircuitLink(_links.Count, kind, from, to, a, b) { Part = part, Pole = pole, Throw = way, FileOrder = OrderOf(part.Designator) });
    }

    private int OrderOf(string designator) => _fileOrder.GetValueOrDefault(designator, int.MaxValue);
}
