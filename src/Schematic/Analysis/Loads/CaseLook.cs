using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.Quantities;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>
/// What can be said about one solved case: which loads are fed, what a contact switches, what wires lose. Elements are
/// named by their place in the circuit.
/// </summary>
internal sealed class CaseLook
{
    private const double NoAmps = 1e-6;

    private readonly Circuit _circuit;
    private readonly CaseSolution _solution;
    private readonly LoadStanding _standing;
    private readonly IReadOnlyDictionary<Element, int> _placeOf;
    private readonly Lazy<DisjointSets> _joined;

    /// <summary>Looks at a solution; <paramref name="placeOf"/> finds elements by reference.</summary>
    public CaseLook(Circuit circuit, IReadOnlyDictionary<Element, int> placeOf, LoadStanding standing, CaseSolution solution)
    {
        (_circuit, _placeOf, _standing, _solution) = (circuit, placeOf, standing, solution);
        _joined = new Lazy<DisjointSets>(JoinClosed);
    }

    /// <summary>Whether a load is fed so that it should work; a resistor when current passes.</summary>
    public bool IsFed(int element)
    {
        var load = _circuit.Elements[element];
        return load.Kind == ElementKind.Resistor
            ? AmpsOf(element) > NoAmps
            : _standing.IsFed(load, _solution.Case, _solution.ElementVolts(load), _solution.ElementAmps(element));
    }

    /// <summary>Whether a coil is only held.</summary>
    public bool IsHeld(int element) => _standing.IsHeld(_circuit.Elements[element], _solution.Case);

    /// <summary>
    /// Whether a load gets enough for the setting of its supply to matter to it: half of what it is rated for (own choice).
    /// Its state at the stated setting says nothing about another one.
    /// </summary>
    public bool IsFedAtAnySetting(int element)
    {
        var load = _circuit.Elements[element];
        return LoadLimits.FedFraction(load, _solution.ElementVolts(load), _solution.ElementAmps(element)) >= LoadLimits.LampFraction && !IsHeld(element);
    }

    /// <summary>
    /// Volts that wires and closed contacts take between a load and its supply, there and back, with the supply's own voltage;
    /// null where anything else lies between.
    /// </summary>
    public (double Drop, double SupplyVolts)? RunDrop(Element load)
    {
        foreach (var supply in _circuit.Supplies)
        {
            var isTurned = !AreJoined(load.FromNode, supply.FromNode);
            var (plus, minus) = isTurned ? (load.To, load.From) : (load.From, load.To);
            var (plusNode, minusNode) = isTurned ? (load.ToNode, load.FromNode) : (load.FromNode, load.ToNode);
            if (!AreJoined(plusNode, supply.FromNode) || !AreJoined(minusNode, supply.ToNode)) continue;
            if (_solution.Volts(supply.From, plus) is not { } there || _solution.Volts(minus, supply.To) is not { } back) continue;
            return (Math.Abs(there) + Math.Abs(back), supply.Volts);
        }

        return null;
    }

    /// <summary>
    /// What a closed contact needs: the rating for its loads, the peak when its lamps are cold, and the loads themselves.
    /// Where the contact shares them with another it is counted with its share of the current.
    /// </summary>
    public (double Required, double Peak, ImmutableArray<int> Loads) Needs(Contact contact, double volts)
    {
        var amps = _solution.ContactAmps(contact);
        var loads = Downstream(contact);
        var sum = loads.Sum(AmpsOf);
        if (sum < NoAmps) return (SwitchDerating.Factor(SwitchLoadKind.Resistive, volts) * amps, amps, []);
        var factor = SwitchDerating.RequiredAmps(volts, loads.Select(l => (KindOf(l), AmpsOf(l)))) / sum;
        var share = Math.Min(1, amps / sum);
        return (amps * factor, amps + (share * loads.Sum(ColdExcess)), loads);
    }

    /// <summary>What a lamp that is lit takes beyond its steady current while it is cold.</summary>
    public double ColdExcess(int element)
    {
        var load = _circuit.Elements[element];
        return load.Part is Lamp { HotOhms: { } hot } && AmpsOf(element) > NoAmps
            ? LampInrush.PeakAmps(Math.Abs(_solution.ElementVolts(load)), hot) - AmpsOf(element)
            : 0;
    }

