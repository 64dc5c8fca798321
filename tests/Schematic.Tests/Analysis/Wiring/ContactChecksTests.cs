using Schematic.Analysis;
using Schematic.Diagnostics;
using Xunit;

namespace Schematic.Tests.Analysis.Wiring;

/// <summary>Contacts of connectors and terminals of strips: how many wires, which sizes, what stays open.</summary>
public class ContactChecksTests
{
    [Theory]
    [InlineData("crimp", "two-wires-in-contact", Severity.Error)]
    [InlineData("solder", "two-wires-in-contact", Severity.Warning)]
    [InlineData("clamp", "two-wires-in-contact", Severity.Warning)]
    [InlineData("", "two-wires-in-contact", Severity.Warning)]
    public void Two_wires_in_a_contact_are_judged_by_how_it_is_fastened(string fastened, string rule, Severity severity)
    {
        var finding = MarkedPanel.AssertOnly(
            $$"""
            connector J1 { pins ; {{fastened}} ; strip 1 }
            terminals X1 { 1..2 }
            wire W1 J1:1 -> X1:1
            wire W2 «J1:1» -> X1:2
            """.Replace("pins ;  ;", "pins ;", StringComparison.Ordinal),
            rule,
            "2 wires end on J1:1 (W1 and W2): " + (fastened switch
            {
                "crimp" => "a crimp contact takes one.",
                "solder" => "a solder cup takes one well.",
                "clamp" => "a spring clamp takes one.",
                _ => "a contact takes one.",
            }));
        Assert.Equal(severity, finding.Severity);
    }

    [Fact]
    public void A_screw_takes_three_wires_and_not_four()
    {
        const string three = """
            connector J1 { pins ; screw ; strip 1 }
            terminals X1 { 1..4 }
            wire W1 J1:1 -> X1:1
            wire W2 J1:1 -> X1:2
            wire W3 J1:1 -> X1:3
            """;
        MarkedPanel.AssertNone(three, "two-wires-in-contact");
        MarkedPanel.AssertOnly(three + "\nwire W4 «J1:1» -> X1:4", "two-wires-in-contact", "4 wires end on J1:1 (W1, W2, W3 and W4): a screw takes three at most.");
    }

    [Fact]
    public void A_strip_says_how_many_wires_a_terminal_takes() => MarkedPanel.AssertOnly(
        """
        terminals X1 { 1 ; wires 1 }
        terminals X2 { 1..2 }
        wire W1 X1:1 -> X2:1
        wire W2 «X1:1» -> X2:2
        """,
        "crowded-terminal",
        "2 wires end on X1:1 (W1 and W2): each terminal of X1 takes 1.");

    [Theory]
    [InlineData("wires 3", false)] // a wire, a jumper bar and the diode's lead: three, at the limit
    [InlineData("wires 2", true)]
    public void Leads_and_jumper_bars_take_the_room_of_a_wire(string limit, bool isCrowded)
    {
        var panel = TestPanels.Load($$"""
            terminals X1 { 1 2 3 ; jumper 1 2 ; {{limit}} }
            terminals X2 { 1 2 3 }
            diode D1 { X1:3 X1:1 }
            wire W1 X1:1 -> X2:1
            """);
        var found = PanelChecker.Check(panel).Where(d => d.Rule == "crowded-terminal").ToList();
        Assert.Equal(isCrowded, found.Count == 1);
        if (isCrowded) Assert.Equal("3 things are fastened on X1:1 (W1, lead D1:K and a jumper bar): each terminal of X1 takes 2.", found[0].Message);
    }

    [Fact]
    public void What_was_found_made_takes_no_room() => MarkedPanel.AssertNone(
        """
        connector J1 "found unit" { pins ; crimp ; on-hand ; strip 3 pitch 5 mm }
        terminals X1 { 1 }
        lamp DS1 24 V 40 mA on-hand { J1:1 J1:2 }
        lamp DS2 24 V 40 mA on-hand { J1:1 J1:3 }
        wire W1 J1:1 -> X1:1
        """,
        "two-wires-in-contact");

    [Fact]
    public void A_splice_takes_any_number_of_wires() => MarkedPanel.AssertNone(
        """
        splice SP1
        terminals X1 { 1..5 }
        wire W1 SP1:1 -> X1:1
        wire W2 SP1:1 -> X1:2
        wire W3 SP1:1 -> X1:3
        wire W4 SP1:1 -> X1:4
        wire W5 SP1:1 -> X1:5
        """,
        "crowded-terminal");

