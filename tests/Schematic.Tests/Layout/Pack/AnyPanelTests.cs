using CsCheck;
using Schematic.Analysis;
using Schematic.Layout.Pack;
using Schematic.Tests.Binding;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Layout.Pack;

public class AnyPanelTests
{
    [Fact]
    public void Any_panel_that_can_be_read_can_be_drawn_with_or_without_errors() =>
        Gen.Select(PanelSample.Panels, Gen.Select(Gen.Int[0, 100_000], Gen.Int[0, 100_000]).Array[0, 6]).Holds(
            (panel, moves) =>
            {
                var (read, findings) = TestPanels.Read(PanelSampleWriter.WriteWithMovedWords(panel, moves));
                Assert.NotEmpty(PackBuilder.Build(read, PanelChecker.Check(read, findings)));
            },
            count: 25);
}
