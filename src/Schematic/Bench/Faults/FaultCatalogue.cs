using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Analysis.Circuits;
using Schematic.Model;

namespace Schematic.Bench.Faults;

/// <summary>
/// All that can be wrong with a circuit one thing at a time. The chances are judgement, no source: what was soldered by hand
/// and what has moved for decades fails first; neighbours are bridged and exchanged sooner than contacts far apart.
/// </summary>
public static class FaultCatalogue
{
    /// <summary>With more contacts than this the pairs are too many to look at one by one.</summary>
    private const int MostContacts = 130;

    /// <summary>Whether so many contacts are in reach that of bridges and exchanges only neighbours are counted.</summary>
    public static bool IsCutDown(BenchCircuit circuit) => circuit.Accessible.Length > MostContacts;

    /// <summary>The faults that a ring-out has to find: every open, bridge, exchange, missing or reversed device, dead or stuck contact.</summary>
    public static ImmutableArray<Fault> ForRingOut(BenchCircuit circuit) =>
        [.. All(circuit).Where(f => f.Kind is not (FaultKind.Weak or FaultKind.ShortedTurns))];

    /// <summary>All single faults, in a fixed order.</summary>
    public static ImmutableArray<Fault> All(BenchCircuit circuit) =>
        [.. Joints(circuit), .. Contacts(circuit), .. Devices(circuit), .. Pairs(circuit)];

    private static IEnumerable<Fault> Joints(BenchCircuit circuit)
    {
        for (var i = 0; i < circuit.Joints.Length; i++)
        {
            if (circuit.LeadingAnywhere.Contains(circuit.Joints[i].From) || circuit.LeadingAnywhere.Contains(circuit.Joints[i].To)) continue;
            var what = Words(circuit, circuit.Joints[i]);
            yield return new Fault(FaultKind.Open, i, -1, 1e-3, $"{what} is open");
            yield return new Fault(FaultKind.Weak, i, -1, 3e-4, $"{what} has a high resistance");
        }
    }

    private static string Words(BenchCircuit circuit, BenchJoint joint)
    {
        var (from, to) = (circuit.Terminals[joint.From], circuit.Terminals[joint.To]);
        return joint.Kind switch
        {
            JointKind.Wire => $"wire {joint.Name} ({from} to {to})",
            JointKind.Net => $"the joint of {from} and {to} in net {joint.Name}",
            JointKind.Mate => $"the plugged contact {from} with {to}",
            JointKind.Jumper when from.Part == to.Part && joint.Name == from.Part && circuit.Panel.FindPart(joint.Name) is TerminalStrip => $"the jumper {from} to {to}",
            JointKind.Jumper => joint.Name,
            _ => $"the joint of {to} and {from}",
        };
    }

    private static IEnumerable<Fault> Contacts(BenchCircuit circuit)
    {
        for (var i = 0; i < circuit.Contacts.Length; i++)
        {
            var name = NameOf(circuit.Contacts[i].Source);
            yield return new Fault(FaultKind.Dead, i, -1, 1e-3, $"contact {name} never closes");
            yield return new Fault(FaultKind.Stuck, i, -1, 3e-4, $"contact {name} is always closed");
        }
    }

    /// <summary>The designator and what the drawing calls the throw; where that does not tell it from the part's others, its terminals.</summary>
    private static string NameOf(Contact contact)
    {
        var part = contact.Part;
        var isOne = part.ContactSets.Sum(s => s.Throws.Length) == 1 && part is not Device;
        if (part is Relay || (contact.Label.Length == 0 && !isOne)) return $"{part.Designator} {contact.Common.Name}-{contact.Throw.Name}";
        return isOne && contact.Label.Length == 0 ? part.Designator : $"{part.Designator} {contact.Label}";
    }

    private static IEnumerable<Fault> Devices(BenchCircuit circuit)
    {
        for (var i = 0; i < circuit.Elements.Length; i++)
        {
            var element = circuit.Elements[i];
            var (chance, gone) = element.Value.Kind switch
            {
                ElementKind.Lamp => (3e-3, "is blown or missing"),
                ElementKind.Coil => (5e-4, "is open"),
                _ when element.Value.Slides != 0 && element.Name.Contains(" to ", StringComparison.Ordinal) => (1e-3, "is open"),
                _ when IsWound(circuit, element) => (4e-4, "is open"),
                _ => (4e-4, "is open or missing"),
            };
            yield return new Fault(FaultKind.Missing, i, -1, chance, $"{element.Name} {gone}");
            if (element.Value.IsOneWay) yield return new Fault(FaultKind.Reversed, i, -1, 8e-4, $"{element.Name} is the wrong way round");
            if (element.Value.Kind == ElementKind.Coil) yield return new Fault(FaultKind.ShortedTurns, i, -1, 1e-4, $"{element.Name} has shorted turns");
        }
    }

    private static bool IsWound(BenchCircuit circuit, BenchElement element) =>
        circuit.Panel.FindPart(circuit.Terminals[element.From].Part) is Transformer or Device { Form: DeviceForm.Synchro };

    private static IEnumerable<Fault> Pairs(BenchCircuit circuit)
    {
        var faces = new FaceNeighbours(circuit);
        var used = circuit.Joints.SelectMany(j => new[] { j.From, j.To }).ToHashSet();
        var net = JoinedFirmly(circuit);
        // A made unit was tested before it left the works; who wires a harness alone has nobody who looks after him.
        var farExchange = circuit.Side == BenchSide.Unit ? 3e-6 : 2e-5;
        var anywhere = circuit.LeadingAnywhere.Select(t => net[t]).ToHashSet();
        var all = circuit.Accessible.Where(t => t != circuit.FrameNumber && !anywhere.Contains(net[t])).ToImmutableArray();
        for (var i = 0; i < all.Length; i++)
        {
            for (var j = i + 1; j < all.Length; j++)
            {
                var (one, other) = (circuit.Terminals[all[i]], circuit.Terminals[all[j]]);
                var near = faces.AreNeighbours(one, other);
                if ((!near && IsCutDown(circuit)) || net[all[i]] == net[all[j]]) continue;
                var words = near ? " (neighbours)" : "";
                yield return new Fault(FaultKind.Bridge, all[i], all[j], near ? 4e-4 : 4e-6, $"{one} and {other} are bridged{words}");
                if (one.Part == other.Part && (used.Contains(all[i]) || used.Contains(all[j])))
                    yield return new Fault(FaultKind.Exchange, all[i], all[j], near ? 3e-4 : farExchange, $"{one} and {other} are exchanged{words}");
            }

            if (circuit.FrameNumber >= 0)
                yield return new Fault(FaultKind.Frame, all[i], circuit.FrameNumber, 5e-5, $"{circuit.Terminals[all[i]]} touches the frame");
        }
    }

    /// <summary>For each terminal a number that it shares with those it is joined to whatever closes: they cannot be bridged.</summary>
    private static int[] JoinedFirmly(BenchCircuit circuit)
    {
        var sets = new PlaceSets(circuit.Terminals.Length);
        foreach (var joint in circuit.Joints)
            if (joint.IsSound) sets.Join(joint.From, joint.To);
        return sets.Roots();
    }
}
