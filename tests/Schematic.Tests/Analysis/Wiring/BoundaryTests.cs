using System.Globalization;
using Schematic.Analysis.Wiring;
using Schematic.Diagnostics;
using Schematic.Model;
using Xunit;

namespace Schematic.Tests.Analysis.Wiring;

/// <summary>Limits of the rules about wires and contacts, on each side.</summary>
public sealed class BoundaryTests
{
    // AS39029 ranges by a maker's catalogue (read second-hand); a metric size within two in a hundred of an AWG size is that size.
    [Theory]
    [InlineData("20", Termination.Crimp, 24, 20)]
    [InlineData("22D", Termination.Crimp, 28, 22)]
    [InlineData("22", Termination.Crimp, 28, 22)]
    [InlineData("16", Termination.Crimp, 20, 16)]
    [InlineData("16", Termination.Solder, 22, 16)]
    [InlineData("12", Termination.Solder, 14, 12)]
    [InlineData("10", Termination.Crimp, 10, 10)]
    public void A_contact_takes_the_wires_of_its_size_and_two_in_a_hundred_more(string size, Termination termination, int thinnest, int thickest)
    {
        var range = WireRange.Of(size, termination)!;
        Assert.Equal(new WireRange(thinnest, thickest), range);
        var (thin, thick) = (WireGauge.FromAwg(thinnest).AreaMm2, WireGauge.FromAwg(thickest).AreaMm2);
        Assert.False(range.IsTooThick(WireGauge.FromAwg(thickest)));
        Assert.True(range.IsTooThick(WireGauge.FromAwg(thickest - 1)));
        Assert.False(range.IsTooThin(WireGauge.FromAwg(thinnest)));
        Assert.True(range.IsTooThin(WireGauge.FromAwg(thinnest + 1)));
        Assert.False(range.IsTooThick(WireGauge.FromMm2(thick * 1.019)));
        Assert.True(range.IsTooThick(WireGauge.FromMm2(thick * 1.021)));
        Assert.True(range.IsTooThick(WireGauge.FromMm2(thick * 1.11)));
        Assert.False(range.IsTooThin(WireGauge.FromMm2(thin * 0.981)));
        Assert.True(range.IsTooThin(WireGauge.FromMm2(thin * 0.979)));
    }

    [Fact]
    public void A_size_that_no_table_has_is_not_judged() => Assert.Null(WireRange.Of("4", Termination.Crimp));

    // MIL-R-19309D 3.3.9.1: no more than three at one terminal. One in a crimp, a cup or a clamp (common practice, no source).
    [Theory]
    [InlineData("crimp", 1, null)]
    [InlineData("crimp", 2, Severity.Error)]
    [InlineData("solder", 1, null)]
    [InlineData("solder", 2, Severity.Warning)]
    [InlineData("clamp", 2, Severity.Warning)]
    [InlineData("screw", 3, null)]
    [InlineData("screw", 4, Severity.Warning)]
    [InlineData("", 2, Severity.Warning)]
    public void A_contact_takes_as_many_wires_as_its_fastening(string fastening, int wires, Severity? severity)
    {
        var found = MarkedPanel.Check($$"""
            connector J1 { pins ; ring 4 ; {{(fastening.Length > 0 ? fastening : "size 20")}} }
            terminals X1 { 1..9 ; wires 4 }
            {{Wires("J1:1", wires)}}
            """).Where(d => d.Rule == "two-wires-in-contact").ToList();
        Assert.Equal(severity, found.Select(d => (Severity?)d.Severity).SingleOrDefault());
    }

    [Theory]
    [InlineData("terminals X2 { 1 }", "X2:1", 3, false)]
    [InlineData("terminals X2 { 1 }", "X2:1", 4, true)]
    [InlineData("terminals X2 { 1 ; wires 2 }", "X2:1", 2, false)]
    [InlineData("terminals X2 { 1 ; wires 2 }", "X2:1", 3, true)]
    [InlineData("lamp DS1 24 V 40 mA", "DS1:X1", 3, false)]
    [InlineData("lamp DS1 24 V 40 mA", "DS1:X1", 4, true)]
    [InlineData("splice SP1", "SP1:1", 9, false)]
    public void A_terminal_takes_three_unless_it_says_otherwise(string part, string terminal, int wires, bool isTold)
    {
        Assert.Equal(isTold, MarkedPanel.Check($$"""
            {{part}}
            terminals X1 { 1..9 ; wires 4 }
            {{Wires(terminal, wires)}}
            """).Any(d => d.Rule == "crowded-terminal"));
    }

    // Published tables round to a hundredth of a millimetre; three tenths apart are two places.
    [Theory]
    [InlineData(0.29, false)]
    [InlineData(0.31, true)]
    public void Halves_mate_whose_contacts_stand_in_one_place(double apart, bool isTold) => Assert.Equal(isTold, MarkedPanel.Check(string.Create(
        CultureInfo.InvariantCulture, $$"""
        connector J1 { pins ; positions { 1 0 mm 0 mm ; 2 5 mm 0 mm } ; mates P1 }
        connector P1 { sockets ; positions { 1 0 mm 0 mm ; 2 {{5 + apart}} mm 0 mm } }
        """)).Any(d => d.Rule == "mates-mismatch"));

    private static string Wires(string terminal, int count) => string.Join('\n', Enumerable.Range(1, count).Select(
        i => string.Create(CultureInfo.InvariantCulture, $"wire W{i} 22 AWG black 100 mm {terminal} -> X1:{i}")));
}
