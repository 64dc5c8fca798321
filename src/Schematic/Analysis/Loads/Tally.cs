using Schematic.Analysis.Circuits;

namespace Schematic.Analysis.Loads;

/// <summary>The worst values over the cases added so far. Arrays are in the order of the panel's wires and the circuit's parts.</summary>
internal sealed class Tally
{
    private readonly Circuit _circuit;
    private readonly IReadOnlyDictionary<Element, int> _placeOf;
    /// <summary>Less than this is printed as nothing.</summary>
    private const double NoVolts = 0.005;

    private readonly LoadStanding _standing;
    private readonly double _volts;

    public Tally(Circuit circuit, IReadOnlyDictionary<Element, int> placeOf, LoadStanding standing, int wireCount)
    {
        (_circuit, _placeOf, _standing) = (circuit, placeOf, standing);
        _volts = circuit.Supplies.Select(s => s.Volts).DefaultIfEmpty(0).Max();
        Outputs = new OutputTally(circuit);
        Wires = new Peak[wireCount];
        Protectors = new Peak[circuit.Protectors.Length];
        ContactAmps = new Peak[circuit.Contacts.Length];
        ContactRequired = new Peak[circuit.Contacts.Length];
        ContactPeak = new Peak[circuit.Contacts.Length];
        ContactLoads = new SortedSet<int>[circuit.Contacts.Length];
        Elements = new Peak[circuit.Elements.Length];
        SupplyPeak = new Peak[circuit.Elements.Length];
        MostVolts = new Peak[circuit.Elements.Length];
        LeastVolts = new Peak[circuit.Elements.Length];
        HeldVolts = new Peak[circuit.Elements.Length];
        Drops = new Peak[circuit.Elements.Length];
        DropSupplyVolts = new double[circuit.Elements.Length];
        IsForward = new bool[circuit.Elements.Length];
        IsBackward = new bool[circuit.Elements.Length];
        for (var i = 0; i < ContactLoads.Length; i++) ContactLoads[i] = [];
    }

    /// <summary>What semiconductors get.</summary>
    public OutputTally Outputs { get; }

    /// <summary>Amperes in each wire.</summary>
    public Peak[] Wires { get; }

    /// <summary>Amperes through each protector.</summary>
    public Peak[] Protectors { get; }

    /// <summary>Amperes through each contact.</summary>
    public Peak[] ContactAmps { get; }

    /// <summary>The rating each contact needs.</summary>
    public Peak[] ContactRequired { get; }

    /// <summary>The current of each contact with cold lamps.</summary>
    public Peak[] ContactPeak { get; }

    /// <summary>The loads each contact switches.</summary>
    public SortedSet<int>[] ContactLoads { get; }

    /// <summary>Amperes through each element that is fed; of supplies what they deliver.</summary>
    public Peak[] Elements { get; }

    /// <summary>What each supply delivers with cold lamps.</summary>
    public Peak[] SupplyPeak { get; }

    /// <summary>Highest voltage across each load.</summary>
    public Peak[] MostVolts { get; }

    /// <summary>Lowest voltage across each load while it is fed, with its sign turned.</summary>
    public Peak[] LeastVolts { get; }

    /// <summary>Lowest voltage across each coil while it is only held, with its sign turned.</summary>
    public Peak[] HeldVolts { get; }

    /// <summary>Highest drop in the wires of each load's run.</summary>
    public Peak[] Drops { get; }

    /// <summary>The voltage of the supply that the drop was counted from.</summary>
    public double[] DropSupplyVolts { get; }

    /// <summary>Whether a fed load is ever positive at its first end.</summary>
    public bool[] IsForward { get; }

    /// <summary>Whether a fed load is ever positive at its second end.</summary>
    public bool[] IsBackward { get; }

    /// <summary>Takes in one case.</summary>
    /// <param name="solution">The case.</param>
    /// <param name="isJudged">Whether the case says how an element stands, by its place; else that of what is closed before it was left out.</param>
    public void Add(CaseSolution solution, Func<int, bool>? isJudged = null)
    {
        var (state, part) = (solution.Case, solution.Part);
        foreach (var i in part?.Wires ?? All(Wires.Length)) Wires[i].Raise(solution.WireAmps(i), state);
        foreach (var i in part?.Protectors ?? All(Protectors.Length)) Protectors[i].Raise(solution.ProtectorAmps(i), state);
        var look = new CaseLook(_circuit, _placeOf, _standing, solution);
        foreach (var i in part?.Contacts ?? All(_circuit.Contacts.Length)) AddContact(_circuit.Contacts[i], solution, look);
        foreach (var i in part?.Elements ?? All(Elements.Length)) AddElement(i, solution, look, isJudged?.Invoke(i) ?? true);
        Outputs.Add(solution);
    }

    private static IEnumerable<int> All(int count) => Enumerable.Range(0, count);

    /// <summary>What a supply delivers in a case with cold lamps.</summary>
    public double SupplyPeakOf(CaseSolution solution, int supply)
    {
        var look = new CaseLook(_circuit, _placeOf, _standing, solution);
        return solution.ElementAmps(supply) + look.FedBy(_circuit.Elements[supply]).Sum(look.ColdExcess);
    }

    private void AddContact(Contact contact, CaseSolution solution, CaseLook look)
    {
        const double noAmps = 1e-6;
        if (!solution.Case.Closed[contact.Index] || solution.ContactAmps(contact) < noAmps) return;
        var (required, peak, loads) = look.Needs(contact, _volts);
        ContactAmps[contact.Index].Raise(solution.ContactAmps(contact), solution.Case);
        ContactRequired[contact.Index].Raise(required, solution.Case);
        ContactPeak[contact.Index].Raise(peak, solution.Case);
        ContactLoads[contact.Index].UnionWith(loads);
    }

    private void AddElement(int index, CaseSolution solution, CaseLook look, bool isJudged)
    {
        var element = _circuit.Elements[index];
        if (element.Kind == ElementKind.Supply)
        {
            Elements[index].Raise(solution.ElementAmps(index), solution.Case);
            SupplyPeak[index].Raise(solution.ElementAmps(index) + look.FedBy(element).Sum(look.ColdExcess), solution.Case);
            return;
        }

        if (!(element.IsLoad || element.Kind == ElementKind.Resistor)) return;
        var volts = solution.LoadVolts(element);
        if (volts < NoVolts) return;
        Elements[index].Raise(look.AmpsOf(index), solution.Case);
        MostVolts[index].Raise(volts, solution.Case);
        if (!isJudged) return;
        if (look.IsHeld(index)) HeldVolts[index].Raise(-volts, solution.Case);
        if (!look.IsFed(index)) return;
        LeastVolts[index].Raise(-volts, solution.Case);
        IsForward[index] |= solution.IsForward(element);
        IsBackward[index] |= solution.IsBackward(element);
        if (look.RunDrop(element) is not { } run) return;
        Drops[index].Raise(run.Drop, solution.Case);
        DropSupplyVolts[index] = run.SupplyVolts;
    }
}
