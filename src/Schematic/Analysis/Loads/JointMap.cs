using System.Collections.Immutable;
using Schematic.Analysis.States;

namespace Schematic.Analysis.Loads;

/// <summary>
/// The joints of a wired network - wires, fuses, breakers and contacts that can close - and the groups of nodes that hang
/// together when every one of them is closed. Whatever is closed, no current passes from one group to another but through
/// an element.
/// </summary>
internal sealed class JointMap
{
    private readonly int[] _groupOf;
    private readonly ImmutableArray<int>[] _jointsAt;

    public JointMap(WiredNetwork network, ConditionalCircuit conditions)
    {
        Network = network;
        Joints = [.. Read(network, conditions)];
        Ends = [.. network.Circuit.Elements.Select(e => (network.NodeOf(e.From), network.NodeOf(e.To)))];
        var sets = new DisjointSets(network.NodeCount);
        var lists = Enumerable.Range(0, network.NodeCount).Select(_ => ImmutableArray.CreateBuilder<int>()).ToArray();
        for (var i = 0; i < Joints.Length; i++)
        {
            sets.Join(Joints[i].One, Joints[i].Other);
            lists[Joints[i].One].Add(i);
            lists[Joints[i].Other].Add(i);
        }

        _jointsAt = [.. lists.Select(l => l.ToImmutable())];
        _groupOf = sets.Numbered(out var count);
        GroupCount = count;
    }

    /// <summary>The network.</summary>
    public WiredNetwork Network { get; }

    /// <summary>The joints between different nodes.</summary>
    public ImmutableArray<WiredJoint> Joints { get; }

    /// <summary>For each element of the circuit the nodes of its two ends; -1 for an end that the panel does not have.</summary>
    public ImmutableArray<(int From, int To)> Ends { get; }

    /// <summary>How many groups there are.</summary>
    public int GroupCount { get; }

    /// <summary>The group of a node.</summary>
    public int GroupOf(int node) => _groupOf[node];

    /// <summary>The joints that end on a node, by their place.</summary>
    public ImmutableArray<int> JointsAt(int node) => _jointsAt[node];

    private static IEnumerable<WiredJoint> Read(WiredNetwork network, ConditionalCircuit conditions)
    {
        var circuit = network.Circuit;
        var all = network.Wires.Select((w, i) => new WiredJoint(network.NodeOf(w.From), network.NodeOf(w.To), i, -1, null))
            .Concat(circuit.Protectors.Select((p, i) => new WiredJoint(
                network.NodeOf(p.At(p.Terminals[0].Name)), network.NodeOf(p.At(p.Terminals[1].Name)), -1, i, null)))
            .Concat(circuit.Contacts.Where(c => conditions.IsLive(c) && !conditions.Closed(c).IsNever)
                .Select(c => new WiredJoint(network.NodeOf(c.Common), network.NodeOf(c.Throw), -1, -1, c)));
        return all.Where(j => j.One >= 0 && j.Other >= 0 && j.One != j.Other);
    }
}
