using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Model;

namespace Schematic.Layout.Schematics;

/// <summary>
/// Fills sheet after sheet: blocks of a unit in their order, then everything that is wired to them as far as there is room.
/// What does not fit waits for the next sheet; its wires become references.
/// </summary>
internal sealed class Paginator
{
    private const double UnitHead = 10;
    private const double BoxHead = 15;
    private const double Boundless = 2000;
    private const double UnitWidth = 90;
    private const double ColumnWidth = 85;

    /// <summary>Room kept in a full column for a line that passes the unit, and for the words at its foot.</summary>
    private const double Reserve = 10;

    private readonly CircuitMap _map;
    private readonly BoxMm _content;
    private readonly List<Atom> _pending;
    private readonly Dictionary<TerminalId, Atom> _atomAt = [];
    private readonly HashSet<Atom> _waiting;
    private readonly HashSet<string> _shown = new(StringComparer.Ordinal);

    public Paginator(CircuitMap map, BoxMm content)
    {
        (_map, _content) = (map, content);
        _pending = [.. new AtomList(map, content.Height).Atoms];
        _waiting = [.. _pending];
        foreach (var atom in _pending)
        {
            foreach (var place in atom.Places) _atomAt.TryAdd(place, atom);
        }
    }

    /// <summary>All sheets in order.</summary>
    public IReadOnlyList<SheetPlan> Run()
    {
        var plans = new List<SheetPlan>();
        var composer = new SheetComposer(_map, _content);
        while (_pending.Count > 0)
        {
            var chosen = Choose(plans.Count + 1);
            var plan = Compose(composer, chosen);
            while (plan is null && chosen.Count > 1)
            {
                var surplus = Math.Max(1, chosen.Count / 4);
                chosen.RemoveRange(chosen.Count - surplus, surplus);
                plan = Compose(composer, chosen);
            }

            // A single thing that is larger than the sheet is drawn all the same, over its edge.
            plan ??= Compose(new SheetComposer(_map, _content with { Right = _content.Left + Boundless, Bottom = _content.Top + Boundless }), chosen)!;
            foreach (var atom in chosen) _waiting.Remove(atom);
            _pending.RemoveAll(a => !_waiting.Contains(a));
            foreach (var item in plan.Items.OfType<EquipmentItem>()) _shown.Add(item.Part.Designator);
            plans.Add(plan);
        }

        return plans;
    }

    /// <summary>The atoms for the next sheet, most important first.</summary>
    private List<Atom> Choose(int sheet)
    {
        var open = _pending.Where(a => (a.Hint?.Sheet ?? 0) <= sheet).ToList();
        if (open.Count == 0) open = _pending.ToList();
        var chosen = new List<Atom>();
        var taken = new HashSet<Atom>();
        var allowed = open.ToHashSet();
        var unitHeight = AddUnits(open, chosen, taken);
        var budget = _content.Height * (unitHeight > 0
            ? Math.Clamp((_content.Width - UnitWidth) / ColumnWidth, 0.4, 3)
            : Math.Clamp(_content.Width / ColumnWidth, 0.8, 4));
        var heads = new HashSet<string>(StringComparer.Ordinal);
        Grow(chosen, taken, allowed, heads, ref budget, 0);
        foreach (var seed in open.Where(a => a is not UnitAtom))
        {
            if (taken.Contains(seed) || (unitHeight > 0.5 * _content.Height && open.Any(a => a is UnitAtom && !taken.Contains(a)))) continue;
            var start = chosen.Count;
            if (!TryAdd(seed, chosen, taken, heads, ref budget)) break;
            Grow(chosen, taken, allowed, heads, ref budget, start);
        }

        return chosen;
    }

    private double AddUnits(List<Atom> open, List<Atom> chosen, HashSet<Atom> taken)
    {
        var height = 0.0;
        UnitPlan? plan = null;
        foreach (var atom in open.OfType<UnitAtom>())
        {
            var head = atom.Plan == plan ? 0 : UnitHead;
            if (plan is not null && atom.Plan != plan && !FitsWhole(open, atom.Plan, height)) break;
            if (chosen.Count > 0 && height + head + atom.Height > _content.Height - Reserve) break;
            height += head + atom.Height;
            plan = atom.Plan;
            chosen.Add(atom);
            taken.Add(atom);
        }

        return height;
    }

    private bool FitsWhole(List<Atom> open, UnitPlan plan, double height) =>
        height + UnitHead + open.OfType<UnitAtom>().Where(a => a.Plan == plan).Sum(a => a.Height) <= _content.Height - Reserve;

