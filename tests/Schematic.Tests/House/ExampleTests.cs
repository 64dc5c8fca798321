using Schematic.Diagnostics;
using Schematic.Language;
using Schematic.Rendering;
using UglyToad.PdfPig;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.House;

/// <summary>The shipped examples are what we would want a reader to copy.</summary>
public class ExampleTests
{
    public static TheoryData<string> Examples => new(
        "lever-frame/lever.panel", "relay-latch/latch.panel", "dsub-breakout/breakout.panel", "engine-order/engine-order.panel",
        "gate-desk/gate-desk.panel", "signal-lamp/signal-lamp.panel");

    [Theory]
    [MemberData(nameof(Examples))]
    public void An_example_has_no_finding(string example)
    {
        var found = ExamplePacks.Of($"examples/{example}").Findings.Where(d => d.Severity != Severity.Note);
        Assert.Empty(found.Select(d => $"{d.Rule}: {d.Message}"));
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void An_example_stands_in_its_usual_form(string example)
    {
        var text = File.ReadAllText(Repository.PathOf($"examples/{example}"));
        Assert.Equal(text, PanelFormatter.Format(text));
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void The_pack_beside_an_example_says_what_a_fresh_one_says(string example)
    {
        var pack = Path.Combine(Path.GetDirectoryName(Repository.PathOf($"examples/{example}"))!, "pack");
        var kept = File.ReadAllBytes(Assert.Single(Directory.GetFiles(pack, "*.pdf")));
        var fresh = ExamplePacks.Of($"examples/{example}");
        Assert.Equal(PageTexts(PdfWriter.Write(fresh.Sheets.Select(SvgWriter.Write), fresh.Panel.Title)), PageTexts(kept));
        Assert.Equal(fresh.Sheets.Length, Directory.GetFiles(pack, "*.png").Length);
    }

    private static List<string> PageTexts(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return [.. document.GetPages().Select(p => p.Text)];
    }
}
