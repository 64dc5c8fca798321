using System.Collections.Immutable;
using Schematic.Model;
using Schematic.Symbols;

namespace Schematic.Layout.Schematics;

/// <summary>
/// The panel as the drawing needs it: which parts are devices and which are equipment, what sits in which unit, and every
/// connection outside the units as an edge.
/// </summary>
internal sealed class CircuitMap
{
    private const int MostEdges = 6;

    private readonly Dictionary<string, Part> _parts;
    private readonly Dictionary<string, string> _mates = new(StringComparer.Ordinal);
    private readonly Dictionary<TerminalId, List<TerminalId>> _attached = [];
    private readonly Dictionary<TerminalId, List<WireEdge>> _edgesAt = [];
    private readonly HashSet<string> _unitConnectors = new(StringComparer.Ordinal);
    private readonly Dictionary<string, PlaceHint> _hints = new(StringComparer.Ordinal);
    private readonly HashSet<string> _drawnMatings = new(StringComparer.Ordinal);
    private readonly List<WireEdge> _edges = [];

    /// <param name="panel">The panel.</param>
    public CircuitMap(Panel panel)
    {
        Panel = panel;
        Symbols = SymbolLibrary.For(panel.Symbols);
        _parts = [];
        foreach (var part in panel.Parts) _parts.TryAdd(part.Designator, part);
        foreach (var hint in panel.PlaceHints) _hints.TryAdd(hint.Part, hint);
        FindMates();
        FindAttachments();
        Units = FindUnits();
        AddWires();
        AddLooseAttachments();
        AddMatings();
        AddJumpers();
        AddNets();
        NameEdges();
    }

    public Panel Panel { get; }

    /// <summary>The symbols that are drawn.</summary>
    public SymbolLibrary Symbols { get; }

    /// <summary>Made units: devices joined to connector contacts.</summary>
    public ImmutableArray<Unit> Units { get; }

    /// <summary>All edges in order.</summary>
    public IReadOnlyList<WireEdge> Edges => _edges;

    public Part? Find(string designator) => _parts.GetValueOrDefault(designator);

    /// <summary>The user's wish for where a part is drawn, or null.</summary>
    public PlaceHint? HintOf(string designator) => _hints.GetValueOrDefault(designator);

    /// <summary>Whether the part is drawn as a symbol in a row, not as a block of terminals.</summary>
    public static bool IsDevice(Part part) => part.IsSymbol;

    /// <summary>Whether a wire may meet each side of the part's terminals.</summary>
    public static bool IsTwoSided(Part part) => part is TerminalStrip or Splice;

    /// <summary>The connector that <paramref name="designator"/> is plugged into, or null.</summary>
    public string? MateOf(string designator) => _mates.GetValueOrDefault(designator);

    /// <summary>Whether the connector belongs to a made unit.</summary>
    public bool IsUnitConnector(string designator) => _unitConnectors.Contains(designator);

    /// <summary>The contact plugged onto <paramref name="contact"/>, or null.</summary>
    public TerminalId? MatedContact(TerminalId contact)
    {
        if (MateOf(contact.Part) is not { } mate || Find(mate) is not Connector other) return null;
        return other.Terminals.Any(t => t.Name == contact.Name) ? new TerminalId(mate, contact.Name) : null;
    }

    /// <summary>
    /// The terminal at whose place the drawing shows <paramref name="terminal"/>: a plug contact is drawn on the contact of
    /// the unit that it meets.
    /// </summary>
    public TerminalId PlaceOf(TerminalId terminal) =>
        !IsUnitConnector(terminal.Part) && MateOf(terminal.Part) is { } mate && IsUnitConnector(mate)
        && MatedContact(terminal) is { } contact
            ? contact
            : terminal;