    /// <summary>The loads that a supply feeds, contacts counting as joints, and diodes and resistors that carry current; none where it gives none.</summary>
    public ImmutableArray<int> FedBy(Element supply) => _solution.ElementAmps(_placeOf[supply]) <= NoAmps ? [] :
    [
        .. Flood(supply.FromNode, null, e => e.Kind is ElementKind.Diode or ElementKind.Resistor && AmpsOf(_placeOf[e]) > NoAmps, stopAt: -1, stopsAtSupply: false)!.Value
            .Where(l => _circuit.Elements[l].IsLoad && AmpsOf(l) > NoAmps),
    ];

    /// <summary>Amperes through an element without sign.</summary>
    public double AmpsOf(int element) => Math.Abs(_solution.ElementAmps(element));

    private SwitchLoadKind KindOf(int element) => _circuit.Elements[element].Kind switch
    {
        ElementKind.Lamp => SwitchLoadKind.Lamp,
        ElementKind.Coil => SwitchLoadKind.Inductive,
        ElementKind.Consumer when _circuit.Elements[element].Part is Transformer => SwitchLoadKind.Inductive,
        ElementKind.Consumer when _circuit.Elements[element].Part is Consumer consumer => consumer.Kind == ConsumerKind.Motor ? SwitchLoadKind.Motor
            : consumer.IsInductive ? SwitchLoadKind.Inductive : SwitchLoadKind.Resistive,
        _ => SwitchLoadKind.Resistive,
    };

    /// <summary>The loads on the side of a contact that does not lead straight back to a supply; both sides where both do.</summary>
    private ImmutableArray<int> Downstream(Contact contact)
    {
        if (LoadsAwayFromSupply(contact, contact.ThrowNode, contact.CommonNode) is { } beyond) return beyond;
        if (LoadsAwayFromSupply(contact, contact.CommonNode, contact.ThrowNode) is { } before) return before;
        return
        [
            .. Flood(contact.ThrowNode, contact, CarriesAsDiode, contact.CommonNode, stopsAtSupply: false)!.Value
                .Union(Flood(contact.CommonNode, contact, CarriesAsDiode, contact.ThrowNode, stopsAtSupply: false)!.Value),
        ];
    }

    private ImmutableArray<int>? LoadsAwayFromSupply(Contact contact, int start, int stopAt) =>
        Flood(start, contact, CarriesAsDiode, stopAt, stopsAtSupply: true);

    private bool CarriesAsDiode(Element element) => element.Kind == ElementKind.Diode && AmpsOf(_placeOf[element]) > NoAmps;

    /// <summary>
    /// Walks from a node over closed contacts and over elements that count as joints; gives what hangs on the way, or null at
    /// once when a supply does and <paramref name="stopsAtSupply"/>.
    /// </summary>
    private ImmutableArray<int>? Flood(int start, Contact? without, Func<Element, bool> isJoint, int stopAt, bool stopsAtSupply)
    {
        var seen = new HashSet<int> { start, stopAt, -1 };
        var waiting = new Queue<int>([start]);
        var loads = new SortedSet<int>();
        while (waiting.TryDequeue(out var node))
        {
            if (node < 0) continue;
            foreach (var element in _circuit.ElementsAt(node))
            {
                if (element.Kind == ElementKind.Supply && stopsAtSupply) return null;
                if (element.Kind is not (ElementKind.Diode or ElementKind.Supply)) loads.Add(_placeOf[element]);
                if (isJoint(element) && seen.Add(element.Other(node))) waiting.Enqueue(element.Other(node));
            }

            foreach (var contact in _circuit.ContactsAt(node))
            {
                if (contact.Index == without?.Index || !_solution.Case.Closed[contact.Index]) continue;
                if (seen.Add(contact.Other(node))) waiting.Enqueue(contact.Other(node));
            }
        }

        return [.. loads];
    }

    private bool AreJoined(int one, int other) =>
        one >= 0 && other >= 0 && _joined.Value.Find(one) == _joined.Value.Find(other);

    private DisjointSets JoinClosed()
    {
        var sets = new DisjointSets(_circuit.NodeCount);
        foreach (var contact in _circuit.Contacts.Where(c => _solution.Case.Closed[c.Index] && c.CommonNode >= 0 && c.ThrowNode >= 0))
            sets.Join(contact.CommonNode, contact.ThrowNode);
        return sets;
    }
}
