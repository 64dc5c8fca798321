using Schematic.Analysis;
using Xunit;

namespace Schematic.Tests.Analysis.Wiring;

public class WireColourCheckTests
{
    private const string Strip = """
        connector J1 "desk plug" { pins ; solder ; strip 4 pitch 5.08 mm }
        connector J2 "other plug" { pins ; solder ; strip 4 pitch 5.08 mm }
        terminals X1 "strip" { 1..4 PE }

        """;

    [Theory]
    [InlineData("wire W1 white/blue J1:1 -> X1:1\nwire W2 blue/white J1:2 -> X1:2", 1)]
    [InlineData("wire W1 white/blue J1:1 -> X1:1\nwire W2 blue/white J1:2 -> J2:2\nwire W3 white/blue J2:1 -> X1:2", 2)]
    [InlineData("wire W1 white/blue J1:1 -> X1:1\nwire W2 blue/white J2:2 -> X1:2", 0)] // no connector where both end
    [InlineData("wire W1 white/blue J1:1 -> X1:1\nwire W2 white/blue J1:2 -> X1:2", 0)]
    [InlineData("wire W1 white/blue J1:1 -> X1:1\nwire W2 blue J1:2 -> X1:2", 0)]
    public void Exchanged_body_and_tracer_on_one_connector_are_told(string wires, int count) =>
        Assert.Equal(count, PanelChecker.Check(TestPanels.Load(Strip + wires)).Count(d => d.Rule == "exchanged-colours"));

    [Theory]
    [InlineData("wire W1 green-yellow J1:1 -> X1:1", 1)]
    [InlineData("wire W1 green/yellow J1:1 -> X1:1", 1)]
    [InlineData("wire W1 yellow/green J1:1 -> X1:1", 1)]
    [InlineData("wire W1 green-yellow J1:1 -> X1:PE", 0)]
    [InlineData("net EARTH J1:1 X1:1\nwire W1 green-yellow J1:1 -> X1:1", 0)]
    [InlineData("wire W1 green J1:1 -> X1:1", 0)]
    public void The_earth_colour_on_something_else_is_told(string wires, int count) =>
        Assert.Equal(count, PanelChecker.Check(TestPanels.Load(Strip + wires)).Count(d => d.Rule == "earth-colour"));
}
