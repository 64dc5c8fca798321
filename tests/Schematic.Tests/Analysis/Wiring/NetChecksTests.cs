using Schematic.Diagnostics;
using Xunit;

namespace Schematic.Tests.Analysis.Wiring;

/// <summary>Contacts, nets and wires against each other.</summary>
public class NetChecksTests
{
    private const string Parts = """
        connector J1 "desk plug" { pins ; solder ; strip 3 pitch 5 mm }
        terminals X1 "marshalling strip" { 1..3 }

        """;

    private const string Nets = """
        net LEFT   J1:1 X1:1
        net CHECK  J1:2 X1:2
        net RIGHT  J1:3 X1:3

        """;

    private const string Wires = """
        wire W1 22 AWG white  300 mm  J1:1 -> X1:1
        wire W2 22 AWG yellow 300 mm  J1:2 -> X1:2
        wire W3 22 AWG green  300 mm  J1:3 -> X1:3

        """;

    [Fact]
    public void Nets_and_wires_that_agree_give_no_finding() => Assert.Empty(MarkedPanel.Check(Parts + Nets + Wires));

    [Fact]
    public void Nets_alone_and_wires_alone_give_no_finding()
    {
        Assert.Empty(MarkedPanel.Check(Parts + Nets));
        Assert.Empty(MarkedPanel.Check(Parts + Wires));
    }

    [Fact]
    public void A_contact_in_two_nets_is_found_at_its_second_listing()
    {
        var finding = MarkedPanel.AssertOnly(
            Parts + "net LEFT J1:1 X1:1\nnet CHECK J1:2 X1:2\nnet RIGHT J1:3 X1:3 «J1:1»\n",
            "contact-in-two-nets",
            "J1:1 is listed in net LEFT and again in net RIGHT.");
        Assert.Single(finding.Related);
    }

    [Fact]
    public void Two_nets_that_share_several_contacts_give_one_finding() => MarkedPanel.AssertOnly(
        Parts + "net LEFT J1:1 X1:1 X1:2\nnet CHECK J1:2 «X1:2» X1:1 J1:3 X1:3\n",
        "contact-in-two-nets",
        "X1:1 and X1:2 are listed in net LEFT and again in net CHECK.");

    [Fact]
    public void Nets_that_meet_in_mated_contacts_are_shorted()
    {
        var finding = MarkedPanel.AssertOnly(
            """
            connector J1 "unit" { pins ; solder ; strip 2 pitch 5 mm }
            connector P1 "plug" { sockets ; solder ; mates J1 }
            terminals X1 { 1..3 }
            net A  P1:1 X1:1
            net B  P1:2 X1:2
            net C  X1:3 «J1:2»
            """,
            "short-between-nets",
            "Nets B and C are one conductor: P1:2 and J1:2 plug into each other.");
        Assert.Equal(["path P1:2 J1:2"], TraceData.Of(finding));
    }

    [Fact]
    public void Nets_that_meet_at_a_jumper_are_shorted() => MarkedPanel.AssertOnly(
        Parts.Replace("1..3 }", "1..3 ; jumper 2 3 }", StringComparison.Ordinal) + "net LEFT J1:1 X1:1\nnet CHECK J1:2 X1:2\nnet RIGHT J1:3 «X1:3»\n",
        "short-between-nets",
        "Nets CHECK and RIGHT are one conductor: X1:2 and X1:3 are joined by a jumper.");

    [Fact]
    public void A_wire_between_two_nets_is_found_and_echoes_in_nothing_else() => MarkedPanel.AssertOnly(
        Parts + Nets + "wire W1 J1:1 -> X1:1\nwire W2 J1:2 -> X1:2\nwire «W3» J1:3 -> X1:2\n",
        "joining-wire",
        "Wire W3 joins the nets CHECK and RIGHT.");

    [Fact]
    public void Two_swapped_wires_are_one_finding()
    {
        var finding = MarkedPanel.AssertOnly(
            Parts + Nets + "wire «W1» J1:1 -> X1:2\nwire W2 J1:2 -> X1:1\nwire W3 J1:3 -> X1:3\n",
            "joining-wire",
            "Wires W1 and W2 join the nets LEFT and CHECK.");
        Assert.Equal("W1 and W2 look swapped: exchange one end of each.", finding.Help);
        Assert.Equal(["path J1:1 [W1] X1:2", "path J1:2 [W2] X1:1"], TraceData.Of(finding));
    }

    [Fact]
    public void A_chain_of_wires_over_terminals_of_no_net_is_found_at_the_wire_that_closes_it()
    {
        var finding = MarkedPanel.AssertOnly(
            Parts + "splice SP1\n" + Nets + Wires + "wire W4 X1:1 -> SP1:1\nwire «W5» SP1:1 -> X1:2\n",
            "joining-wire",
            "Wire W5 joins the nets LEFT and CHECK.");
        Assert.Equal(["path X1:1 [W4] SP1:1 [W5] X1:2"], TraceData.Of(finding));
    }

