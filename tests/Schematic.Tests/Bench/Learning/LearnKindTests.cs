using Xunit;

namespace Schematic.Tests.Bench.Learning;

/// <summary>What a draft makes of kinds of devices that have no word of their own in readings: what reads alike.</summary>
public class LearnKindTests
{
    [Theory]
    [InlineData("rectifier BR1 1.5 A 100 V { J1:1 J1:2 J1:3 J1:4 }")]
    [InlineData("synchro B1 26 V rotor 40 ohm stator 30 ohm { J1:1 J1:2 J1:3 J1:4 J1:5 }")]
    [InlineData("device U1 { terminals 1 2 3 4 ; contacts J1:1 2 3 4 ; ohms 1 2 120 ohm ; winding 3 4 35 ohm ; open rest }")]
    public void A_draft_reads_as_the_unit_does(string device)
    {
        var unit = new UnknownUnit($"connector J1 \"box\" {{ pins ; strip 6 pitch 5 mm }}\n{device}\n");
        Assert.Null(unit.DifferenceOf(unit.Complete()));
        Assert.Null(unit.DifferenceOf(unit.Adaptive(500)));
    }
}
