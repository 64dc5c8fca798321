using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Bench.RingOut;

/// <summary>
/// Which positions are worth holding: actuators whose contacts hang together are combined, the others are moved one by one
/// while the rest stands anywhere.
/// </summary>
internal static class StandFinder
{
    private const int MostCombined = 128;

    /// <summary>
    /// Positions to hold, each as the places of the actuators that matter; -1 where an actuator may stand anywhere. The first
    /// holds everything at rest.
    /// </summary>
    public static ImmutableArray<ImmutableArray<int>> Find(BenchCircuit circuit)
    {
        var rest = Stand.Rest(circuit.Actuators);
        var found = new List<ImmutableArray<int>> { rest.Places };
        foreach (var cluster in Clusters(circuit)) found.AddRange(Combined(circuit.Actuators, cluster, rest));
        return [.. found];
    }

    /// <summary>The stands themselves, everything that does not matter at rest.</summary>
    public static ImmutableArray<Stand> Stands(BenchCircuit circuit)
    {
        var rest = Stand.Rest(circuit.Actuators);
        return [.. Find(circuit).Select(r => Held(r, rest)).Distinct()];
    }

    /// <summary>The stand that comes of holding what matters and leaving the rest where it is.</summary>
    public static Stand Held(ImmutableArray<int> required, Stand at) => new([.. required.Select((p, i) => p < 0 ? at.Places[i] : p)]);

    private static IEnumerable<ImmutableArray<int>> Combined(ImmutableArray<Actuator> actuators, List<int> cluster, Stand rest)
    {
        var free = ImmutableArray.CreateRange(Enumerable.Repeat(-1, actuators.Length));
        if (cluster.Aggregate(1L, (n, a) => Math.Min(n * actuators[a].Positions.Length, MostCombined + 1)) <= MostCombined)
        {
            IEnumerable<ImmutableArray<int>> all = [free];
            foreach (var actuator in cluster)
                all = all.SelectMany(r => Enumerable.Range(0, actuators[actuator].Positions.Length).Select(p => r.SetItem(actuator, 2 * p)));
            foreach (var required in all) yield return required;
            yield break;
        }

        var still = free;
        foreach (var actuator in cluster) still = still.SetItem(actuator, rest.Places[actuator]);
        foreach (var one in cluster)
        {
            for (var p = 0; p < actuators[one].Positions.Length; p++)
            {
                yield return still.SetItem(one, 2 * p);
                foreach (var other in cluster.Where(o => o > one))
                    for (var q = 0; q < actuators[other].Positions.Length; q++) yield return still.SetItem(one, 2 * p).SetItem(other, 2 * q);
            }
        }
    }

    /// <summary>Actuators that move contacts which hang together, directly or through other contacts and devices.</summary>
    private static List<List<int>> Clusters(BenchCircuit circuit)
    {
        var sets = new PlaceSets(circuit.Terminals.Length + circuit.Actuators.Length);
        foreach (var joint in circuit.Joints) sets.Join(joint.From, joint.To);
        foreach (var contact in circuit.Contacts)
        {
            sets.Join(contact.From, contact.To);
            foreach (var name in contact.Source.When.Leaves().OfType<PositionCondition>().Select(p => p.Actuator).Distinct())
            {
                var number = circuit.Actuators.Select(a => a.Name).ToList().IndexOf(name);
                if (number >= 0) sets.Join(contact.From, circuit.Terminals.Length + number);
            }
        }

        return [.. Enumerable.Range(0, circuit.Actuators.Length).GroupBy(a => sets.Find(circuit.Terminals.Length + a)).Select(g => g.ToList())];
    }
}
