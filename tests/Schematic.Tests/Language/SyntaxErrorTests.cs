using Xunit;

namespace Schematic.Tests.Language;

/// <summary>What is said about text that cannot be read, and that one mistake neither hides nor causes another.</summary>
public class SyntaxErrorTests
{
    [Fact]
    public void A_misspelt_statement_proposes_the_keyword_and_still_declares_its_name() => MarkedText.Gives(
        """
        [[lmap]] DS1 28 V 40 mA
        net A DS1:X1 DS1:X2
        """,
        "unknown-statement: No statement begins with `lmap`. -> Did you mean `lamp`? Otherwise write `device`, the general part with terminals of your own.");

    [Fact]
    public void A_misspelt_gang_declares_all_its_names() => MarkedText.Gives(
        """
        [[polles]] S1..S3 make on LEVER
        net A S1:1 S2:1 S3:2
        """,
        "unknown-statement: No statement begins with `polles`. -> Did you mean `poles`? Otherwise write `device`, the general part with terminals of your own.");

    [Fact]
    public void A_word_like_nothing_gets_a_hint_what_statements_are() => MarkedText.Gives(
        "[[5]] volts\n[[?]]",
        "unknown-statement: No statement begins with `5`.",
        "unknown-statement: No statement begins with `?`. -> A statement begins with its keyword, such as connector, lamp, net or wire. A kind of part without a word of its own is a `device`.");

    [Fact]
    public void Every_error_of_a_file_is_found_in_one_run() => MarkedText.Gives(
        """
        title [["open]]
        connector J1 { pins  [[sokcets]]  strip 3 pitch 5.08 mm }
        fuse F1 [[1 V]]
        wire W1 22 AWG black 300 mm J1:1 -> [[J1:9]]
        wire W2 22 AWG [[blakc]] 300 mm J1:1 -> [[J2]]:1
        net A J1:1 J1:[[]]
        """,
        "syntax: This string is not closed. -> Put a quote (\") at its end; a string does not cross a line end.",
        "syntax: `sokcets` is not known here. -> Did you mean `sockets`?",
        "wrong-unit: 1 V is a voltage; a current is expected here.",
        "unknown-contact: `J1` has no contact `9`. -> `J1` has: 1 2 3.",
        "unknown-colour: `blakc` is not a colour. -> Did you mean `black`?",
        "unknown-name: A part named `J2` is not declared. -> Did you mean `J1`?",
        "syntax: Expected a contact name after the colon, found the end of the statement.");

    [Fact]
    public void What_is_expected_is_named_and_the_statement_is_shown_written_out() => MarkedText.Gives(
        """
        terminals X1 { 1..3 }
        wire W1 22 AWG black X1:1 [[X1:2]]
        wire W2 22 AWG black[[]]
        expect X1:1 [[lwo]]
        expect X1:1 closed [[X1:2]]
        never X1:1 X1:2[[]]
        """,
        "syntax: Expected `->`, found `X1:2`. -> Write it like this: wire W1 22 AWG black 450 mm PS1:- -> P1:4",
        "syntax: Expected a terminal such as J1:5, found the end of the statement.",
        "syntax: Expected `low`, `high`, `closed` or `open`, found `lwo`. -> Did you mean `low`?",
        "syntax: Expected `to`, found `X1:2`.",
        "syntax: Expected `reaches`, found the end of the statement.");

    [Fact]
    public void Words_too_many_are_reported_where_they_begin() => MarkedText.Gives(
        """
        terminals X1 { 1..3 }
        wire W1 22 AWG black X1:1 -> X1:2 [[again]]
        splice SP1 [[big]]
        """,
        "syntax: Expected nothing more, found `again`.",
        "syntax: `big` is not known here. -> Known here: price, order, spares, on-hand.");

    [Fact]
    public void A_slip_in_the_middle_of_a_statement_leaves_the_rest_of_it_readable() => MarkedText.Gives(
        """
        connector J1 {
          pins
          spiral [[many]] rings 1 6
          positions { 1 0 mm 0 mm ; 2 3.5 mm [[up]] ; 3 -3.5 mm 0 mm }
          size 20 [[soldre]] spare 3
        }
        net A J1:1 J1:3
        """,
        "syntax: Expected a number, found `many`.",
        "syntax: Expected a number with a unit, found `up`.",
        "syntax: `soldre` is not known here. -> Did you mean `solder`?");

    [Fact]
    public void An_unclosed_string_leaves_the_block_after_it_open() => MarkedText.Gives(
        """
        connector J1 [["lever unit]] {
          pins
          strip 3 pitch 5.08 mm
        }
        net A J1:1 J1:3
        """,
        "syntax: This string is not closed.");

    [Fact]
    public void An_unclosed_block_ends_where_the_next_statement_begins() => MarkedText.Gives(
        """
        connector J1 [[{]] pins
          strip 3 pitch 5.08 mm
        fuse F1 1 A
        diode D1 1 A [[{]] J1:1 J1:2
        net A J1:3 F1:1
        actuator B { out rest ; in springs-to out }
        """,
        "syntax: This block is not closed. -> Put a closing brace (}) after its last line.",
        "syntax: This block is not closed.");

    [Fact]
    public void A_position_may_be_named_like_a_statement() => Assert.Empty(TestPanels.Diagnose(
        """
        actuator KEY {
          lock rest
          switch
          lamp springs-to switch
        }
        """));

    [Fact]
    public void A_brace_too_many_is_reported_alone() => MarkedText.Gives(
        """
        fuse F1 1 A
        [[}]]
        fuse F2 1 A
        """,
        "syntax: This brace closes nothing.");

    [Fact]
    public void A_block_on_a_line_of_its_own_is_taken_for_the_line_above() => MarkedText.Gives(
        """
        terminals X1
        [[{]]
          1..3
        }
        net A X1:1 X1:2
        """,
        "syntax: A block begins without a statement on its line. -> Move the opening brace to the end of the line above.");

    [Fact]
    public void A_block_where_none_belongs_is_refused() => MarkedText.Gives(
        """
        note "x" [[{]] 1 }
        title "a" [[{]] }
        terminals X1 { 1..3 [[{]] 4 } }
        """,
        "syntax: A block is not expected here.",
        "syntax: A block is not expected here.",
        "syntax: A block is not expected here.");

    [Fact]
    public void Conditions_say_where_they_break_off() => MarkedText.Gives(
        """
        actuator B { out rest ; in springs-to out }
        relay K1 24 V 30 mA
        expect K1 energised when B in and[[]]
        expect K1 energised when (B in or B out[[]]
        expect K1 energised when B[[]]
        expect K1 energised [[whne]] B in
        """,
        "syntax: Expected `(` or a name, found the end of the statement.",
        "syntax: Expected `)`, found the end of the statement.",
        "syntax: Expected a contact name, found the end of the statement.",
        "syntax: Expected nothing more, found `whne`.");

    [Fact]
    public void Line_and_column_count_from_one_whatever_the_line_ends_are()
    {
        var finding = Assert.Single(TestPanels.Diagnose("title \"a\"\r\n\r\n  fuze F1 1 A\r\n"));
        Assert.Equal((3, 3), (finding.Span.Start.Line, finding.Span.Start.Column));
        finding = Assert.Single(TestPanels.Diagnose("title \"a\"\r  fuze F1 1 A"));
        Assert.Equal((2, 3), (finding.Span.Start.Line, finding.Span.Start.Column));
    }
}
