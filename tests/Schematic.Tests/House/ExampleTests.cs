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
    /// <summary>As DEVELOPERS.md says that the packs are drawn.</summary>
    private const int PackDpi = 90;

    public static TheoryData<string> Examples => new(
        "lever-frame/lever.panel", "relay-latch/latch.panel", "dsub-breakout/breakout.panel", "engine-order/engine-order.panel",
        "gate-desk/gate-desk.panel", "signal-lamp/signal-lamp.panel");

    // The unit that is half traced has a claim that waits for a measurement: HalfTracedUnitTests names it.
    [Theory]
    [MemberData(nameof(Examples))]
    public void An_example_has_no_finding(string example)
    {
        var found = ExamplePacks.Of($"examples/{example}").Findings.Where(d => d.Severity != Severity.Note && d.Rule != "claim-undecided");
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
        var files = PackFiles.Render(fresh.Sheets, fresh.Panel.Title.Number, fresh.Panel.Title, [SheetFormat.Png, SheetFormat.Pdf], PackDpi).ToDictionary(f => f.Name, f => f.Bytes);
        Assert.Equal(PageTexts(files.Single(f => f.Key.EndsWith(".pdf", StringComparison.Ordinal)).Value), PageTexts(kept));
        var pictures = files.Where(f => f.Key.EndsWith(".png", StringComparison.Ordinal)).ToDictionary();
        Assert.Equal(pictures.Keys.Order(StringComparer.Ordinal), Directory.GetFiles(pack, "*.png").Select(p => Path.GetFileName(p)).Order(StringComparer.Ordinal));
        Assert.All(pictures, p => Assert.True(p.Value.AsSpan().SequenceEqual(File.ReadAllBytes(Path.Combine(pack, p.Key))), $"{p.Key} is another picture"));
    }

    private static List<string> PageTexts(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return [.. document.GetPages().Select(p => p.Text)];
    }
}