    [Fact]
    public void A_net_that_the_wires_leave_in_pieces_names_the_pieces_and_a_wire_that_would_do()
    {
        var finding = MarkedPanel.AssertOnly(
            """
            terminals X1 { 1..2 }
            terminals X2 { 1..2 }
            net «RTN» X1:1 X1:2 X2:1 X2:2
            wire W1 X1:1 -> X1:2
            wire W2 X2:1 -> X2:2
            """,
            "broken-net",
            "The wires leave net RTN in 2 pieces.");
        Assert.Equal(["fact X1:1 X1:2", "fact X2:1 X2:2"], TraceData.Of(finding));
        Assert.Equal("Add a wire between the pieces, such as X1:1 -> X2:1, or divide the net.", finding.Help);
    }

    [Fact]
    public void Jumpers_mates_and_board_grounds_hold_a_net_together() => Assert.Empty(MarkedPanel.Check(
        """
        connector J1 "unit" { pins ; solder ; strip 2 pitch 5 mm }
        connector P1 "plug" { sockets ; solder ; mates J1 }
        terminals X1 { 1..3 ; jumper 1 2 }
        net A  J1:1 X1:1 X1:2
        net B  P1:2 X1:3
        wire W1 P1:1 -> X1:1
        wire W2 P1:2 -> X1:3
        """));

    [Fact]
    public void A_missing_wire_is_found_at_the_contact_that_nothing_reaches() => MarkedPanel.AssertOnly(
        Parts + "net LEFT J1:1 X1:1 J1:2 «X1:2»\nnet RIGHT J1:3 X1:3\nwire W1 J1:1 -> X1:1\nwire W2 X1:1 -> J1:2\nwire W3 J1:3 -> X1:3\n",
        "unwired-net-member",
        "Net LEFT is wired in part: no wire goes to X1:2 yet.");

    [Fact]
    public void A_net_without_any_wire_is_one_finding() => MarkedPanel.AssertOnly(
        Parts + "net LEFT J1:1 X1:1\nnet CHECK J1:2 X1:2\nnet «RIGHT» J1:3 X1:3\nwire W1 J1:1 -> X1:1\nwire W2 J1:2 -> X1:2\n",
        "net-not-wired",
        "Net RIGHT is not wired yet.");

    [Fact]
    public void A_wire_moved_to_a_contact_of_no_net_is_one_finding_that_names_both_contacts() => MarkedPanel.AssertOnly(
        """
        connector J1 "desk plug" { pins ; solder ; strip 2 pitch 5 mm }
        connector J2 "frame plug" { pins ; solder ; strip 1 }
        net LEFT J1:1 «J2:1»
        wire W1 J1:1 -> J1:2
        """,
        "unwired-net-member",
        "J2:1 is listed in net LEFT, but no wire goes there; wire W1 goes to J1:2 instead.");

    [Fact]
    public void A_wire_that_leads_a_net_further_is_found() => MarkedPanel.AssertOnly(
        Parts + "connector J2 \"frame plug\" { pins ; solder ; strip 1 }\n" + Nets + Wires + "wire W4 X1:3 -> «J2:1»\n",
        "unlisted-net-member",
        "Wire W4 takes net RIGHT to J2:1, which the net does not list.");

    [Fact]
    public void Terminals_of_strips_and_splices_on_the_way_need_not_be_listed() => Assert.Empty(MarkedPanel.Check(
        """
        connector J1 { pins ; solder ; strip 1 }
        connector J2 { pins ; solder ; strip 1 }
        terminals X1 { 1 }
        splice SP1
        net A J1:1 J2:1
        wire W1 J1:1 -> X1:1
        wire W2 X1:1 -> SP1:1
        wire W3 SP1:1 -> J2:1
        """));

    [Fact]
    public void Wires_without_a_net_are_one_note()
    {
        var finding = Assert.Single(MarkedPanel.Check(Parts + "net LEFT J1:1 X1:1\n" + Wires));
        Assert.Equal(("wire-without-net", Severity.Note), (finding.Rule, finding.Severity));
        Assert.Equal("Wires W2 and W3 belong to no stated net, so there is nothing to compare with.", finding.Message);
    }

    [Fact]
    public void A_net_of_one_contact_is_found() => MarkedPanel.AssertOnly(
        Parts + "net LEFT J1:1 X1:1\nnet CHECK J1:2 X1:2 X1:3\nnet «RIGHT» J1:3\n",
        "single-member-net",
        "Net RIGHT lists J1:3 alone, so it joins nothing.");

    [Fact]
    public void A_contact_listed_twice_in_one_net_is_found_at_the_second() => MarkedPanel.AssertOnly(
        Parts + "net LEFT J1:1 X1:1 «J1:1»\nnet CHECK J1:2 X1:2\nnet RIGHT J1:3 X1:3\n",
        "repeated-net-member",
        "Net LEFT lists J1:1 twice.");

    [Fact]
    public void Names_that_differ_in_capitals_or_look_alike_are_found()
    {
        MarkedPanel.AssertOnly(
            Parts + "net LAMP J1:1 X1:1\nnet «Lamp» J1:2 X1:2\nnet RIGHT J1:3 X1:3\n",
            "similar-names",
            "The nets LAMP and Lamp are told apart by a detail that the eye passes over.");
        MarkedPanel.AssertOnly(
            Parts + "net L0 J1:1 X1:1\nnet «LO» J1:2 X1:2\nnet RIGHT J1:3 X1:3\n",
            "similar-names",
            "The nets L0 and LO are told apart by a detail that the eye passes over.");
    }
}
