using System.Diagnostics;
using System.Globalization;
using System.Text;
using Schematic.Drawing;
using Schematic.Layout.Inspection;
using Schematic.Model;
using Schematic.Rendering;
using Schematic.Tests.Generators;

namespace Schematic.Benchmarks;

/// <summary>
/// The same netlists drawn by a general-purpose graph drawing program, Graphviz (<c>dot -Gsplines=ortho</c>; Debian package
/// <c>graphviz</c>), side by side with our sheets: crossings, bends, time. A part is a box there, a wire or joint an edge.
/// Time is processor time of one drawing, both programs running already: ours from the panel in memory to the text of the finished sheets
/// (shapes, lettering, frame, index, SVG), theirs from the text of the graph to the text of the routes.
/// </summary>
internal static class GraphDrawingRuns
{
    private const int Designs = 20;
    private const int WarmRuns = 12;
    private const int Runs = 10;

    /// <summary>Prints a row for each of twenty designs and the sums.</summary>
    public static int Run()
    {
        Console.WriteLine("contacts  edges |  ours: crossings  bends      s |  dot: crossings  bends      s");
        int fewer = 0, faster = 0, nowhereMore = 0;
        for (var seed = 1; seed <= Designs; seed++)
        {
            var panel = DesignGenerator.Generate(seed, 20 * seed);
            var (ours, theirs, edges) = (Ours(panel), Theirs(panel), Edges(panel).Count);
            if (ours.Crossings < theirs.Crossings) fewer++;
            if (ours.Crossings <= theirs.Crossings) nowhereMore++;
            if (ours.Seconds < theirs.Seconds) faster++;
            Console.WriteLine(string.Format(
                CultureInfo.InvariantCulture, "{0,8} {1,6} | {2,16} {3,6} {4,6:0.000} | {5,15} {6,6} {7,6:0.000}",
                20 * seed, edges, ours.Crossings, ours.Bends, ours.Seconds, theirs.Crossings, theirs.Bends, theirs.Seconds));
        }

        Console.WriteLine($"fewer crossings on {fewer} of {Designs}, more on {Designs - nowhereMore}; less processor time on {faster} of {Designs}");
        return 0;
    }

    /// <summary>Processor time of one drawing by us, warm: the mean of those that follow many.</summary>
    private static Figures Ours(Panel panel)
    {
        void Draw()
        {
            foreach (var sheet in LayoutRuns.SheetsOf(panel)) SvgWriter.Write(sheet);
        }

        // Code that is called often is compiled again in the background: it is given the time to.
        for (var round = 0; round < 3; round++)
        {
            for (var i = 0; i < WarmRuns; i++) Draw();
            Thread.Sleep(300);
        }

        var before = Environment.CpuUsage.TotalTime;
        for (var i = 0; i < Runs; i++) Draw();
        var seconds = (Environment.CpuUsage.TotalTime - before).TotalSeconds / Runs;
        var quality = LayoutRuns.SheetsOf(panel).Where(s => s.Kind == SheetKind.Wiring).Select(SheetInspector.Inspect).ToList();
        return new Figures(quality.Sum(q => q.Crossings), quality.Sum(q => q.Bends), seconds);
    }

    /// <summary>The same by the other program: so many drawings in one process less one in a process.</summary>
    private static Figures Theirs(Panel panel)
    {
        var graph = Graph(panel);
        var (once, plain) = Dot(graph);
        var (often, _) = Dot(string.Concat(Enumerable.Repeat(graph, Runs + 1)));
        var routes = PlainRoutes.Read(plain);
        return new Figures(PlainRoutes.Crossings(routes), PlainRoutes.Bends(routes), (often - once) / Runs);
    }

    private static (double Seconds, string Plain) Dot(string graphs)
    {
        // The shell's clock says how much processor time the other program took; its own lines come first.
        var start = new ProcessStartInfo("bash")
        {
            ArgumentList = { "-c", "TIMEFORMAT='%3U %3S'; time dot -Gsplines=ortho -Grankdir=LR -Tplain" },
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var plain = process.StandardOutput.ReadToEndAsync();
        process.StandardInput.Write(graphs);
        process.StandardInput.Close();
        process.WaitForExit();
        return (errors.Result.Trim().Split('\n')[^1].Split(' ').Sum(t => double.Parse(t, CultureInfo.InvariantCulture)), plain.Result);
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