    /// <summary>
    /// Whether an equipment terminal carries so many wires that it is drawn again on every sheet that needs it.
    /// </summary>
    public bool IsRepeated(TerminalId place) =>
        EdgesAt(place).Count > MostEdges && Find(place.Part) is { } part && !IsDevice(part) && !IsUnitConnector(place.Part);

    /// <summary>Whether the contact, or the one plugged onto it, is left unused on purpose.</summary>
    public bool IsSpare(TerminalId contact) => IsDeclaredSpare(contact) || (MatedContact(contact) is { } mate && IsDeclaredSpare(mate));

    private bool IsDeclaredSpare(TerminalId contact) => Find(contact.Part) is Connector connector && connector.Spares.Contains(contact.Name);

    /// <summary>Whether it is not known yet what the unit has on the contact, or on the one plugged onto it.</summary>
    public bool IsNotTraced(TerminalId contact) =>
        IsOpen(contact) || (MatedContact(contact) is { } mate && IsOpen(mate));

    private bool IsOpen(TerminalId contact) => Find(contact.Part) is { } part && part.NotTraced.Contains(contact.Name);

    /// <summary>Whether lines show what the connector is plugged into.</summary>
    public bool HasDrawnMating(string designator) => _drawnMatings.Contains(designator);

    /// <summary>What the inside of a unit joins to a device terminal or a contact.</summary>
    public IReadOnlyList<TerminalId> AttachedTo(TerminalId terminal) =>
        _attached.TryGetValue(terminal, out var list) ? list : [];

    /// <summary>The edges that end where <paramref name="place"/> is drawn.</summary>
    public IReadOnlyList<WireEdge> EdgesAt(TerminalId place) =>
        _edgesAt.TryGetValue(place, out var list) ? list : [];

    private void FindMates()
    {
        foreach (var connector in Panel.Parts.OfType<Connector>())
        {
            if (connector.Mates is not { } mate || Find(mate) is not Connector) continue;
            if (_mates.ContainsKey(connector.Designator) || _mates.ContainsKey(mate)) continue;
            if (mate == connector.Designator) continue;
            _mates[connector.Designator] = mate;
            _mates[mate] = connector.Designator;
        }
    }

    private bool IsInside(Attachment attachment) =>
        Find(attachment.Device.Part) is { } device && IsDevice(device) && Find(attachment.Contact.Part) is Connector;

    private void FindAttachments()
    {
        foreach (var attachment in Panel.Attachments.Where(IsInside))
        {
            AddAttached(attachment.Device, attachment.Contact);
            AddAttached(attachment.Contact, attachment.Device);
        }
    }

    private void AddAttached(TerminalId from, TerminalId to)
    {
        if (!_attached.TryGetValue(from, out var list)) _attached[from] = list = [];
        if (!list.Contains(to)) list.Add(to);
    }

    private ImmutableArray<Unit> FindUnits()
    {
        var sets = new DisjointSets<string>(StringComparer.Ordinal);
        foreach (var attachment in Panel.Attachments.Where(IsInside)) sets.Join(attachment.Device.Part, attachment.Contact.Part);
        var members = new Dictionary<string, List<Part>>(StringComparer.Ordinal);
        foreach (var part in Panel.Parts)
        {
            if (!sets.Contains(part.Designator)) continue;
            var root = sets.Find(part.Designator);
            if (!members.TryGetValue(root, out var list)) members[root] = list = [];
            list.Add(part);
        }

        var units = ImmutableArray.CreateBuilder<Unit>();
        foreach (var list in members.Values.OrderBy(l => Panel.Parts.IndexOf(l[0])))
        {
            var connectors = list.OfType<Connector>().ToImmutableArray();
            foreach (var connector in connectors) _unitConnectors.Add(connector.Designator);
            units.Add(new Unit(units.Count, connectors, [.. list.Where(p => p is not Connector)]));
        }

        return units.ToImmutable();
    }

    private void AddWires()
    {
        foreach (var wire in Panel.Wires) Add(wire.From, wire.To, wire, null, "");
    }

