using Xunit;

namespace Schematic.Tests.Analysis.Wiring;

public class MatesMismatchTests
{
    [Theory]
    [InlineData("pins ; strip 2", "sockets ; strip 3", "J1 has 2 contacts and P1 has 3.")]
    [InlineData("pins ; strip 2", "pins ; strip 2", "J1 and P1 both carry pins.")]
    [InlineData("sockets ; strip 2", "sockets ; strip 2", "J1 and P1 both carry sockets.")]
    [InlineData("pins ; ring 2 radius 5 mm names A B", "sockets ; ring 2 radius 5 mm names A C", "J1 has a contact B, P1 has none of that name.")]
    [InlineData("pins ; ring 3 radius 5 mm clockwise on front of pins", "sockets ; ring 3 radius 5 mm clockwise on front of sockets", "Contact 1 does not sit in the same place in J1 and P1.")]
    [InlineData("pins ; size 20 ; strip 2", "sockets ; size 16 ; strip 2", "Contact 1 is of size 20 in J1 and of size 16 in P1.")]
    public void Halves_that_differ_are_found_once(string first, string second, string message)
    {
        var text = $$"""
            connector J1 { {{first}} ; mates P1 }
            connector P1 { {{second}} ; mates J1 }
            """;
        var finding = Assert.Single(MarkedPanel.Check(text), f => f.Rule == "mates-mismatch");
        Assert.Equal(message, finding.Message);
        Assert.Single(finding.Related);
    }

    [Theory]
    [InlineData("pins ; strip 2", "sockets")]
    [InlineData("sockets ; spiral 19 rings 1 6 12 from centre clockwise on front of pins", "pins")]
    [InlineData("pins ; strip 2", "sockets ; strip 2")]
    [InlineData("strip 2", "strip 2")]
    public void Halves_that_fit_give_no_finding(string first, string second) => MarkedPanel.AssertNone(
        $$"""
        connector J1 { {{first}} }
        connector P1 { {{second}} ; mates J1 }
        """,
        "mates-mismatch");

    [Fact]
    public void A_mate_of_a_mate_is_found()
    {
        var finding = Assert.Single(
            MarkedPanel.Check(
                """
                connector J1 { pins ; strip 2 }
                connector P1 { sockets ; mates J1 }
                connector P2 { sockets ; mates J1 }
                """),
            f => f.Rule == "mates-mismatch");
        Assert.Equal("P2 and P1 are both said to mate J1.", finding.Message);
    }

    [Fact]
    public void A_chain_of_mates_is_found()
    {
        var finding = Assert.Single(
            MarkedPanel.Check(
                """
                connector J1 { pins ; strip 2 ; mates P1 }
                connector P1 { sockets ; strip 2 ; mates J2 }
                connector J2 { pins ; strip 2 }
                """),
            f => f.Rule == "mates-mismatch");
        Assert.Equal("J1 is said to mate P1, but P1 is said to mate J2.", finding.Message);
    }
}
