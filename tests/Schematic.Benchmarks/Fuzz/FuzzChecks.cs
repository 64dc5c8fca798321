using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using System.Xml;
using Schematic.Analysis;
using Schematic.Bench.Readings;
using Schematic.Binding;
using Schematic.Diagnostics;
using Schematic.Language;
using Schematic.Layout.Pack;
using Schematic.Model;
using Schematic.Rendering;
using Schematic.Reports;
using Schematic.Text;

namespace Schematic.Benchmarks.Fuzz;

/// <summary>
/// What must be true whatever the text is: no exception but findings; nothing that steers a terminal in any output; no number that is
/// none; the formatter keeps model and findings and is done after once; SVG is well-formed and inert; sheets pass the inspector or the
/// command says so.
/// </summary>
internal sealed class FuzzChecks(FuzzCorpus corpus)
{
    private static readonly string[] NoNumbers = ["NaN", "Infinity", "∞"];

    /// <summary>How many sheets the inspector found a fault on; each was told, so they are counted and do not fail.</summary>
    public int SheetsWithFaults { get; private set; }

    /// <summary>How many sheets were drawn.</summary>
    public int Sheets { get; private set; }

    /// <summary>
    /// Runs a panel through reading, checking and the formatter; through printing, the model of what was formatted and the lists where it is
    /// <paramref name="thorough"/>, through drawing where it <paramref name="draws"/>. <paramref name="step"/> is told each stage before it begins.
    /// </summary>
    public void Panel(FuzzText text, bool thorough, bool draws, Action<string> step)
    {
        step("read");
        var loaded = Load(text.Name, text.Text);
        step("check");
        var findings = PanelChecker.Check(loaded.Panel, loaded.Diagnostics);
        foreach (var finding in findings) IsNumber(finding.Message + " " + finding.Help, text.Text, "a message");
        step("format");
        var formatted = Formatted(text);
        if (thorough)
        {
            step("print");
            Printed(text, findings);
            step("format, read again");
            Unchanged(text, loaded, formatted);
        }

        if (thorough && !loaded.HasErrors)
        {
            step("lists");
            Lists(loaded.Panel);
        }

        if (!draws || loaded.Panel.Parts.IsEmpty) return;
        step("draw");
        Drawn(PackBuilder.Draw(loaded.Panel, findings), text);
        step("face");
        foreach (var connector in loaded.Panel.Parts.OfType<Connector>())
        {
            foreach (var sheet in PackBuilder.BuildFaces(loaded.Panel, connector, findings)) Svg(SvgWriter.Write(sheet), text);
        }
    }

    /// <summary>Runs a readings file through reading and printing, beside a panel and alone.</summary>
    public static void Readings(FuzzText text, Panel panel, Action<string> step)
    {
        step("readings");
        foreach (var beside in new[] { panel, null })
            Printed(text, ReadingsLoader.Load(new SourceText(text.Name, text.Text), beside).Diagnostics);
    }

    /// <summary>Loads a text as a file among the examples.</summary>
    public LoadResult Load(string name, string text) => PanelLoader.Load(new SourceText(name, text), corpus.Files);

    private static void Printed(FuzzText text, ImmutableArray<Diagnostic> findings)
    {
        var written = new StringWriter(CultureInfo.InvariantCulture);
        new TextPrinter(TextTheme.Plain, 100).Print(findings, written);
        Steers(written.ToString(), "a message");
        foreach (var finding in findings) IsNumber(finding.Message + " " + finding.Help, text.Text, "a message");
        var json = new StringWriter(CultureInfo.InvariantCulture);
        JsonPrinter.Print(text.Name, findings, json);
        Steers(json.ToString(), "JSON of findings");
        JsonDocument.Parse(json.ToString()).Dispose();
    }

    private static string Formatted(FuzzText text)
    {
        var once = PanelFormatter.Format(text.Text);
        if (once != text.Text && PanelFormatter.Format(once) != once) throw new FuzzException("formatting twice gives something else than formatting once");
        return once;
    }

