using Schematic.Bench;
using Schematic.Bench.RingOut;

namespace Schematic.Tests.Bench;

/// <summary>Whether two units read alike at every pair of contacts in every position: all that a meter can know of them.</summary>
internal static class UnitLikeness
{
    /// <summary>The first placement at which they differ, in words; null when they are alike.</summary>
    public static string? Difference(BenchCircuit one, BenchCircuit other)
    {
        if (one.Accessible.Length != other.Accessible.Length) return "another number of contacts";
        var meter = new Meter();
        var cache = new ReadingCache(meter);
        foreach (var stand in StandFinder.Stands(one))
        {
            var (here, there) = (new ProbedCircuit(one, stand, cache), new ProbedCircuit(other, StandOf(other, one, stand), cache));
            foreach (var red in one.Accessible)
            {
                foreach (var black in one.Accessible)
                {
                    if (red == black) continue;
                    foreach (var test in new[] { MeterTest.Ohms, MeterTest.Diode })
                    {
                        var a = here.Read(test, [red], [black]);
                        var b = there.Read(test, [other.NumberOf(one.Terminals[red])], [other.NumberOf(one.Terminals[black])]);
                        // A diode test of some kilohms ends near what the meter can drive.
                        if (test == MeterTest.Diode && Math.Max(a.Value, b.Value) > 2.3) continue;
                        if (a.Kind == b.Kind && Math.Abs(a.Value - b.Value) <= (test == MeterTest.Ohms ? 2 + (0.15 * a.Value) : 0.15)) continue;
                        return $"{TerminalText.Of(one.Terminals[red])} {TerminalText.Of(one.Terminals[black])} at {StandText.Describe(stand, one.Actuators)}, {test}: {a.Text} and {b.Text}";
                    }
                }
            }
        }

        return null;
    }

    private static Stand StandOf(BenchCircuit other, BenchCircuit one, Stand stand) => new([.. other.Actuators.Select(
        a => one.Actuators.Select((o, i) => (o.Name, i)).Where(o => o.Name == a.Name).Select(o => stand.Places[o.i]).DefaultIfEmpty(2 * a.Positions.IndexOf(a.Rest)).First())]);
}
