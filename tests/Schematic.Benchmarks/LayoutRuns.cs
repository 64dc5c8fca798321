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
/// Time and peak memory of the schematic sheets of generated designs, each size in a process of its own so that the
/// peak belongs to it alone.
/// </summary>
internal static class LayoutRuns
{
    private static readonly int[] Sizes = [250, 1000, 4000];

    /// <summary>Runs every size in a child process and prints a table.</summary>
    public static int Run()
    {
        Console.WriteLine("contacts   first run   best of 3    peak MB   sheets   crossings   faults");
        foreach (var size in Sizes) Spawn(size);
        return 0;
    }

    /// <summary>Measures one size in this process and prints its row.</summary>
    public static int RunOne(int contacts)
    {
        var panel = DesignGenerator.Generate(seed: 2, contacts);
        var times = new List<double>();
        IReadOnlyList<Sheet> sheets = [];
        for (var round = 0; round < 3; round++)
        {
            var clock = Stopwatch.StartNew();
            sheets = SheetsOf(panel);
            times.Add(clock.Elapsed.TotalSeconds);
        }

        var quality = sheets.Select(SheetInspector.Inspect).ToList();
        Console.WriteLine(string.Format(
            CultureInfo.InvariantCulture, "{0,8} {1,9:0.00} s {2,9:0.00} s {3,10:0} {4,8} {5,11} {6,8}",
            contacts, times[0], times.Min(), Process.GetCurrentProcess().PeakWorkingSet64 / 1e6, sheets.Count,
            quality.Sum(q => q.Crossings), quality.Sum(q => q.Faults.Length)));
        return 0;
    }

    /// <summary>The schematic sheets of a panel, framed.</summary>
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
