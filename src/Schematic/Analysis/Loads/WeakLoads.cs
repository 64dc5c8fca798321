using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>
/// The loads of a panel that are fed and can never work, and what follows: loads behind their contacts, locks that they never
/// release. One cause is told once; the rules that would tell its echoes ask here.
/// </summary>
public sealed class WeakLoads
{
    /// <summary>Of the cases in which a load gets most so many are looked at with their wires.</summary>
    private const int MostTried = 6;

    private readonly IProvenPositions _proof;
    private readonly Dictionary<string, WeakLoad> _causeOf = new(StringComparer.Ordinal);

    /// <summary>Finds them.</summary>
    internal WeakLoads(IProvenPositions proof)
    {
        _proof = proof;
        if (proof.HasShort) return;
        var found = proof.Circuit.Circuit.Loads.Select(Find).OfType<WeakLoad>().ToList();
        foreach (var weak in found) _causeOf.TryAdd(weak.Load.Name, weak);
        if (found.Count == 0) return;
        var followers = Followers();
        All =
        [
            .. found.Select(w => w with
            {
                Followers = [.. followers.Where(f => _causeOf[f.Name] == w)],
                Locks = [.. proof.StuckLocks.Where(s => CauseOf(s.Lock) == w)],
            }),
        ];
    }

    /// <summary>The loads, in the order of the file.</summary>
    public ImmutableArray<WeakLoad> All { get; } = [];

    /// <summary>Whether a load is too weak, or idle only because another is.</summary>
    public bool Explains(Element load) => _causeOf.ContainsKey(load.Name);

    /// <summary>Whether a lock is never released only because a load is too weak.</summary>
    public bool Explains(ActuatorLock one) => CauseOf(one) is not null;

    private WeakLoad? CauseOf(ActuatorLock one) => one.Release.Leaves().OfType<EnergisedCondition>()
        .Where(e => e.Energised).Select(e => _causeOf.GetValueOrDefault(e.Part)).FirstOrDefault(w => w is not null);

    private WeakLoad? Find(Element load)
    {
        var circuit = _proof.Circuit;
        if (!circuit.IsDecided(load) || _proof.EverWorks(load)) return null;
        var tried =
            from found in circuit.CasesOf(load)
            let fraction = LoadLimits.FedFraction(load, found.Volts ?? 0, found.Amps)
            where fraction >= LoadLimits.PartFraction
            orderby fraction descending
            let witness = _proof.States.Nearest(found.When)
            where witness is not null
            let solution = _proof.Judge.SolutionIn(witness.State)
            select (Witness: witness, Volts: Math.Abs(solution.ElementVolts(load)), Amps: Math.Abs(_proof.Judge.AmpsIn(load, witness.State)));
        return tried.Take(MostTried).OrderByDescending(t => Math.Round(t.Volts, 9)).Select(t => new WeakLoad(
            load, t.Volts, t.Amps, t.Witness, _proof.Judge.LostIn(load, t.Witness.State))).FirstOrDefault();
    }

    /// <summary>Idle loads that would work if a load that never does did, again and again.</summary>
    private List<Element> Followers()
    {
        var circuit = _proof.Circuit;
        var idle = circuit.Circuit.Loads.Where(l => !_causeOf.ContainsKey(l.Name) && circuit.IsDecided(l) && !_proof.States.CanReach(circuit.Energised(l))).ToList();
        var followers = new List<Element>();
        bool grew;
        do
        {
            grew = false;
            foreach (var load in idle.Except(followers).ToList())
            {
                var ideal = circuit.IdealAttracted(load);
                var cause = _causeOf.FirstOrDefault(c => Needs(ideal, c.Key)).Value;
                if (cause is null) continue;
                _causeOf.Add(load.Name, cause);
                followers.Add(load);
                grew = true;
            }
        }
        while (grew);

        return [.. circuit.Circuit.Loads.Where(followers.Contains)];
    }

    /// <summary>Whether a condition can hold, but with this coil operated alone.</summary>
    private bool Needs(Diagram condition, string coil)
    {
        var store = _proof.Circuit.Store;
        if (_proof.Circuit.Variables.IndexOf(StateVariableKind.Coil, coil) is not ( >= 0 and var variable)) return false;
        var without = store.Restrict(condition, variable, 0);
        return !store.AndNot(store.Restrict(condition, variable, 1), without).IsNever && !_proof.States.CanReach(without);
    }
}
