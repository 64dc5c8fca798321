using Schematic.Diagnostics;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Diagnostics;

public class TextPrinterTests
{
    [Fact]
    public void A_whole_report_names_place_rule_line_other_places_path_and_help()
    {
        var source = new SourceText("lever.panel", "net RTN  PS1:- P1:4\nnet FEED PS1:+ P1:5\nwire W1 22 AWG red 300 mm  PS1:- -> P1:5\n");
        var finding = new Diagnostic("joining-wire", Severity.Error, "Wire W1 joins the nets RTN and FEED.", Span(source, "W1"))
        {
            Help = "Move the end that is on the wrong contact.",
            Related = [new RelatedSpan(Span(source, "RTN"), "net RTN"), new RelatedSpan(Span(source, "FEED"), "net FEED")],
            Trace =
            [
                new MoveStep(MoveAction.Hold, "GRIP", "left"),
                new StateStep([new StandingThing("K1", "operated"), new StandingThing("PS1", "off")]),
                new PathStep("PS1:-", [new PathHop(PathOver.Wire, "W1", "P1:5"), new PathHop(PathOver.Mate, "", "J1:5")]),
                new FactStep("J1:5 is then dead"),
                new StateStep([]),
            ],
        };
        Assert.Equal(
            """
            lever.panel:3:6: error joining-wire: Wire W1 joins the nets RTN and FEED.
                3 | wire W1 22 AWG red 300 mm  PS1:- -> P1:5
                  |      ^^
               lever.panel:1:5: net RTN
                1 | net RTN  PS1:- P1:4
                  |     ---
               lever.panel:2:5: net FEED
                2 | net FEED PS1:+ P1:5
                  |     ----
               move: hold GRIP at left
               state: K1 operated, PS1 off
               path: PS1:- - W1 - P1:5 - J1:5
               fact: J1:5 is then dead
               state: everything at rest
               help: Move the end that is on the wrong contact.

            1 error

            """,
            Printed(finding));
    }

