using System.Diagnostics;
using System.Globalization;
using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Layout.Inspection;
using Schematic.Layout.Wirings;
using Schematic.Model;
using Schematic.Tests.Generators;

namespace Schematic.Benchmarks;

/// <summary>
/// Time and peak memory of the wiring sheets of generated designs, each size in a process of its own so that the
/// peak belongs to it alone.
/// </summary>
internal static class LayoutRuns
{
    private static readonly int[] Sizes = [250, 1000, 4000];

    /// <summary>Runs every size in a child process and prints a table.</summary>
    public static int Run()
    {
        Console.WriteLine("contacts   first run   best of 3    peak MB   sheets    fill   crossings   bends   faults   (processor time)");
        foreach (var size in Sizes) Spawn(size);
        return 0;
    }

    /// <summary>Measures one size in this process and prints its row.</summary>
    public static int RunOne(int contacts)
    {
        var panel = DesignGenerator.Generate(seed: 2, contacts);
        var times = new List<double>();
        for (var round = 0; round < 3; round++)
        {
            using var own = Process.GetCurrentProcess();
            var before = own.TotalProcessorTime;
            Draw(panel);
            own.Refresh();
            times.Add((own.TotalProcessorTime - before).TotalSeconds);
        }

        var quality = SheetsOf(panel).Where(s => s.Kind == SheetKind.Wiring).Select(SheetInspector.Inspect).ToList();
        Console.WriteLine(string.Format(
            CultureInfo.InvariantCulture, "{0,8} {1,9:0.00} s {2,9:0.00} s {3,10:0} {4,8} {5,7:0.00} {6,11} {7,7} {8,8}",
            contacts, times[0], times.Min(), Process.GetCurrentProcess().PeakWorkingSet64 / 1e6, quality.Count,
            quality.Average(q => q.Fill), quality.Sum(q => q.Crossings), quality.Sum(q => q.Bends), quality.Sum(q => q.Faults.Length)));
        return 0;
    }

    /// <summary>Draws the wiring sheets of a panel: what is measured.</summary>
    public static void Draw(Panel panel) => WiringSheets.Draw(panel, SheetFrame.For(panel));

    /// <summary>The wiring sheets of a panel, framed.</summary>
    public static IReadOnlyList<Sheet> SheetsOf(Panel panel)
    {
        var frame = SheetFrame.For(panel);
        return frame.Finish(WiringSheets.Draw(panel, frame).Contents, panel);
    }

    private static void Spawn(int size)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!)
        {
            ArgumentList = { "layout-one", size.ToString(CultureInfo.InvariantCulture) },
        };
        using var process = Process.Start(start)!;
        process.WaitForExit();
    }
}
