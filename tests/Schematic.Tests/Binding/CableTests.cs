using Schematic.Analysis;
using Schematic.Model;
using Schematic.Reports;
using Xunit;

namespace Schematic.Tests.Binding;

public class CableTests
{
    private const string Strips = "terminals X1 { 1..3 }\nterminals X2 { 1..2 }\n";

    [Fact]
    public void Cores_are_wires_named_after_their_cable_and_as_long_as_it_is()
    {
        var panel = TestPanels.Load(Strips + """
            cable C1 "desk to engine room" 12 m price 3.20 EUR {
              core 1 brown 0.75 mm2 X1:1 -> X2:1
              core 2 white 14 m X1:2 -> X2:2
              core 3 blue
              screen X1:3
            }
            """);
        var cable = Assert.Single(panel.Cables);
        Assert.Equal(["1", "2", "3"], cable.Cores.AsEnumerable());
        Assert.Equal((12_000, "desk to engine room", 3.20m), (cable.LengthMm!.Value, cable.Description, cable.PricePerMetre!.Amount));
        Assert.Equal((true, null, new TerminalId("X1", "3")), (cable.HasScreen, cable.Screen, cable.ScreenTerminal));
        Assert.Equal([("C1-1", 12_000), ("C1-2", 14_000)], panel.Wires.Select(w => (w.Designator, w.LengthMm!.Value)));
    }

    [Fact]
    public void A_screen_joined_at_both_ends_is_a_wire()
    {
        var panel = TestPanels.Load(Strips + "cable C1 { core a X1:1 -> X2:1 ; screen X1:3 -> X2:2 }");
        Assert.Equal(("C1-screen", null), (panel.Cables[0].Screen, panel.Cables[0].ScreenTerminal));
        Assert.Equal(["C1-a", "C1-screen"], panel.Wires.Select(w => w.Designator));
        Assert.Null(panel.Wires[1].Core);
    }

    [Fact]
    public void A_terminal_that_a_screen_ends_on_is_not_floating_and_the_wire_list_names_it()
    {
        var panel = TestPanels.Load(Strips + "cable C1 1 m { core 1 white X1:1 -> X2:1 ; core 2 brown X1:2 -> X2:2 ; screen X1:3 }");
        Assert.DoesNotContain(PanelChecker.Check(panel), f => f.Rule is "floating-contact" or "unused-core");
        Assert.Contains(
            "The screen of C1 ends on X1:3; at its other end it is cut back and insulated.", WireList.Build(new AnalysisContext(panel)).Notes);
    }
}
