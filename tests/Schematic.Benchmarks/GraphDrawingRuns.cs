using System.Diagnostics;
using System.Globalization;
using System.Text;
using Schematic.Drawing;
using Schematic.Layout.Inspection;
using Schematic.Model;
using Schematic.Tests.Generators;

namespace Schematic.Benchmarks;

/// <summary>
/// The same netlists drawn by a general-purpose graph drawing program, Graphviz (<c>dot -Gsplines=ortho</c>; Debian package
/// <c>graphviz</c>), side by side with our sheets: crossings, bends, time. A part is a box there, a wire or joint an edge.
/// </summary>
internal static class GraphDrawingRuns
{
    private const int Designs = 20;

    /// <summary>Prints a row for each of twenty designs and the sums.</summary>
    public static int Run()
    {
        Console.WriteLine("contacts  edges |  ours: crossings  bends      s |  dot: crossings  bends      s");
        int fewer = 0, faster = 0, nowhereMore = 0;
        SheetsOnce();
        for (var seed = 1; seed <= Designs; seed++)
        {
            var panel = DesignGenerator.Generate(seed, 20 * seed);
            var (ours, theirs, edges) = (Ours(panel), Theirs(panel), Edges(panel).Count);
            if (ours.Crossings < theirs.Crossings) fewer++;
            if (ours.Crossings <= theirs.Crossings) nowhereMore++;
            if (ours.Seconds < theirs.Seconds) faster++;
            Console.WriteLine(string.Format(
                CultureInfo.InvariantCulture, "{0,8} {1,6} | {2,16} {3,6} {4,6:0.00} | {5,15} {6,6} {7,6:0.00}",
                20 * seed, edges, ours.Crossings, ours.Bends, ours.Seconds, theirs.Crossings, theirs.Bends, theirs.Seconds));
        }

        Console.WriteLine($"fewer crossings on {fewer} of {Designs}, more on {Designs - nowhereMore}; less processor time on {faster} of {Designs}");
        return 0;
    }

    private static void SheetsOnce() => LayoutRuns.SheetsOf(DesignGenerator.Generate(seed: 1, 20));

    private static Figures Ours(Panel panel)
    {
        // Processor time, the best of three: other programs on the machine do not count.
        var seconds = double.MaxValue;
        for (var round = 0; round < 3; round++)
        {
            using var own = Process.GetCurrentProcess();
            var before = own.TotalProcessorTime;
            LayoutRuns.Draw(panel);
            own.Refresh();
            seconds = Math.Min(seconds, (own.TotalProcessorTime - before).TotalSeconds);
        }

        var quality = LayoutRuns.SheetsOf(panel).Where(s => s.Kind == SheetKind.Wiring).Select(SheetInspector.Inspect).ToList();
        return new Figures(quality.Sum(q => q.Crossings), quality.Sum(q => q.Bends), seconds);
    }

    private static Figures Theirs(Panel panel)
    {
        // The shell's clock says how much processor time the other program took; its own lines come first.
        var start = new ProcessStartInfo("bash")
        {
            ArgumentList = { "-c", "TIMEFORMAT='%U %S'; time dot -Gsplines=ortho -Grankdir=LR -Tplain" },
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        process.StandardInput.Write(Graph(panel));
        process.StandardInput.Close();
        var plain = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        var seconds = errors.Result.Trim().Split('\n')[^1].Split(' ').Sum(t => double.Parse(t, CultureInfo.InvariantCulture));
        var routes = PlainRoutes.Read(plain);
        return new Figures(PlainRoutes.Crossings(routes), PlainRoutes.Bends(routes), seconds);
    }

    private static string Graph(Panel panel)
    {
        var text = new StringBuilder("graph g { node [shape=box];\n");
        foreach (var part in panel.Parts) text.Append(CultureInfo.InvariantCulture, $"\"{part.Designator}\";\n");
        foreach (var (from, to) in Edges(panel)) text.Append(CultureInfo.InvariantCulture, $"\"{from}\" -- \"{to}\";\n");
        return text.Append("}\n").ToString();
    }

    private static List<(string From, string To)> Edges(Panel panel)
    {
        var wires = panel.Wires.Select(w => (w.From.Part, w.To.Part));
        var joints = panel.Attachments.Select(a => (a.Device.Part, a.Contact.Part));
        var nets = panel.Wires.IsEmpty
            ? panel.Nets.SelectMany(n => n.Members.Skip(1).Select(m => (n.Members[0].Terminal.Part, m.Terminal.Part)))
            : [];
        return [.. wires, .. joints, .. nets];
    }

    private sealed record Figures(int Crossings, int Bends, double Seconds);
}