    private void Unchanged(FuzzText text, LoadResult loaded, string formatted)
    {
        if (formatted == text.Text) return;
        var again = Load(text.Name, formatted);
        Same([.. loaded.Diagnostics.Select(d => $"{d.Rule}: {d.Message}").Order(StringComparer.Ordinal)], [.. again.Diagnostics.Select(d => $"{d.Rule}: {d.Message}").Order(StringComparer.Ordinal)], "findings");
        Same(
            [.. loaded.Panel.Parts.Select(p => p.Designator), .. loaded.Panel.Wires.Select(w => $"{w.Designator} {w.From} {w.To} {w.LengthMm}"), .. loaded.Panel.Nets.Select(n => n.Name)],
            [.. again.Panel.Parts.Select(p => p.Designator), .. again.Panel.Wires.Select(w => $"{w.Designator} {w.From} {w.To} {w.LengthMm}"), .. again.Panel.Nets.Select(n => n.Name)],
            "model");
    }

    private static void Same(ImmutableArray<string> before, ImmutableArray<string> after, string what)
    {
        if (before.SequenceEqual(after)) return;
        var place = before.Zip(after).TakeWhile(p => p.First == p.Second).Count();
        throw new FuzzException($"formatting changes the {what}: '{before.ElementAtOrDefault(place)}' becomes '{after.ElementAtOrDefault(place)}'");
    }

    private static void Lists(Panel panel)
    {
        var context = new AnalysisContext(panel);
        foreach (var list in ReportLists.All)
        {
            var tables = list.Build(context);
            foreach (var table in tables)
            {
                var csv = CsvTableWriter.Write(table);
                Steers(csv, $"the list {list.Command}");
                foreach (var cell in table.Rows.SelectMany(r => r))
                {
                    IsNumber(cell, "", $"the list {list.Command}");
                    if (CsvTableWriter.Safe(cell) is ['=' or '@' or '+' or '\t', ..]) throw new FuzzException($"a cell of {list.Command} is a formula: {cell}");
                }
            }

            var json = JsonTableWriter.Write(tables);
            Steers(json, $"JSON of {list.Command}");
            JsonDocument.Parse(json).Dispose();
        }
    }

    private void Drawn(DrawnPack pack, FuzzText text)
    {
        Sheets += pack.Sheets.Length;
        SheetsWithFaults += pack.Findings.Count(f => f.Rule == "sheet-fault");
        Printed(text, pack.Findings);
        foreach (var sheet in pack.Sheets) Svg(SvgWriter.Write(sheet), text);
    }

    private static void Svg(string svg, FuzzText text)
    {
        Steers(svg, "a sheet");
        IsNumber(svg, text.Text, "a sheet");
        using var reader = XmlReader.Create(new StringReader(svg), new XmlReaderSettings { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null });
        while (reader.Read())
        {
            if (reader.NodeType != XmlNodeType.Element) continue;
            if (reader.LocalName is "script" or "foreignObject" or "image" or "use") throw new FuzzException($"a sheet holds an element {reader.LocalName}");
            while (reader.MoveToNextAttribute())
            {
                if (reader.LocalName.StartsWith("on", StringComparison.OrdinalIgnoreCase) || reader.LocalName == "href")
                    throw new FuzzException($"a sheet holds an attribute {reader.LocalName}");
            }
        }
    }

    private static void Steers(string output, string where)
    {
        foreach (var rune in output.EnumerateRunes())
        {
            if (rune.Value is not ('\n' or '\r') && HiddenCharacters.IsHidden(rune))
                throw new FuzzException($"{where} holds {HiddenCharacters.Code(rune.Value)}");
        }
    }

    /// <summary>No word for what is not a number, unless the user wrote it.</summary>
    private static void IsNumber(string output, string source, string where)
    {
        var word = NoNumbers.FirstOrDefault(n => output.Contains(n, StringComparison.Ordinal) && !source.Contains(n, StringComparison.Ordinal));
        if (word is not null) throw new FuzzException($"{where} holds {word}");
    }
}

/// <summary>Something that must be true is not.</summary>
internal sealed class FuzzException(string message) : Exception(message);
