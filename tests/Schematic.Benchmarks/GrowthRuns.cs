using System.Globalization;
using System.Text;
using Schematic.Binding;
using Schematic.Text;

namespace Schematic.Benchmarks;

/// <summary>
/// How time and memory grow: reading and binding of long files, and drawing of large packs by the native program, each size in a
/// process of its own so that the peak belongs to it alone.
/// </summary>
internal static class GrowthRuns
{
    private static readonly int[] Lines = [1_000, 10_000, 100_000];
    private static readonly int[] Lamps = [50, 100, 200, 400];

    /// <summary>Runs every size and prints the tables.</summary>
    public static int Run(string root)
    {
        Console.WriteLine("Processor time, user and system, of whole processes, the start of the runtime included: of this program, not native, for lines; of the native program for lamps.");
        Console.WriteLine("   lines      time    lines a second    peak MB   (read and bound, ready for the checks)");
        foreach (var lines in Lines)
        {
            var run = MeasuredRun.OfOwn("load", lines.ToString(CultureInfo.InvariantCulture));
            Console.WriteLine(string.Format(CultureInfo.InvariantCulture, "{0,8} {1,7:0.00} s {2,17:0} {3,10:0}", lines, run.Seconds, lines / run.Seconds, run.PeakMB));
        }

        var work = Directory.CreateTempSubdirectory("growth-").FullName;
        try
        {
            Draw(ColdStart.PublishNative(root, Path.Combine(work, "native")), work);
            return 0;
        }
        finally
        {
            Directory.Delete(work, recursive: true);
        }
    }

    /// <summary>Reads and binds a file of so many wires: what is measured.</summary>
    public static int Load(int lines)
    {
        var panel = PanelLoader.Load(new SourceText("growth.panel", Wires(lines)), MemoryPanelFiles.None).Panel;
        return panel.Wires.Length == lines ? 0 : 2;
    }

    /// <summary>The text of a file of wires on two large mated connectors.</summary>
    public static string Wires(int lines)
    {
        var text = new StringBuilder("connector J1 { pins ; grid 100 by 10 by-rows on front of pins }\nconnector P1 { sockets ; mates J1 }\n");
        for (var i = 0; i < lines; i++)
            text.Append(CultureInfo.InvariantCulture, $"wire W{i}  22 AWG black 450 mm   J1:{(i % 1000) + 1} -> P1:{(i * 7 % 1000) + 1}   # run {i}\n");
        return text.ToString();
    }

    private static void Draw(string program, string work)
    {
        Console.WriteLine("   lamps   sheets      time    peak MB   (checked, drawn as SVG, PNG and PDF)");
        foreach (var lamps in Lamps)
        {
            var panel = Path.Combine(work, "growth.panel");
            File.WriteAllText(panel, GrowthPanels.TextOf("independent", lamps));
            var output = Path.Combine(work, lamps.ToString(CultureInfo.InvariantCulture));
            var run = MeasuredRun.Of(program, "draw", panel, "--force", "--out", output);
            var sheets = Directory.GetFiles(output, "*.svg").Length;
            Console.WriteLine(string.Format(CultureInfo.InvariantCulture, "{0,8} {1,8} {2,7:0.0} s {3,10:0}", lamps, sheets, run.Seconds, run.PeakMB));
        }
    }
}