    // Ranges: AS39029 contacts, second-hand from a maker's catalogue: 22D 28-22, 20 24-20, 16 20-16, 12 14-12, 10 10.
    [Theory]
    [InlineData("22D", "crimp", "28 AWG", null)]
    [InlineData("22D", "crimp", "22 AWG", null)]
    [InlineData("22D", "crimp", "20 AWG", Severity.Warning)]
    [InlineData("20", "crimp", "24 AWG", null)]
    [InlineData("20", "crimp", "20 AWG", null)]
    [InlineData("20", "crimp", "26 AWG", Severity.Warning)]
    [InlineData("20", "solder", "26 AWG", Severity.Note)]
    [InlineData("20", "solder", "18 AWG", Severity.Warning)]
    [InlineData("16", "crimp", "22 AWG", Severity.Warning)]
    [InlineData("16", "solder", "22 AWG", null)]
    [InlineData("12", "crimp", "12 AWG", null)]
    [InlineData("10", "crimp", "10 AWG", null)]
    [InlineData("10", "crimp", "2/0 AWG", Severity.Warning)]
    [InlineData("20", "crimp", "0.5 mm2", null)]
    [InlineData("20", "crimp", "0.75 mm2", Severity.Warning)]
    [InlineData("99", "crimp", "0.75 mm2", null)]
    public void A_wire_is_compared_with_the_size_of_the_contact(string size, string fastened, string gauge, Severity? severity)
    {
        var findings = MarkedPanel.Check($$"""
            connector J1 { pins ; size {{size}} ; {{fastened}} ; strip 1 }
            terminals X1 { 1 }
            wire W1 {{gauge}} J1:1 -> X1:1
            """).Where(f => f.Rule == "wire-size");
        Assert.Equal(severity, findings.SingleOrDefault()?.Severity);
    }

    [Fact]
    public void A_contact_of_a_size_of_its_own_is_judged_by_it() => MarkedPanel.AssertOnly(
        """
        connector J1 { pins ; size 20 ; size 12: B ; crimp ; ring 2 radius 5 mm names A B }
        terminals X1 { 1..2 }
        wire W1 12 AWG «J1:A» -> X1:1
        wire W2 12 AWG J1:B -> X1:2
        """,
        "wire-size",
        "Wire W1 is 12 AWG, too thick for J1:A: a size 20 contact usually takes 24 to 20 AWG.");

    [Fact]
    public void A_wire_to_itself_or_between_mated_contacts_does_nothing()
    {
        const string parts = """
            connector J1 { pins ; solder ; strip 1 }
            connector P1 { sockets ; solder ; mates J1 }
            terminals X1 { 1 }
            wire W1 P1:1 -> X1:1

            """;
        MarkedPanel.AssertOnly(parts + "wire W2 X1:1 -> «X1:1»", "wire-to-itself", "Both ends of wire W2 are on X1:1.");
        var finding = MarkedPanel.Check(parts + "wire W2 P1:1 -> J1:1").First(f => f.Rule == "wire-to-itself");
        Assert.Equal("Wire W2 joins P1:1 and J1:1, which are joined without it.", finding.Message);
    }

    [Fact]
    public void Two_wires_between_the_same_terminals_are_found_whichever_way_they_are_written() => MarkedPanel.AssertOnly(
        """
        terminals X1 { 1 }
        terminals X2 { 1 }
        wire W1 X1:1 -> X2:1
        wire «W2» X2:1 -> X1:1
        """,
        "doubled-wire",
        "Wires W1 and W2 run between the same two terminals, X1:1 and X2:1.");

    [Fact]
    public void Contacts_with_nothing_on_them_are_one_finding_that_says_what_to_write()
    {
        var finding = MarkedPanel.AssertOnly(
            """
            connector «J1» { pins ; solder ; strip 8 ; spare 8 }
            terminals X1 { 1..2 }
            net A J1:1 X1:1
            net B J1:3 X1:2
            """,
            "floating-contact",
            "Contacts 2 4..7 of J1 have nothing on them.");
        Assert.Equal("Connect them, or write 'spare 2 4..7' in the block of J1 if they are left unused on purpose.", finding.Help);
    }

