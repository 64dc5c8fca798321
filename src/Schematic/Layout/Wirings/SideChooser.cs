using System.Collections.Immutable;
using Schematic.Layout.Shapes;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>The side that each end on a two-sided thing leaves.</summary>
internal static class SideChooser
{
    /// <summary>
    /// Ends whose partner stands beside the thing go to that side; the others to the loose side, or, where none is given, to
    /// the side of their terminal that has fewer, so that the thing stays low.
    /// </summary>
    public static Func<LinkEnd, Side> For(Func<TerminalId, IEnumerable<LinkEnd>> endsAt, ImmutableArray<TerminalId> terminals, Facing facing)
    {
        var chosen = new Dictionary<LinkEnd, Side>();
        foreach (var terminal in terminals)
        {
            var ends = endsAt(terminal).ToList();
            var balance = 0;
            foreach (var end in ends)
            {
                if (facing.Wanted(end) is not { } side) continue;
                chosen[end] = side;
                balance += side.Way();
            }

            foreach (var end in ends.Where(e => !chosen.ContainsKey(e)))
            {
                var side = facing.Loose ?? (balance >= 0 ? Side.Left : Side.Right);
                chosen[end] = side;
                balance += side.Way();
            }
        }

        return end => chosen[end];
    }
}
