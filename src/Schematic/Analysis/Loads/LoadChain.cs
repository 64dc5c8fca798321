using System.Collections.Immutable;
using Schematic.Analysis.Circuits;

namespace Schematic.Analysis.Loads;

/// <summary>
/// A load with whatever always carries its current and no other: its series resistor, a lamp behind it. Seen from outside it
/// is one branch.
/// </summary>
internal sealed class LoadChain
{
    private LoadChain(int load) => Elements = [load];

    /// <summary>The elements in no order, by their place in the circuit; the load is the first.</summary>
    public ImmutableArray<int> Elements { get; private set; }

    /// <summary>The groups of joints inside, between two of the elements.</summary>
    public ImmutableArray<int> Inside { get; private set; } = [];

    /// <summary>The element at the end on the side of the load's first end, and its outer end.</summary>
    public (int Element, bool AtFrom) First { get; private set; }

    /// <summary>The same of the other side.</summary>
    public (int Element, bool AtFrom) Last { get; private set; }

    /// <summary>Ohms of the elements together.</summary>
    public double Ohms { get; private set; }

    /// <summary>Follows a load to both sides as long as one other element alone hangs on the joints there.</summary>
    public static LoadChain Of(JointMap map, ILookup<int, (int Element, bool AtFrom)> endsOf, int load)
    {
        var chain = new LoadChain(load);
        chain.First = chain.Extend(map, endsOf, (load, AtFrom: true));
        chain.Last = chain.Extend(map, endsOf, (load, AtFrom: false));
        chain.Ohms = chain.Elements.Sum(e => map.Network.Circuit.Elements[e].CountedOhms);
        return chain;
    }

    private (int Element, bool AtFrom) Extend(
        JointMap map, ILookup<int, (int Element, bool AtFrom)> endsOf, (int Element, bool AtFrom) outer)
    {
        while (true)
        {
            var node = outer.AtFrom ? map.Ends[outer.Element].From : map.Ends[outer.Element].To;
            if (node < 0) return outer;
            var group = map.GroupOf(node);
            var others = endsOf[group].Where(e => e != outer).Take(2).ToList();
            if (others.Count != 1 || Elements.Contains(others[0].Element)) return outer;
            if (map.Network.Circuit.Elements[others[0].Element].Kind is ElementKind.Supply or ElementKind.Pull) return outer;
            Elements = Elements.Add(others[0].Element);
            Inside = Inside.Add(group);
            outer = (others[0].Element, !others[0].AtFrom);
        }
    }
}
