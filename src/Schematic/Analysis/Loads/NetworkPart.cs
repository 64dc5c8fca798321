using System.Collections.Immutable;

namespace Schematic.Analysis.Loads;

/// <summary>
/// The branches of a wired network that can carry current while the contacts of one region close, and the nodes they join,
/// numbered anew: what is solved for a region is its own size and not the panel's.
/// </summary>
internal sealed class NetworkPart
{
    private readonly Dictionary<int, int> _placeOfBranch = [];
    private readonly Dictionary<int, int> _placeOfNode = [];

    /// <summary>Keeps what is live when the contacts in <paramref name="state"/> are closed.</summary>
    public NetworkPart(WiredNetwork network, SwitchingCase state)
    {
        var branches = network.Branches(state);
        Branches = PrunedSolver.Live(network.NodeCount, branches);
        foreach (var index in Branches)
        {
            _placeOfBranch.Add(index, _placeOfBranch.Count);
            _placeOfNode.TryAdd(branches[index].From, _placeOfNode.Count);
            _placeOfNode.TryAdd(branches[index].To, _placeOfNode.Count);
        }

        Wires = [.. Branches.Where(b => b < network.ProtectorBranch(0))];
        Protectors = [.. Branches.Where(b => b >= network.ProtectorBranch(0) && b < network.ContactBranch(0)).Select(b => b - network.ProtectorBranch(0))];
        Contacts = [.. Branches.Where(b => b >= network.ContactBranch(0) && b < network.ElementBranch(0)).Select(b => b - network.ContactBranch(0))];
        Elements = [.. Branches.Where(b => b >= network.ElementBranch(0)).Select(b => b - network.ElementBranch(0))];
    }

    /// <summary>The branches kept, by their place in the network.</summary>
    public ImmutableArray<int> Branches { get; }

    /// <summary>The wires among them, by their place in the panel.</summary>
    public ImmutableArray<int> Wires { get; }

    /// <summary>The protectors, by their place in the circuit.</summary>
    public ImmutableArray<int> Protectors { get; }

    /// <summary>The contacts, by their place in the circuit.</summary>
    public ImmutableArray<int> Contacts { get; }

    /// <summary>The elements, by their place in the circuit.</summary>
    public ImmutableArray<int> Elements { get; }

    /// <summary>How many nodes they join.</summary>
    public int NodeCount => _placeOfNode.Count;

    /// <summary>The place of a branch of the network among those kept, or -1.</summary>
    public int PlaceOfBranch(int branch) => _placeOfBranch.GetValueOrDefault(branch, -1);

    /// <summary>The new number of a node of the network, or -1.</summary>
    public int PlaceOfNode(int node) => _placeOfNode.GetValueOrDefault(node, -1);
}
