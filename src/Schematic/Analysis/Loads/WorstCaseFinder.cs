using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.Quantities;
using Schematic.Analysis.States;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>
/// Finds the worst of every quantity over all reachable positions. Wires are first taken at the ambient temperature; the
/// currents found so give sizes and copper temperatures for a second, final round.
/// </summary>
public sealed class WorstCaseFinder
{
    /// <summary>Up to so many electrically different cases are solved one by one.</summary>
    public const int MostCases = 512;

    /// <summary>Up to so many of its own are solved of a part that has to be looked at by itself.</summary>
    public const int MostCasesOfRegion = 1024;

    private readonly AnalysisContext _context;
    private readonly StateSpace _space;
    private readonly Circuit _circuit;
    private readonly Dictionary<Element, int> _placeOf = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<Diagram, StateStep?> _words = [];
    private readonly LoadStanding _standing;
    private readonly GuardedWires _guarded;
    private readonly WireSizes _sizes;
    private readonly double _ambient;

    private WorstCaseFinder(AnalysisContext context, StateSpace space)
    {
        (_context, _space, _circuit) = (context, space, space.Circuit.Circuit);
        foreach (var element in _circuit.Elements) _placeOf.Add(element, _placeOf.Count);
        _standing = new LoadStanding(space);
        _guarded = new GuardedWires(context, _circuit);
        _sizes = new WireSizes(context, _circuit.Supplies.Select(s => s.Volts).DefaultIfEmpty(0).Max());
        _ambient = context.Panel.Limits.AmbientCelsius;
    }

    private Panel Panel => _context.Panel;

    /// <summary>The wires as the file states them: a gauge that was chosen before is chosen anew.</summary>
    private ImmutableArray<Wire> StatedWires =>
        [.. Panel.Wires.Select(w => w.IsGaugeChosen ? w with { Gauge = null, IsGaugeChosen = false } : w)];

    /// <summary>Finds them.</summary>
    public static WorstCases Find(AnalysisContext context, StateSpace space) => new WorstCaseFinder(context, space).Find();

    private WorstCases Find()
    {
        var stated = StatedWires;
        var cool = new WiredNetwork(_context, _circuit, stated, _ => _ambient);
        var cases = SwitchingCases.Find(_space, MostCases, _ => true);
        var regions = cases is null ? new RegionCases(_space, cool, MostCasesOfRegion) : null;
        Tally Run(WiredNetwork network)
        {
            var tally = new Tally(_circuit, _placeOf, _standing, Panel.Wires.Length);
            if (regions is not null) regions.Add(tally, network, _context.Positions.Judge);
            else foreach (var state in cases!.Value) tally.Add(network.Solve(state));
            return tally;
        }

        var first = Run(cool);
        ImmutableArray<Wire> wires = [.. stated.Select((w, i) => _sizes.Sized(w, first.Wires[i].Value))];
        double[] celsius = [.. wires.Select((w, i) => CopperCelsius(w, first.Wires[i].Value))];
        var network = new WiredNetwork(_context, _circuit, wires, i => celsius[i]);
        var worst = Run(network);
        ImmutableArray<(SwitchingCase Case, NetworkPart? Part)> all = regions is null ? [.. cases!.Value.Select(c => (c, (NetworkPart?)null))] : [.. regions.All];
        return new WorstCases(
            [.. wires.Select((w, i) => new WireLoad(w, Extreme(worst.Wires[i]), _sizes.CapacityOf(w), celsius[i], w is { Gauge: not null, LengthMm: not null } ? network.WireOhms[i] : 0) { SizingMethod = w.IsGaugeChosen ? _sizes.Method(stated[i], first.Wires[i].Value) : null })],
            [.. _circuit.Contacts.Where(c => !c.IsInside && worst.ContactAmps[c.Index].Case is not null).Select(c => ContactLoad(c, worst))],
            [.. _circuit.Protectors.Select((p, i) => ProtectorLoad(p, worst.Protectors[i], wires))],
            [.. _circuit.Supplies.Select(s => SupplyLoad(s, worst, network, all, wires))],
            [.. _circuit.Elements.Where(e => e.IsLoad || e.Kind == ElementKind.Resistor).GroupBy(e => e.Way is null ? (object)e : e.Part, ReferenceEqualityComparer.Instance).Select(g => Level(g, worst))],
            all.Length)
        {
            IsBound = cases is null,
            RegionsLeftOut = regions?.LeftOut ?? 0,
            Outputs = [.. worst.Outputs.Parts.Select((p, i) => new OutputLoad(p, Extreme(worst.Outputs.Amps[i]), Extreme(worst.Outputs.Forward[i]), Extreme(worst.Outputs.Backward[i])))],
            Wipers = [.. _circuit.Contacts.Where(c => c.IsInside && !_circuit.InnerNodes.ContainsKey(c.Throw) && worst.ContactAmps[c.Index].Case is not null).Select(c => ContactLoad(c, worst))],
        };
    }

    private double CopperCelsius(Wire wire, double amps) => _sizes.CapacityOf(wire) is { } capacity
        ? WireHeating.ConservativeCelsius(_ambient, Panel.Limits.InsulationCelsius, Math.Min(amps, capacity.Amps), capacity.Amps)
        : _ambient;

