using Schematic.Bench;
using Schematic.Bench.RingOut;
using Xunit;

namespace Schematic.Tests.Bench.RingOut;

/// <summary>More than twelve clips on one lead are no longer found again (own choice).</summary>
public class IsolationTests
{
    [Theory]
    [InlineData(12, 1)]
    [InlineData(13, 2)]
    [InlineData(24, 2)]
    [InlineData(25, 3)]
    public void A_lead_takes_twelve_clips(int others, int placements)
    {
        var nets = string.Concat(Enumerable.Range(1, 40).Select(i => $"net N{i} J1:{i} X1:{i}\n"));
        var circuit = BenchCircuit.Read(TestPanels.Load($"connector J1 {{ pins ; strip 40 pitch 5 mm }}\nterminals X1 {{ 1..40 }}\n{nets}"), BenchSide.Harness);
        var rest = Stand.Rest(circuit.Actuators);
        var isolation = new Isolation(circuit, new ProbedCircuit(circuit, rest, new ReadingCache(new Meter())), rest);
        var conductors = isolation.Conductors;
        Assert.Equal(41, conductors.Length); // the shell too
        var made = isolation.Between([.. conductors.Skip(1).Take(others).Select(o => (conductors[0], o))]).ToList();
        Assert.Equal(placements, made.Count);
        Assert.All(made, p => Assert.True(p.Red.Length <= 12 && p.Black.Length <= 12));
        Assert.Equal(others, made.Sum(p => Math.Max(p.Red.Length, p.Black.Length)));
    }
}
