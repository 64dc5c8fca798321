using System.Collections.Immutable;

namespace Schematic.Bench.RingOut;

/// <summary>Puts the positions to be held into an order that needs few moves.</summary>
internal static class StandRoute
{
    /// <summary>Positions of actuators that are compared on the way to a better order; with more the order found until then stands.</summary>
    private const long MostCompared = 30_000_000;

    /// <summary>
    /// The stands in order, the first at rest, and whether there was more to compare; an actuator that does not matter stays where it is.
    /// </summary>
    public static (ImmutableArray<Stand> Stands, bool IsCutShort) Find(
        BenchCircuit circuit, IReadOnlyList<ImmutableArray<int>> required, long mostCompared = MostCompared)
    {
        var rest = Stand.Rest(circuit.Actuators);
        var order = Nearest(circuit, rest, required);
        var best = Walk(circuit, rest, order);
        var each = (long)Math.Max(1, order.Count * circuit.Actuators.Length);
        var left = mostCompared / each;
        var fewest = Fewest(circuit, rest, required);
        for (var improved = true; improved && left > 0 && best.Moves > fewest;)
        {
            improved = false;
            for (var i = 0; i < order.Count; i++)
            {
                for (var j = i + 1; j < order.Count; j++)
                {
                    left -= 3;
                    if (left <= 0) return (best.Stands, best.Moves > fewest);
                    foreach (var other in new[] { Turned(order, i, j), Moved(order, i, j), Moved(order, j, i) })
                    {
                        var walk = Walk(circuit, rest, other);
                        if (walk.Moves >= best.Moves) continue;
                        (order, best, improved) = (other, walk, true);
                    }
                }
            }
        }

        return (best.Stands, left <= 0 && best.Moves > fewest);
    }

    /// <summary>
    /// No order has fewer moves: each actuator has to reach the outermost positions that are asked of it, on one side twice. An endless
    /// one counts as nothing.
    /// </summary>
    private static int Fewest(BenchCircuit circuit, Stand rest, IReadOnlyList<ImmutableArray<int>> required)
    {
        var moves = 0;
        for (var i = 0; i < circuit.Actuators.Length; i++)
        {
            var actuator = i;
            var places = required.Select(r => r[actuator]).Where(p => p >= 0).Append(rest.Places[i]).ToList();
            var (down, up) = ((rest.Places[i] - places.Min()) / 2, (places.Max() - rest.Places[i]) / 2);
            if (!circuit.Actuators[i].IsEndless) moves += down + up + Math.Min(down, up);
        }

        return moves;
    }

    /// <summary>Moves along a row of stands.</summary>
    public static int Moves(BenchCircuit circuit, ImmutableArray<Stand> stands) =>
        stands.Zip(stands.Skip(1)).Sum(p => p.First.MovesTo(p.Second, circuit.Actuators));

    private static (int Moves, ImmutableArray<Stand> Stands) Walk(BenchCircuit circuit, Stand rest, List<ImmutableArray<int>> order)
    {
        var stands = ImmutableArray.CreateBuilder<Stand>();
        stands.Add(rest);
        foreach (var required in order) stands.Add(Held(circuit, required, stands[^1]));
        var all = stands.ToImmutable();
        return (Moves(circuit, all), all);
    }

    /// <summary>
    /// An actuator that does not matter stays where it is: one alone that springs back may be held on, of several nobody has the hands,
    /// so each that is not wanted is let go.
    /// </summary>
    private static Stand Held(BenchCircuit circuit, ImmutableArray<int> required, Stand at)
    {
        var held = StandFinder.Held(required, at);
        return StandText.HeldCount(held, circuit.Actuators) < 2 ? held : StandFinder.Held(required, StandText.LetGo(at, circuit.Actuators));
    }

    private static List<ImmutableArray<int>> Nearest(BenchCircuit circuit, Stand rest, IReadOnlyList<ImmutableArray<int>> required)
    {
        var (left, order, at) = (required.ToList(), new List<ImmutableArray<int>>(), rest);
        while (left.Count > 0)
        {
            var here = at;
            var next = left.MinBy(r => here.MovesTo(Held(circuit, r, here), circuit.Actuators));
            left.Remove(next);
            order.Add(next);
            at = Held(circuit, next, at);
        }

        return order;
    }

    private static List<ImmutableArray<int>> Turned(List<ImmutableArray<int>> order, int from, int to)
    {
        var turned = new List<ImmutableArray<int>>(order);
        turned.Reverse(from, to - from + 1);
        return turned;
    }

    private static List<ImmutableArray<int>> Moved(List<ImmutableArray<int>> order, int from, int to)
    {
        var moved = new List<ImmutableArray<int>>(order);
        var one = moved[from];
        moved.RemoveAt(from);
        moved.Insert(to, one);
        return moved;
    }
}
