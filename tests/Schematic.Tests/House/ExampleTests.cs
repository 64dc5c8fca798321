using Schematic.Analysis;
using Schematic.Binding;
using Schematic.Diagnostics;
using Schematic.Language;
using Xunit;

namespace Schematic.Tests.House;

/// <summary>The shipped examples are what we would want a reader to copy.</summary>
public class ExampleTests
{
    public static TheoryData<string> Examples => new(
        "lever-frame/lever.panel", "relay-latch/latch.panel", "dsub-breakout/breakout.panel", "engine-order/engine-order.panel");

    [Theory]
    [MemberData(nameof(Examples))]
    public void An_example_has_no_finding(string example)
    {
        var result = PanelLoader.LoadFile(Repository.PathOf($"examples/{example}"));
        var found = result.Diagnostics.Concat(PanelChecker.Check(result.Panel)).Where(d => d.Severity != Severity.Note);
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
    public void An_example_has_a_drawn_pack_beside_it(string example)
    {
        var folder = Path.GetDirectoryName(Repository.PathOf($"examples/{example}"))!;
        Assert.Single(Directory.GetFiles(Path.Combine(folder, "pack"), "*.pdf"));
        Assert.NotEmpty(Directory.GetFiles(Path.Combine(folder, "pack"), "*-schematic.png"));
    }
}
