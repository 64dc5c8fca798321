using System.Collections.Immutable;
using Schematic.Analysis.Circuits;

namespace Schematic.Analysis.Loads;

/// <summary>
/// What the volts of a supply are lost in on the way to a load and back, in one solved case. By the rule of voltages any way
/// tells the same sum; the one with the fewest parts is told.
/// </summary>
internal sealed class LostVolts(JointMap map, CaseSolution solution, IReadOnlyDictionary<Element, int> placeOf)
{
    /// <summary>A loss of less than this share of all that is lost is not told.</summary>
    private const double WorthTelling = 0.02;

    /// <summary>Less, in volts, is what the stand-ins for ideal joints take.</summary>
    private const double NoVolts = 0.005;

    private const double NoAmps = 1e-6;
    private const int ElementCost = 10_000;

    private readonly Circuit _circuit = map.Network.Circuit;
    private readonly ILookup<int, int> _elementsAt = map.Ends.Select((e, i) => (e.From, e.To, i)).Where(e => e is { From: >= 0, To: >= 0 })
        .SelectMany(e => new[] { (e.From, e.i), (e.To, e.i) }).ToLookup(e => e.Item1, e => e.i);

    /// <summary>Part or wire and the volts it takes, the most first.</summary>
    public ImmutableArray<(string Name, double Volts)> Of(Element load)
    {
        var ends = map.Ends[placeOf[load]];
        if (ends is not ( >= 0, >= 0)) return [];
        var lost = Way(ends.From, load).Concat(Way(ends.To, load)).GroupBy(l => l.Name)
            .Select(g => (Name: g.Key, Volts: g.Sum(l => l.Volts))).ToList();
        var all = lost.Sum(l => l.Volts);
        return [.. lost.Where(l => l.Volts >= WorthTelling * all && l.Volts >= NoVolts).OrderByDescending(l => Math.Round(l.Volts, 6)).ThenBy(l => l.Name, Model.NaturalOrder.Comparer)];
    }

    /// <summary>The way from one end of the load to the nearest end of a supply.</summary>
    private IEnumerable<(string Name, double Volts)> Way(int start, Element load)
    {
        var cameBy = new Dictionary<int, (int Before, string Name, double Volts)>();
        var waiting = new PriorityQueue<(int Node, int Before, string Name, double Volts, int Cost), (int, int)>();
        var order = 0;
        waiting.Enqueue((start, -1, "", 0, 0), (0, 0));
        while (waiting.TryDequeue(out var at, out _))
        {
            if (!cameBy.TryAdd(at.Node, (at.Before, at.Name, at.Volts))) continue;
            if (_elementsAt[at.Node].Select(e => _circuit.Elements[e]).FirstOrDefault(e => e.Kind == ElementKind.Supply) is { } supply)
            {
                // Half for each of the two ways that end at the supply.
                yield return (supply.Name, supply.CountedOhms * Math.Abs(solution.ElementAmps(placeOf[supply])) / 2);
                for (var node = at.Node; cameBy[node].Before >= 0; node = cameBy[node].Before) yield return (cameBy[node].Name, cameBy[node].Volts);
                yield break;
            }

            foreach (var (other, name, cost) in Steps(at.Node, load))
                waiting.Enqueue((other, at.Node, name, Math.Abs(solution.NodeVolts(at.Node, other)), at.Cost + cost), (at.Cost + cost, ++order));
        }
    }

    private IEnumerable<(int Other, string Name, int Cost)> Steps(int node, Element load)
    {
        foreach (var joint in map.JointsAt(node).Select(j => map.Joints[j]))
        {
            if (joint.Contact is { } contact && !solution.Case.Closed[contact.Index]) continue;
            yield return (joint.Opposite(node), joint.Wire >= 0 ? map.Network.Wires[joint.Wire].Designator : joint.Contact?.Part.Designator ?? "", 1);
        }

        foreach (var place in _elementsAt[node])
        {
            var element = _circuit.Elements[place];
            if (element == load || element.Kind is ElementKind.Supply or ElementKind.Pull || Math.Abs(solution.ElementAmps(place)) < NoAmps) continue;
            yield return (map.Ends[place].From == node ? map.Ends[place].To : map.Ends[place].From, element.Name, ElementCost);
        }
    }
}