    [Fact]
    public void A_contact_of_the_unit_that_the_harness_leaves_open_is_found_unless_either_half_is_spare()
    {
        const string unit = """
            connector «J1» "lever unit" { pins ; solder ; strip 6 }
            connector P1 "plug" { sockets ; solder ; mates J1 }
            actuator LEVER { normal rest ; reverse }
            poles S1..S2 changeover on LEVER {
              common  J1:1 4
              normal  J1:2 5
              reverse J1:3 6
            }
            terminals X1 { 1..3 }
            net A P1:1 X1:1
            net B P1:2 X1:2
            net C P1:3 X1:3
            """;
        var finding = MarkedPanel.AssertOnly(
            unit,
            "not-wired-yet",
            "Contacts 4..6 of J1 lead to S2 inside the unit, and nothing outside is connected there.");
        Assert.Single(finding.Related);
        var spare = unit.Replace("«J1»", "J1", StringComparison.Ordinal);
        MarkedPanel.AssertNone(spare.Replace("mates J1", "mates J1 ; spare 4..6", StringComparison.Ordinal), "not-wired-yet");
        MarkedPanel.AssertNone(spare.Replace("strip 6", "strip 6 ; spare 4..6", StringComparison.Ordinal), "not-wired-yet");
        MarkedPanel.AssertNone(spare.Replace("strip 6", "strip 6 ; spare 4..6", StringComparison.Ordinal), "spare-contact-used");
    }

    [Fact]
    public void A_unit_that_no_harness_reaches_yet_may_be_drawn_as_it_is() => Assert.Empty(MarkedPanel.Check(
        """
        connector J1 "lever unit" { pins ; solder ; strip 2 }
        lamp DS1 28 V 40 mA { J1:1 J1:2 }
        """).Where(f => f.Rule == "floating-contact"));

    [Fact]
    public void Two_units_that_plug_together_need_no_harness() => Assert.Empty(MarkedPanel.Check(
        """
        connector J1 "lever unit" { pins ; solder ; strip 2 }
        connector P1 "lamp unit" { sockets ; solder ; mates J1 }
        lamp DS1 28 V 40 mA { P1:1 P1:2 }
        resistor R1 120 ohm { J1:1 J1:2 }
        """).Where(f => f.Rule == "floating-contact"));

    [Fact]
    public void An_empty_terminal_of_a_strip_is_found_and_a_jumpered_one_is_not() => MarkedPanel.AssertOnly(
        """
        terminals «X1» { 1..5 ; jumper 3 4 }
        net A X1:1 X1:3
        net B X1:2 J1:1
        connector J1 { pins ; solder ; strip 1 }
        """,
        "floating-contact",
        "Terminal 5 of X1 has nothing on it.");

    [Fact]
    public void A_spare_contact_with_a_wire_on_its_mate_is_found() => MarkedPanel.AssertOnly(
        """
        connector J1 { pins ; solder ; strip 2 ; spare 2 }
        connector P1 { sockets ; solder ; mates J1 }
        terminals X1 { 1..2 }
        wire W1 P1:1 -> X1:1
        wire W2 «P1:2» -> X1:2
        """,
        "spare-contact-used",
        "J1:2 is declared spare but is used by wire W2.");

    [Fact]
    public void A_wire_to_a_contact_that_the_unit_has_nothing_on_is_found() => MarkedPanel.AssertOnly(
        """
        connector J1 "unit" { pins ; solder ; strip 3 }
        connector P1 "plug" { sockets ; solder ; mates J1 }
        lamp DS1 28 V 40 mA { J1:1 J1:2 }
        terminals X1 { 1..3 }
        wire W1 P1:1 -> X1:1
        wire W2 P1:2 -> X1:2
        wire W3 «P1:3» -> X1:3
        """,
        "dead-end",
        "Wire W3 leads to P1:3, and nothing is connected to that contact inside the unit.");

    [Fact]
    public void A_splice_with_one_wire_is_a_dead_end() => MarkedPanel.AssertOnly(
        """
        splice SP1
        terminals X1 { 1 }
        wire «W1» X1:1 -> SP1:1
        """,
        "dead-end",
        "Wire W1 ends in splice SP1, and no other wire does.");
}
