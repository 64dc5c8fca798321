using Schematic.Analysis;
using Schematic.Binding;
using Xunit;

namespace Schematic.Tests.Analysis.Positions;

public class ExamplePanelTests
{
    [Theory]
    [InlineData("lever-frame/lever.panel")]
    [InlineData("relay-latch/latch.panel")]
    [InlineData("engine-order/engine-order.panel")]
    [InlineData("dsub-breakout/breakout.panel")]
    public void An_example_is_proved_in_every_position(string file)
    {
        var loaded = PanelLoader.LoadFile(Repository.PathOf("examples/" + file));
        Assert.False(loaded.HasErrors, string.Join("; ", loaded.Diagnostics.Select(d => d.Message)));
        var context = new AnalysisContext(loaded.Panel);
        var findings = PanelChecker.AllChecks.Where(c => c.Stage == CheckStage.Positions).SelectMany(c => c.Run(context));
        Assert.Empty(findings.Select(f => $"{f.Rule}: {f.Message} [{string.Join(" | ", f.Trace)}]"));
    }
}