    [Fact]
    public void The_folder_of_the_command_line_stands_before_the_file_name()
    {
        var source = new SourceText("x.panel", "net A");
        var output = new StringWriter();
        new TextPrinter(TextTheme.Plain) { Folder = "examples/" }.Print([Finding(Span(source, "A"))], output);
        Assert.StartsWith("examples/x.panel:1:5: warning some-rule: Something.\n", output.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_mark_stands_below_its_word_behind_tabs() => AssertExcerpt(
        "\tnet\tRTN J1:1", "RTN",
        "    net RTN J1:1",
        "        ^^^");

    [Fact]
    public void The_mark_counts_wide_characters_twice_and_combining_ones_not_at_all()
    {
        AssertExcerpt("title \"信号\" net RTN", "RTN", "title \"信号\" net RTN", "                 ^^^");
        AssertExcerpt("title \"e\u0301\" net RTN", "RTN", "title \"e\u0301\" net RTN", "              ^^^");
        AssertExcerpt("title \"信号\"", "信号", "title \"信号\"", "       ^^^^");
        AssertExcerpt("title \"🚂\" net RTN", "RTN", "title \"🚂\" net RTN", "               ^^^");
    }

    [Fact]
    public void Characters_that_would_move_the_cursor_are_replaced() =>
        AssertExcerpt("net\u0000A\u001b[31m B\u202e", "B", "net<U+0000>A<U+001B>[31m B<U+202E>", "                         ^");

    [Fact]
    public void An_empty_span_has_one_mark() => AssertExcerpt("net RTN", new TextSpan(4, 0), "net RTN", "    ^");

    [Fact]
    public void A_span_at_the_end_of_the_file_is_marked_behind_the_last_character() =>
        AssertExcerpt("net RTN", new TextSpan(7, 0), "net RTN", "       ^");

    [Fact]
    public void A_span_past_the_end_of_the_file_is_marked_at_the_end() =>
        AssertExcerpt("net", new TextSpan(90, 5), "net", "   ^");

    [Fact]
    public void A_span_over_several_lines_is_marked_to_the_end_of_its_first() =>
        AssertExcerpt("net RTN\nnet B", new TextSpan(4, 9), "net RTN", "    ^^^");

    [Fact]
    public void Line_ends_of_both_kinds_are_no_part_of_the_line()
    {
        AssertExcerpt("net A\r\nnet RTN\r\n", "RTN", "net RTN", "    ^^^");
        AssertExcerpt("net A\rnet RTN\r", "RTN", "net RTN", "    ^^^");
    }

    [Fact]
    public void An_empty_line_has_its_mark_at_the_edge()
    {
        var report = Printed(Finding(new SourceSpan(new SourceText("x.panel", "\n\n"), new TextSpan(1, 0))));
        Assert.Equal("x.panel:2:1: warning some-rule: Something.\n    2 |\n      | ^\n\n1 warning\n", report);
    }

    [Fact]
    public void A_finding_about_no_place_prints_no_line()
    {
        Assert.Equal("warning some-rule: Something.\n\n1 warning\n", Printed(Finding(SourceSpan.None)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(29)]
    [InlineData(57)]
    [InlineData(500_000)]
    [InlineData(999_990)]
    public void A_very_long_line_is_cut_to_a_window_around_the_mark(int at)
    {
        var source = new SourceText("x.panel", new string('a', at) + "RTN" + new string('b', 1_000_000 - at));
        var excerpt = SourceExcerpt.Of(source, new TextSpan(at, 3), 60);
        Assert.True(excerpt.Text.Length <= 60);
        Assert.Equal("RTN", excerpt.Text.Substring(excerpt.MarkColumn, excerpt.MarkWidth));
        Assert.Equal(at >= 30, excerpt.Text.StartsWith("...", StringComparison.Ordinal));
        Assert.Equal(at < 999_990, excerpt.Text.EndsWith("...", StringComparison.Ordinal));
    }

    [Fact]
    public void A_mark_longer_than_the_window_ends_with_it()
    {
        var excerpt = SourceExcerpt.Of(new SourceText("x.panel", new string('a', 5000)), new TextSpan(1000, 3000), 60);
        Assert.True(excerpt.MarkColumn + excerpt.MarkWidth <= 60);
    }

    [Fact]
    public void Colours_add_codes_and_change_no_letter()
    {
        var source = new SourceText("x.panel", "net RTN");
        var finding = Finding(Span(source, "RTN")) with { Help = "Do this.", Trace = [new FactStep("A")] };
        var coloured = new StringWriter();
        new TextPrinter(TextTheme.Colour).Print([finding], coloured);
        Assert.Contains("\u001b[1;33mwarning\u001b[0m", coloured.ToString(), StringComparison.Ordinal);
        Assert.Equal(Printed(finding), System.Text.RegularExpressions.Regex.Replace(coloured.ToString(), "\u001b\\[[0-9;]*m", ""));
    }

    [Theory]
    [InlineData(0, 0, 0, "nothing found")]
    [InlineData(1, 0, 0, "1 error")]
    [InlineData(2, 1, 3, "2 errors, 1 warning, 3 notes")]
    public void The_last_line_counts(int errors, int warnings, int notes, string expected)
    {
        var all = Enumerable.Repeat(Severity.Error, errors).Concat(Enumerable.Repeat(Severity.Warning, warnings))
            .Concat(Enumerable.Repeat(Severity.Note, notes)).Select(s => Finding(SourceSpan.None) with { Severity = s }).ToList();
        Assert.Equal(expected, TextPrinter.Summary(all));
    }

    private static void AssertExcerpt(string content, string word, string text, string mark)
    {
        var at = content.IndexOf(word, StringComparison.Ordinal);
        AssertExcerpt(content, new TextSpan(at, word.Length), text, mark);
    }

    private static void AssertExcerpt(string content, TextSpan span, string text, string mark)
    {
        var excerpt = SourceExcerpt.Of(new SourceText("x.panel", content), span, 100);
        Assert.Equal(text, excerpt.Text);
        Assert.Equal(mark, new string(' ', excerpt.MarkColumn) + new string('^', excerpt.MarkWidth));
    }

    private static Diagnostic Finding(SourceSpan span) => new("some-rule", Severity.Warning, "Something.", span);

    private static SourceSpan Span(SourceText source, string word) =>
        new(source, new TextSpan(source.Content.IndexOf(word, StringComparison.Ordinal), word.Length));

    private static string Printed(params Diagnostic[] diagnostics)
    {
        var output = new StringWriter();
        new TextPrinter(TextTheme.Plain).Print(diagnostics, output);
        return output.ToString();
    }
}
