using System.Diagnostics;
using System.Globalization;
using System.Text;
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
        int fewer = 0, faster = 0;
        SheetsOnce();
        for (var seed = 1; seed <= Designs; seed++)
        {
            var panel = DesignGenerator.Generate(seed, 20 * seed);
            var (ours, theirs, edges) = (Ours(panel), Theirs(panel), Edges(panel).Count);
            if (ours.Crossings < theirs.Crossings) fewer++;
            if (ours.Seconds < theirs.Seconds) faster++;
            Console.WriteLine(string.Format(
                CultureInfo.InvariantCulture, "{0,8} {1,6} | {2,16} {3,6} {4,6:0.00} | {5,15} {6,6} {7,6:0.00}",
                20 * seed, edges, ours.Crossings, ours.Bends, ours.Seconds, theirs.Crossings, theirs.Bends, theirs.Seconds));
        }

        Console.WriteLine($"fewer crossings on {fewer} of {Designs}, less time on {faster} of {Designs}");
        return 0;
    }

    private static void SheetsOnce() => LayoutRuns.SheetsOf(DesignGenerator.Generate(seed: 1, 20));

    private static Figures Ours(Panel panel)
    {
        var clock = Stopwatch.StartNew();
        var sheets = LayoutRuns.SheetsOf(panel);
        var seconds = clock.Elapsed.TotalSeconds;
        var quality = sheets.Select(SheetInspector.Inspect).ToList();
        return new Figures(quality.Sum(q => q.Crossings), quality.Sum(q => q.Bends), seconds);
    }

    private static Figures Theirs(Panel panel)
    {
        var start = new ProcessStartInfo("dot")
        {
            ArgumentList = { "-Gsplines=ortho", "-Grankdir=LR", "-Tplain" },
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        var clock = Stopwatch.StartNew();
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        process.StandardInput.Write(Graph(panel));
        process.StandardInput.Close();
        var plain = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        _ = errors.Result;
        var seconds = clock.Elapsed.TotalSeconds;
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