    /// <summary>Takes in what is wired to the chosen, nearest first.</summary>
    private void Grow(List<Atom> chosen, HashSet<Atom> taken, HashSet<Atom> allowed, HashSet<string> heads, ref double budget, int start)
    {
        for (var i = start; i < chosen.Count; i++)
        {
            foreach (var place in chosen[i].Places)
            {
                var edges = _map.EdgesAt(place);
                foreach (var edge in edges)
                {
                    foreach (var end in (ReadOnlySpan<TerminalId>)[_map.PlaceOf(edge.A), _map.PlaceOf(edge.B)])
                    {
                        if (_atomAt.TryGetValue(end, out var next) && next is not UnitAtom && allowed.Contains(next))
                            TryAdd(next, chosen, taken, heads, ref budget);
                    }
                }
            }
        }
    }

    private bool TryAdd(Atom atom, List<Atom> chosen, HashSet<Atom> taken, HashSet<string> heads, ref double budget)
    {
        if (taken.Contains(atom)) return true;
        var room = atom.Height;
        var boxes = new List<string>();
        if (atom is TerminalAtom terminal) boxes.Add(terminal.Part.Designator);
        foreach (var place in atom.Places.SelectMany(_map.EdgesAt).SelectMany(e => new[] { _map.PlaceOf(e.A), _map.PlaceOf(e.B) }))
        {
            if (!_map.IsRepeated(place)) continue;
            room += Metrics.RowPitch;
            boxes.AddRange([place.Part, place.ToString()]);
        }

        room += boxes.Distinct().Count(b => !heads.Contains(b) && !b.Contains(':', StringComparison.Ordinal)) * BoxHead;
        if (room > budget && chosen.Count > 0) return false;
        heads.UnionWith(boxes);
        budget -= room;
        chosen.Add(atom);
        taken.Add(atom);
        return true;
    }

    private SheetPlan? Compose(SheetComposer composer, List<Atom> chosen)
    {
        var views = Views(chosen);
        return composer.Compose(Items(chosen, views), views);
    }

    /// <summary>Which edges the sheet shows at terminals that are drawn on several sheets.</summary>
    private SortedDictionary<TerminalId, HashSet<WireEdge>> Views(List<Atom> chosen)
    {
        var views = new SortedDictionary<TerminalId, HashSet<WireEdge>>();
        void See(TerminalId place, WireEdge edge)
        {
            if (!_map.IsRepeated(place)) return;
            if (!views.TryGetValue(place, out var edges)) views[place] = edges = [];
            edges.Add(edge);
        }

        foreach (var atom in chosen)
        {
            foreach (var edge in atom is LinkAtom link ? [link.Edge] : atom.Places.SelectMany(_map.EdgesAt))
            {
                See(_map.PlaceOf(edge.A), edge);
                See(_map.PlaceOf(edge.B), edge);
            }
        }

        return views;
    }

    private List<SheetItem> Items(List<Atom> chosen, SortedDictionary<TerminalId, HashSet<WireEdge>> views)
    {
        var items = new List<SheetItem>();
        foreach (var group in chosen.OfType<UnitAtom>().GroupBy(a => a.Plan))
        {
            var atoms = group.OrderBy(a => a.Order).ToList();
            var blocks = atoms.Where(a => a.Block is not null).Select(a => a.Block!).ToImmutableArray();
            var all = _pending.OfType<UnitAtom>().Where(a => a.Plan == group.Key).ToList();
            var isFirst = group.Key.Blocks.IsEmpty || blocks.Contains(group.Key.Blocks[0]);
            items.Add(new UnitItem(
                _map, group.Key, blocks, [.. atoms.Where(a => a.Bare is not null).Select(a => a.Bare!.Value)], isFirst, all.Count == atoms.Count)
            { Hint = atoms[0].Hint });
        }

        foreach (var atom in chosen.OfType<LooseAtom>().OrderBy(a => a.Order)) items.Add(new BlockItem(_map, atom.Block) { Hint = atom.Hint });
        items.AddRange(Equipment(chosen, views.Keys));
        return items;
    }

    private IEnumerable<EquipmentItem> Equipment(List<Atom> chosen, IEnumerable<TerminalId> repeated)
    {
        var terminals = new Dictionary<Part, List<TerminalId>>();
        foreach (var atom in chosen.OfType<TerminalAtom>().OrderBy(a => a.Order))
        {
            if (!terminals.TryGetValue(atom.Part, out var list)) terminals[atom.Part] = list = [];
            if (atom.Terminal is { } terminal) list.Add(terminal);
        }

        foreach (var place in repeated)
        {
            var part = _map.Find(place.Part)!;
            if (!terminals.TryGetValue(part, out var list)) terminals[part] = list = [];
            list.Add(place);
        }

        foreach (var (part, list) in terminals)
        {
            var unused = _shown.Contains(part.Designator) ? [] : UnusedOf(part);
            var ordered = part.Terminals.Select(t => part.At(t.Name)).Where(list.Contains);
            yield return new EquipmentItem(_map, part, ordered, unused) { Hint = _map.HintOf(part.Designator) };
        }
    }

    private ImmutableArray<TerminalId> UnusedOf(Part part) =>
        [.. part.Terminals.Select(t => part.At(t.Name)).Where(t => _map.EdgesAt(_map.PlaceOf(t)).Count == 0)];
}
