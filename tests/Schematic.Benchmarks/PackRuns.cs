using System.Diagnostics;
using System.Globalization;
using Schematic.Analysis;
using Schematic.Drawing;
using Schematic.Layout.Inspection;
using Schematic.Layout.Pack;
using Schematic.Model;
using Schematic.Rendering;
using Schematic.Tests.Generators;

namespace Schematic.Benchmarks;

/// <summary>Pages and processor time of whole packs: the examples, and generated designs of 300 contacts with all lists and ring-outs.</summary>
internal static class PackRuns
{
    private const int Contacts = 300;

    private const int Dpi = 90;

    /// <summary>Prints a row for each, or writes the sheets of one generated design as SVG and PNG.</summary>
    public static int Run(string[] arguments)
    {
        if (arguments is [var contacts, var seed, var folder]) return Write(DesignGenerator.Generate(Number(seed), Number(contacts)), folder);
        Console.WriteLine("pack                          pages  index  circuit  wiring  faces  lists   faults   processor time");
        foreach (var example in CircuitRuns.Examples) Measure(example, CircuitRuns.Read(example));
        for (var i = 1; i <= 3; i++) Measure($"{Contacts} contacts, seed {i}", DesignGenerator.Generate(i, Contacts));
        return 0;
    }

    private static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);

    private static void Measure(string name, Panel panel)
    {
        var start = Process.GetCurrentProcess().TotalProcessorTime;
        var sheets = PackBuilder.Build(panel, []);
        var seconds = (Process.GetCurrentProcess().TotalProcessorTime - start).TotalSeconds;
        int Of(SheetKind kind) => sheets.Count(s => s.Kind == kind);
        Console.WriteLine(string.Format(
            CultureInfo.InvariantCulture, "{0,-29} {1,5} {2,6} {3,8} {4,7} {5,6} {6,6} {7,8} {8,9:0.00} s",
            name, sheets.Length, Of(SheetKind.Index), Of(SheetKind.Circuit), Of(SheetKind.Wiring), Of(SheetKind.Faces), Of(SheetKind.Lists),
            sheets.Sum(s => SheetInspector.Inspect(s).Faults.Length), seconds));
    }

    private static int Write(Panel panel, string folder)
    {
        Directory.CreateDirectory(folder);
        foreach (var sheet in PackBuilder.Build(panel, PanelChecker.Check(panel, [])))
        {
            var (path, svg) = (Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{sheet.Number:000}-{sheet.Kind}")), SvgWriter.Write(sheet));
            File.WriteAllText(path + ".svg", svg);
            File.WriteAllBytes(path + ".png", PngWriter.Write(svg, Dpi));
        }

        return 0;
    }
}
