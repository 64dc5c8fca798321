using Schematic.Model;

namespace Schematic.Layout.Schematics;

/// <summary>Everything that is to be drawn, in the order in which it asks for a place.</summary>
internal sealed class AtomList
{
    private readonly CircuitMap _map;
    private readonly List<Atom> _atoms = [];
    /// <summary>Room for the unit's name, the head of a gang and lines that pass the unit.</summary>
    private const double HeadsAndPasses = 45;

    private readonly double _maxHeight;

    public AtomList(CircuitMap map, double sheetHeight)
    {
        _map = map;
        _maxHeight = sheetHeight - HeadsAndPasses;
        foreach (var unit in map.Units) AddUnit(unit);
        AddLoose();
        AddEquipment();
        foreach (var edge in map.Edges.Where(e => map.IsRepeated(map.PlaceOf(e.A)) && map.IsRepeated(map.PlaceOf(e.B))))
            _atoms.Add(new LinkAtom(_atoms.Count, edge) { Height = 2 * Metrics.RowPitch });
    }

    public IReadOnlyList<Atom> Atoms => _atoms;

    private void AddUnit(Unit unit)
    {
        var plan = new UnitPlan(_map, unit, _maxHeight);
        foreach (var block in plan.Blocks)
        {
            block.Arrange();
            var places = block.Rows.SelectMany(r => r.Figure.Ends)
                .Where(e => plan.NodeOf(e.Terminal)?.Home.End == e).SelectMany(e => plan.NodeOf(e.Terminal)!.Contacts);
            _atoms.Add(new UnitAtom(_atoms.Count, plan, block, null)
            {
                Places = [.. places],
                Height = block.Height + Metrics.Up(block.GapBefore),
                Hint = HintOf(block.Rows.Select(r => r.Figure.Part.Designator).Concat(unit.Connectors.Select(c => c.Designator))),
            });
        }

        foreach (var contact in plan.Bare)
        {
            _atoms.Add(new UnitAtom(_atoms.Count, plan, null, contact)
            {
                Places = [contact],
                Height = Metrics.RowPitch,
                Hint = HintOf(unit.Connectors.Select(c => c.Designator)),
            });
        }
    }

    private void AddLoose()
    {
        var factory = new BlockFactory(_map);
        var inUnits = _map.Units.SelectMany(u => u.Devices).Select(d => d.Designator).ToHashSet(StringComparer.Ordinal);
        var gangs = new HashSet<string>(StringComparer.Ordinal);
        foreach (var part in _map.Panel.Parts.Where(p => CircuitMap.IsDevice(p) && !inUnits.Contains(p.Designator)))
        {
            if (part is Switch pole)
            {
                if (!gangs.Add(pole.Gang)) continue;
                var gang = _map.Panel.Parts.OfType<Switch>().Where(s => s.Gang == pole.Gang && !inUnits.Contains(s.Designator));
                foreach (var block in factory.OfLooseGang(gang, _maxHeight)) AddLoose(block);
            }
            else
            {
                foreach (var block in factory.OfLoose(part)) AddLoose(block);
            }
        }
    }

    private void AddLoose(Block block)
    {
        block.Arrange();
        _atoms.Add(new LooseAtom(_atoms.Count, block)
        {
            Places = [.. block.Rows.SelectMany(r => r.Figure.Ends).Select(e => e.Terminal)],
            Height = block.Height + Metrics.ItemGap,
            Hint = HintOf(block.Rows.Select(r => r.Figure.Part.Designator)),
        });
    }

    private void AddEquipment()
    {
        foreach (var part in _map.Panel.Parts.Where(p => !CircuitMap.IsDevice(p) && !_map.IsUnitConnector(p.Designator)))
        {
            var used = part.Terminals.Select(t => part.At(t.Name)).Where(t => IsDrawnHere(t) && _map.EdgesAt(t).Count > 0).ToList();
            foreach (var terminal in used.Where(t => !_map.IsRepeated(t)))
            {
                _atoms.Add(new TerminalAtom(_atoms.Count, part, terminal)
                {
                    Places = [terminal],
                    Height = Metrics.RowPitch * (CircuitMap.IsTwoSided(part) ? (_map.EdgesAt(terminal).Count + 1) / 2 : _map.EdgesAt(terminal).Count),
                    Hint = HintOf([part.Designator]),
                });
            }

            if (used.Count == 0 && !IsShownWithItsMate(part)) _atoms.Add(new TerminalAtom(_atoms.Count, part, null) { Height = 15, Hint = HintOf([part.Designator]) });
        }
    }

    private bool IsDrawnHere(TerminalId terminal) => _map.PlaceOf(terminal) == terminal;

    /// <summary>A plug is drawn on the contacts it meets.</summary>
    private bool IsShownWithItsMate(Part part) =>
        part is Connector && _map.MateOf(part.Designator) is { } mate
        && (_map.IsUnitConnector(mate) || _map.Find(mate)!.Terminals.Any(t => _map.EdgesAt(new TerminalId(mate, t.Name)).Count > 0));

    private PlaceHint? HintOf(IEnumerable<string> designators) =>
        designators.Select(d => _map.HintOf(d)).FirstOrDefault(h => h is not null);
}
