using System.Collections.Immutable;
using Schematic.Analysis.Circuits;

namespace Schematic.Analysis.States;

/// <summary>
/// Cuts a circuit at its rails into regions, and lists the electrically different cases of each. Switches in series, in
/// parallel, or in a mesh on which nothing hangs, do not multiply them.
/// </summary>
internal sealed class LumpedCases(ConditionalCircuit circuit)
{
    private readonly DiagramStore _store = circuit.Store;

    /// <summary>The regions, in the order of their first element.</summary>
    public ImmutableArray<LumpedRegion> Regions()
    {
        var rails = circuit.Rails.Select(r => r.Node).ToHashSet();
        var sets = new DisjointSets(circuit.Circuit.NodeCount);
        var elements = circuit.Circuit.Elements.Where(e => e.Kind != ElementKind.Supply && circuit.IsLive(e) && e.FromNode >= 0 && e.ToNode >= 0).ToList();
        var contacts = circuit.Circuit.Contacts.Where(c => circuit.IsLive(c) && c.CommonNode >= 0 && c.ThrowNode >= 0).ToList();
        foreach (var element in elements) Join(element.FromNode, element.ToNode);
        foreach (var contact in contacts) Join(contact.CommonNode, contact.ThrowNode);

        var elementsOf = elements.SelectMany(e => RegionsOf(e.FromNode, e.ToNode).Select(r => (Region: r, Element: e))).ToLookup(p => p.Region, p => p.Element);
        var contactsOf = contacts.SelectMany(c => RegionsOf(c.CommonNode, c.ThrowNode).Select(r => (Region: r, Contact: c))).ToLookup(p => p.Region, p => p.Contact);
        return
        [
            .. elementsOf.Select(g => new LumpedRegion(
                [.. g.SelectMany(e => new[] { e.FromNode, e.ToNode }).Where(n => !rails.Contains(n)).Distinct().Order()],
                [.. g], [.. contactsOf[g.Key]])),
        ];

        void Join(int one, int other)
        {
            if (!rails.Contains(one) && !rails.Contains(other)) sets.Join(one, other);
        }

        // An element straight from rail to rail is a region without a node.
        IEnumerable<int> RegionsOf(int one, int other) => rails.Contains(one)
            ? rails.Contains(other) ? [-1 - one] : [sets.Find(other)]
            : [sets.Find(one)];
    }

    /// <summary>
    /// The cases of a region among <paramref name="states"/>, or null when there are more than <paramref name="most"/>.
    /// </summary>
    /// <param name="region">The region.</param>
    /// <param name="states">The states asked about.</param>
    /// <param name="most">How many cases are wanted at most.</param>
    /// <param name="narrowed">What of a set of states can be reached; it may be the set itself.</param>
    public ImmutableArray<LumpedCase>? Of(LumpedRegion region, Diagram states, int most, Func<Diagram, Diagram> narrowed)
    {
        var found = ImmutableArray.CreateBuilder<LumpedCase>();
        return Split(narrowed(states)) ? found.ToImmutable() : null;

        bool Split(Diagram here)
        {
            if (here.IsNever) return true;
            if (found.Count >= most) return false;
            var groups = new int[region.Nodes.Length];
            if (FirstOpen(region, here, groups) is { } question)
                return Split(narrowed(_store.AndNot(here, question))) && Split(narrowed(_store.And(here, question)));
            found.Add(new LumpedCase(here, [.. groups]));
            return true;
        }
    }

    /// <summary>Groups the nodes as far as the states decide it; gives the first condition that they leave open.</summary>
    private Diagram? FirstOpen(LumpedRegion region, Diagram states, int[] groups)
    {
        for (var i = 0; i < groups.Length; i++)
        {
            groups[i] = i;
            foreach (var rail in circuit.Rails)
            {
                if (IsOpen(states, circuit.Tied(rail, region.Nodes[i]), out var isTied)) return circuit.Tied(rail, region.Nodes[i]);
                if (!isTied) continue;
                groups[i] = -1 - rail.Index;
                break;
            }

            if (groups[i] < 0) continue;
            foreach (var (other, when) in circuit.JoinedTo(region.Nodes[i]))
            {
                var place = region.Nodes.BinarySearch(other);
                if (place < 0 || place >= i || groups[place] != place) continue;
                if (IsOpen(states, when, out var isJoined)) return when;
                if (isJoined) groups[i] = place;
            }
        }

        return null;
    }

    private bool IsOpen(Diagram states, Diagram condition, out bool holds)
    {
        var both = _store.And(states, condition);
        holds = both == states;
        return !holds && !both.IsNever;
    }
}
