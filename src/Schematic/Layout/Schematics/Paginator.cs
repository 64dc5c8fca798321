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
    private const int CrowdedTerminal = 10;
    private const double UnitHead = 10;

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
            var plan = composer.Compose(Items(chosen));
            while (plan is null && chosen.Count > 1)
            {
                chosen.RemoveRange(chosen.Count - Math.Max(1, chosen.Count / 8), Math.Max(1, chosen.Count / 8));
                plan = composer.Compose(Items(chosen));
            }

            if (plan is null) throw new InvalidOperationException($"The sheet is too small to draw {chosen[0]}.");
            foreach (var atom in chosen) _waiting.Remove(atom);
            _pending.RemoveAll(a => !_waiting.Contains(a));
            foreach (var part in chosen.OfType<TerminalAtom>()) _shown.Add(part.Part.Designator);
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
        var budget = (unitHeight > 0 ? 1.7 : 2.4) * _content.Height;
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

    /// <summary>Takes in what is wired to the chosen, nearest first; crowded terminals lead no further.</summary>
    private void Grow(List<Atom> chosen, HashSet<Atom> taken, HashSet<Atom> allowed, HashSet<string> heads, ref double budget, int start)
    {
        for (var i = start; i < chosen.Count; i++)
        {
            foreach (var place in chosen[i].Places)
            {
                var edges = _map.EdgesAt(place);
                if (chosen[i] is TerminalAtom && edges.Count > CrowdedTerminal) continue;
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

    private static bool TryAdd(Atom atom, List<Atom> chosen, HashSet<Atom> taken, HashSet<string> heads, ref double budget)
    {
        if (taken.Contains(atom)) return true;
        var head = atom is TerminalAtom terminal && !heads.Contains(terminal.Part.Designator) ? 15 : 0;
        if (atom.Height + head > budget && chosen.Count > 0) return false;
        if (atom is TerminalAtom added) heads.Add(added.Part.Designator);
        budget -= atom.Height + head;
        chosen.Add(atom);
        taken.Add(atom);
        return true;
    }

    private List<SheetItem> Items(List<Atom> chosen)
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

        foreach (var atom in chosen.OfType<LooseAtom>().OrderBy(a => a.Order)) items.Add(new BlockItem(atom.Block) { Hint = atom.Hint });
        foreach (var group in chosen.OfType<TerminalAtom>().OrderBy(a => a.Order).GroupBy(a => a.Part))
        {
            var unused = _shown.Contains(group.Key.Designator) ? [] : UnusedOf(group.Key);
            items.Add(new EquipmentItem(
                _map, group.Key, group.Where(a => a.Terminal is not null).Select(a => a.Terminal!.Value), unused)
            { Hint = group.First().Hint });
        }

        return items;
    }

    private ImmutableArray<TerminalId> UnusedOf(Part part) =>
        [.. part.Terminals.Select(t => part.At(t.Name)).Where(t => _map.EdgesAt(_map.PlaceOf(t)).Count == 0)];
}
