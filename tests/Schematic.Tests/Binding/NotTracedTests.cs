using Schematic.Analysis;
using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Tests.Language;
using Xunit;

namespace Schematic.Tests.Binding;

/// <summary>A unit that is only half traced is written as it is known, without a lie and without an error.</summary>
public class NotTracedTests
{
    private const string Unit = """
        connector J1 "lever unit" { pins ; solder ; spiral 31 rings 1 6 10 14 clockwise on front of pins ; WORD }
        connector P1 "adapter plug" { sockets ; solder ; mates J1 }
        actuator LEVER { normal rest ; reverse }
        poles S1..S7 changeover on LEVER {
          common  J1:1 4 7 ? ? ? ?
          normal  J1:2 5 8 ? ? ? ?
          reverse J1:3 6 9 ? ? ? ?
        }
        terminals X1 { 1..3 }
        wire W1 X1:1 -> P1:1
        wire W2 X1:2 -> P1:2
        wire W3 X1:3 -> P1:20

        """;

    [Fact]
    public void Contacts_that_are_listed_are_kept_in_the_model()
    {
        var panel = TestPanels.Load(Unit.Replace("WORD", "not-traced 10..12 20", StringComparison.Ordinal));
        Assert.Equal(["10", "11", "12", "20"], panel.FindPart("J1")!.NotTraced.Order(StringComparer.Ordinal));
        Assert.Empty(panel.FindPart("P1")!.NotTraced);
    }

    [Fact]
    public void The_rest_is_what_nothing_inside_the_unit_is_stated_of_whatever_the_harness_brings_there()
    {
        var panel = TestPanels.Load(Unit.Replace("WORD", "spare 31 ; not-traced rest", StringComparison.Ordinal));
        Assert.Equal(Enumerable.Range(10, 21).Select(i => $"{i}"), panel.FindPart("J1")!.NotTraced.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_contact_with_a_wire_but_nothing_inside_is_not_traced()
    {
        var panel = TestPanels.Load("""
            connector J1 { pins ; strip 4 ; not-traced rest }
            lamp DS1 24 V 50 mA { J1:1 J1:2 }
            led DS2 2 V 20 mA
            supply PS1 24 V
            net A J1:4 DS2:A
            wire W1 PS1:+ -> J1:3
            """);
        Assert.Equal(["3"], panel.FindPart("J1")!.NotTraced);
    }

    [Fact]
    public void A_question_mark_marks_the_terminal_of_the_device()
    {
        var panel = TestPanels.Load("connector J1 { pins ; strip 2 }\nlamp DS1 24 V 50 mA { J1:1 ? }\nrelay K1 24 V 30 mA { coil ? J1:2 ; make ? ? }");
        Assert.Equal(["X2"], panel.FindPart("DS1")!.NotTraced);
        Assert.Equal(["13", "14", "A1"], panel.FindPart("K1")!.NotTraced.Order(StringComparer.Ordinal));
        Assert.Equal(["J1:1", "J1:2"], panel.Attachments.Select(a => a.Contact.ToString()));
    }

    [Fact]
    public void A_question_mark_at_the_end_stands_for_all_that_follow()
    {
        var panel = TestPanels.Load("connector J1 { pins ; strip 4 }\nactuator L { a rest ; b }\npoles S1..S3 changeover on L { common J1:1 ? ; a ? ; b J1:2 3 ? }\nlamp DS1 24 V 50 mA { ? }");
        Assert.Equal(["a", "a", "a", "b", "common", "common"], panel.Parts.OfType<Switch>().SelectMany(s => s.NotTraced).Order(StringComparer.Ordinal));
        Assert.Equal(["X1", "X2"], panel.FindPart("DS1")!.NotTraced.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_unit_of_which_three_of_seven_poles_are_traced_gives_notes_alone_one_a_connector()
    {
        var found = PanelChecker.Check(TestPanels.Load(Unit.Replace("WORD", "not-traced rest", StringComparison.Ordinal)));
        var open = found.Where(f => f.Rule == "not-traced").Select(f => f.Message);
        Assert.Equal(
            ["Contacts 10..31 of J1 are not traced yet.", "To which contact 12 terminals of S4, S5, S6 and S7 lead is not traced yet."], open);
        Assert.DoesNotContain(found, f => f.Severity == Severity.Error);
        Assert.DoesNotContain(found, f => f.Message.Contains("10", StringComparison.Ordinal) && f.Rule == "floating-contact");
    }

    [Fact]
    public void A_terminal_strip_may_be_half_traced_too()
    {
        var panel = TestPanels.Load("terminals X1 { 1..6 ; jumper 1 2 ; spare 6 ; not-traced rest }\nfuse F1 1 A\nwire W1 X1:3 -> F1:1");
        Assert.Equal(["4", "5"], panel.FindPart("X1")!.NotTraced.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_contact_is_not_spare_and_not_traced_at_once() => MarkedText.Gives(
        "connector J1 { pins ; strip 4 ; spare 3 ; not-traced [[2..4]] }",
        "contradiction: Contact `3` is called spare and not traced. -> Call it spare only when you know that nothing is on it.");

    [Fact]
    public void A_question_mark_stands_nowhere_else() => MarkedText.Gives(
        "connector J1 { pins ; strip 4 }\nnet A J1:1 [[?]] J1:2\nterminals X1 { 1 [[?]] }\nnever J1:1 reaches [[?]]",
        "missing-value: A contact that is not traced cannot be named here.",
        "missing-value: A contact that is not traced cannot be named here.",
        "missing-value: A contact that is not traced cannot be named here.");

    [Fact]
    public void The_first_cable_in_a_file_of_nets_is_no_error()
    {
        var nets = string.Concat(Enumerable.Range(1, 19).Select(i => $"net N{i} J1:{i} X1:{i} X2:{i}\n"));
        var found = PanelChecker.Check(TestPanels.Load($$"""
            connector J1 { pins ; solder ; strip 19 }
            terminals X1 { 1..19 }
            terminals X2 { 1..19 }
            {{nets}}cable C1 2 m { core 1 white J1:1 -> X1:1 ; core 2 brown J1:2 -> X1:2 }
            """));
        Assert.DoesNotContain(found, f => f.Severity == Severity.Error);
        Assert.Equal(17, found.Count(f => f.Rule == "net-not-wired"));
        Assert.Equal(
            ["Net N1 is wired in part: no wire goes to X2:1 yet.", "Net N2 is wired in part: no wire goes to X2:2 yet."],
            found.Where(f => f.Rule == "unwired-net-member").Select(f => f.Message));
    }
}
