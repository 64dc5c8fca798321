using System.Diagnostics;
using System.Globalization;
using Schematic.Analysis;
using Schematic.Binding;
using Schematic.Drawing;
using Schematic.Layout.Circuits;
using Schematic.Layout.Frame;
using Schematic.Layout.Inspection;
using Schematic.Model;
using Schematic.Tests.Generators;

namespace Schematic.Benchmarks;

/// <summary>
/// The circuit sheets of the examples and of twenty generated designs of 20 to 1,000 contacts: sheets, crossings, corners, fill and
/// processor time. Time is of the process, so that other work on the machine does not count.
/// </summary>
internal static class CircuitRuns
{
    private static readonly int[] Sizes = [20, 40, 60, 80, 100, 150, 200, 300, 500, 1000];

    /// <summary>The examples, as folder and file.</summary>
    public static readonly string[] Examples = ["lever-frame/lever", "relay-latch/latch", "engine-order/engine-order", "dsub-breakout/breakout"];

    /// <summary>Prints a row for each design.</summary>
    public static int Run()
    {
        Console.WriteLine("design                 sheets   crossings   bends    fill   faults   first run   best of 3");
        foreach (var example in Examples) Measure(example, Read(example));
        foreach (var size in Sizes)
        {
            for (var seed = 1; seed <= 2; seed++) Measure($"{size} contacts, seed {seed}", DesignGenerator.Generate(seed, size));
        }

        return 0;
    }

    private static void Measure(string name, Panel panel)
    {
        var times = new List<double>();
        List<Sheet> sheets = [];
        for (var round = 0; round < 3; round++)
        {
            var start = Process.GetCurrentProcess().TotalProcessorTime;
            var frame = SheetFrame.For(panel);
            sheets = [.. frame.Finish(CircuitSheets.Build(new AnalysisContext(panel), frame), panel).Where(s => s.Kind == SheetKind.Circuit)];
            times.Add((Process.GetCurrentProcess().TotalProcessorTime - start).TotalSeconds);
        }

        var quality = sheets.Select(SheetInspector.Inspect).ToList();
        Console.WriteLine(string.Format(
            CultureInfo.InvariantCulture, "{0,-26} {1,2} {2,11} {3,7} {4,6:0} % {5,8} {6,9:0.00} s {7,9:0.00} s",
            name, sheets.Count, quality.Sum(q => q.Crossings), quality.Sum(q => q.Bends), 100 * quality.Select(q => q.Fill).DefaultIfEmpty(0).Average(),
            quality.Sum(q => q.Faults.Length), times[0], times.Min()));
    }

    /// <summary>Reads an example.</summary>
    public static Panel Read(string example)
    {
        var path = Path.Combine(RepositoryRoot.Find(), "examples", example + ".panel");
        var file = PanelBytes.Decode(Path.GetFileName(path), File.ReadAllBytes(path));
        return PanelLoader.Load(file.Text, new FolderPanelFiles(Path.GetDirectoryName(path)!)).Panel;
    }
}