    /// <summary>What a made unit joins to its terminal strip: not wires of the harness, so they may meet on their way.</summary>
    private void AddLooseAttachments()
    {
        foreach (var attachment in Panel.Attachments)
        {
            if (!IsInside(attachment)) Add(attachment.Device, attachment.Contact, null, null, "", isBranch: true);
        }
    }

    /// <summary>Plugs between two units, and between two connectors that both carry wires, are connections to draw.</summary>
    private void AddMatings()
    {
        foreach (var connector in Panel.Parts.OfType<Connector>())
        {
            if (MateOf(connector.Designator) is not { } mate || string.CompareOrdinal(connector.Designator, mate) > 0) continue;
            if (IsUnitConnector(connector.Designator) != IsUnitConnector(mate)) continue;
            foreach (var terminal in connector.Terminals)
            {
                var here = connector.At(terminal.Name);
                if (MatedContact(here) is not { } there || !IsUsed(here) || !IsUsed(there)) continue;
                Add(here, there, null, null, "mated");
                _drawnMatings.Add(connector.Designator);
                _drawnMatings.Add(mate);
            }
        }
    }

    private bool IsUsed(TerminalId terminal) => AttachedTo(terminal).Count > 0 || EdgesAt(terminal).Count > 0;

    private void AddJumpers()
    {
        foreach (var strip in Panel.Parts.OfType<TerminalStrip>())
        {
            foreach (var group in strip.Jumpers)
            {
                for (var i = 1; i < group.Length; i++) Add(strip.At(group[i - 1]), strip.At(group[i]), null, null, "jumper");
            }
        }
    }

    /// <summary>Draws of a net only what the wires leave in pieces.</summary>
    private void AddNets()
    {
        var sets = new DisjointSets<TerminalId>();
        foreach (var edge in _edges) sets.Join(PlaceOf(edge.A), PlaceOf(edge.B));
        foreach (var net in Panel.Nets)
        {
            var members = net.Members.Select(m => m.Terminal).Where(t => Find(t.Part) is not null).Distinct().ToList();
            if (members.Count < 2) continue;
            var home = members.OrderBy(HomeRank).ThenBy(members.IndexOf).First();
            foreach (var member in members)
            {
                if (sets.AreJoined(PlaceOf(home), PlaceOf(member))) continue;
                sets.Join(PlaceOf(home), PlaceOf(member));
                Add(home, member, null, net.Name, "", isBranch: true);
            }
        }
    }

    /// <summary>Where a net is at home: at its supply, else its board, else its strip.</summary>
    public int HomeRank(TerminalId terminal) => Find(terminal.Part) is not { } part ? 4
        : part is Supply ? 0
        : part is Board ? 1
        : part is TerminalStrip ? 2
        : part is Splice ? 3 : 4;

    private void NameEdges()
    {
        var netOf = new Dictionary<TerminalId, string>();
        foreach (var net in Panel.Nets)
        {
            foreach (var member in net.Members) netOf.TryAdd(member.Terminal, net.Name);
        }

        foreach (var edge in _edges) edge.Net ??= netOf.GetValueOrDefault(edge.A) ?? netOf.GetValueOrDefault(edge.B);
    }

    private void Add(TerminalId a, TerminalId b, Wire? wire, string? net, string remark, bool isBranch = false)
    {
        if (Find(a.Part) is null || Find(b.Part) is null) return;
        var edge = new WireEdge(_edges.Count, a, b, wire, net) { Remark = remark, IsBranch = isBranch };
        _edges.Add(edge);
        AddAt(PlaceOf(a), edge);
        if (PlaceOf(a) != PlaceOf(b)) AddAt(PlaceOf(b), edge);
    }

    private void AddAt(TerminalId place, WireEdge edge)
    {
        if (!_edgesAt.TryGetValue(place, out var list)) _edgesAt[place] = list = [];
        list.Add(edge);
    }
}