    private ContactLoad ContactLoad(Contact contact, Tally worst) => new(
        contact,
        contact.Part.Rating,
        Extreme(worst.ContactAmps[contact.Index]),
        Extreme(worst.ContactRequired[contact.Index]),
        Extreme(worst.ContactPeak[contact.Index]),
        [.. worst.ContactLoads[contact.Index].Where(l => _circuit.Elements[l].Kind != ElementKind.Pull).Select(l => _circuit.Elements[l].Name).Distinct()]);

    private ProtectorLoad ProtectorLoad(Protector part, Peak amps, ImmutableArray<Wire> wires)
    {
        var (thinnest, capacity) = Weakest(_guarded.Behind(part), wires);
        return new ProtectorLoad(
            part, part.RatedAmps, Extreme(amps), thinnest, capacity,
            ProtectorSelection.Choose(amps.Value, capacity?.Amps ?? double.PositiveInfinity, part.RatedAmps is { } fitted ? [fitted] : []));
    }

    private (Wire? Wire, WireCapacity? Capacity) Weakest(IReadOnlySet<string> names, ImmutableArray<Wire> wires) => wires
        .Where(w => names.Contains(w.Designator))
        .Select(w => (Wire: (Wire?)w, Capacity: _sizes.CapacityOf(w)))
        .Where(w => w.Capacity is not null)
        .OrderBy(w => w.Capacity!.Amps).ThenBy(w => w.Wire!.Designator, NaturalOrder.Comparer)
        .FirstOrDefault();

    private SupplyLoad SupplyLoad(
        Element element, Tally worst, WiredNetwork network, ImmutableArray<(SwitchingCase Case, NetworkPart? Part)> cases, ImmutableArray<Wire> wires)
    {
        var supply = element.Source!;
        var amps = worst.Elements[_placeOf[element]];
        var search = new SettingSearch(network, _placeOf, _standing, cases, supply);
        var warm = search.Find(_ambient, isWarm: true);
        var guard = _guarded.OfWholeFeed(element, _circuit.Protectors);
        return new SupplyLoad(
            supply, Extreme(amps), amps.Case is null ? [] : Shares(network.Solve(amps.Case), element),
            Extreme(worst.SupplyPeak[_placeOf[element]]), warm, search.Find(_ambient, isWarm: false),
            ProtectorSelection.Choose(amps.Value, Weakest(guard, wires).Capacity?.Amps ?? double.PositiveInfinity, FittedIn(amps.Value, worst)))
        {
            Feeds = search.Feeds(),
        };
    }

    /// <summary>The ratings of protectors that carry all of a supply's current: the feed has its fuse already.</summary>
    private IEnumerable<double> FittedIn(double amps, Tally worst)
    {
        const double alike = 1e-3;
        return _circuit.Protectors.Where((_, i) => amps > 0 && Math.Abs(worst.Protectors[i].Value - amps) <= alike * amps).Select(p => p.RatedAmps).OfType<double>();
    }

    private ImmutableArray<(string Load, double Amps)> Shares(CaseSolution solution, Element supply)
    {
        var look = new CaseLook(_circuit, _placeOf, _standing, solution);
        return
        [
            .. look.FedBy(supply).Select(l => (_circuit.Elements[l].Name, look.AmpsOf(l)))
                .OrderByDescending(s => Math.Round(s.Item2, 9)).ThenBy(s => s.Name, NaturalOrder.Comparer),
        ];
    }

    /// <summary>Of a part that varies the way in which it comes nearest to what it stands, or carries most.</summary>
    private LoadLevel Level(IEnumerable<Element> ways, Tally worst) => ways.Select(w => Level(w, worst))
        .MaxBy(l => l.Need.MostVolts is { } stands ? (l.MostVolts?.Value ?? 0) / stands : l.MostAmps?.Value ?? 0)!;

    private LoadLevel Level(Element load, Tally worst)
    {
        var i = _placeOf[load];
        return new LoadLevel(
            load, LoadNeed.Of(load, _ambient),
            worst.LeastVolts[i].Case is null ? null : Turned(worst.LeastVolts[i]),
            Found(worst.MostVolts[i]), Found(worst.Elements[i]), Found(worst.Drops[i]),
            AllowableDrop.Volts(Panel.Limits, worst.DropSupplyVolts[i]))
        {
            IsForward = worst.IsForward[i],
            IsBackward = worst.IsBackward[i],
            HeldVolts = worst.HeldVolts[i].Case is null ? null : Turned(worst.HeldVolts[i]),
        };
    }

    private Extreme Turned(Peak peak) => new(-peak.Value, Extreme(peak).State) { Shown = -peak.Shown };

    private Extreme? Found(Peak peak) => peak.Case is null ? null : Extreme(peak);

    private Extreme Extreme(Peak peak)
    {
        if (peak.Case is null) return new Extreme(peak.Value, null);
        if (!_words.TryGetValue(peak.Case.When, out var words))
        {
            words = _space.NearestState(peak.Case.When) is { } state ? MoveText.Describe(_space.Circuit.Variables, state) : null;
            _words[peak.Case.When] = words;
        }

        return new Extreme(peak.Value, words) { Shown = peak.Shown };
    }
}
