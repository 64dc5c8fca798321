using Xunit;
using static Schematic.Tests.Analysis.PanelBuilder;

namespace Schematic.Tests.Analysis.States;

public class ProofSpeedTests
{
    [Fact]
    public void Forty_actuators_and_ten_relays_are_proved_in_little_memory()
    {
        // The time is measured in the benchmarks: here others share the machine.
        var builder = BigPanel();
        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Empty(builder.FindAll());
        Assert.InRange((GC.GetAllocatedBytesForCurrentThread() - before) / 1e6, 0, 300);
    }

    /// <summary>
    /// Ten latches in a row, each started by two of four actuators and released by another; each relay's second contact set
    /// lies in the start of the next, lamps and inputs hang on all of them.
    /// </summary>
    private static PanelBuilder BigPanel()
    {
        var builder = new PanelBuilder().Supply("PS1");
        var inputs = Enumerable.Range(0, 40).Select(i => Input($"IN{i}")).ToArray();
        builder.Board("B1", inputs).Wire("B1:GND", "PS1:-");
        for (var i = 0; i < 40; i++)
        {
            builder.Actuator($"A{i}", "off", "on").Make($"S{i}", $"A{i}", "on").Make($"T{i}", $"A{i}", "off");
            builder.Make($"I{i}", $"A{i}", "on").Wire("B1:GND", $"I{i}:1").Wire($"I{i}:2", $"B1:IN{i}");
        }

        for (var k = 0; k < 10; k++)
        {
            var a = 4 * k;
            builder.Relay($"K{k}", sets: 3).Lamp($"DS{k}");
            var feed = k == 0 ? "PS1:+" : $"K{k - 1}:24";
            if (k > 0) builder.Wire("PS1:+", $"K{k - 1}:21");
            builder.Wire(feed, $"S{a}:1").Wire($"S{a}:2", $"S{a + 1}:1").Wire($"S{a + 1}:2", $"K{k}:A1", $"K{k}:14")
                .Wire("PS1:+", $"T{a + 2}:1").Wire($"T{a + 2}:2", $"K{k}:11").Wire($"K{k}:A2", "PS1:-")
                .Wire("PS1:+", $"K{k}:31").Wire($"K{k}:34", $"S{a + 3}:1").Wire($"S{a + 3}:2", $"DS{k}:X1").Wire($"DS{k}:X2", "PS1:-");
        }

        return builder;
    }
}
