using System.Diagnostics;
using System.Text;
using Schematic.Binding;
using Schematic.Language;
using Xunit;

namespace Schematic.Tests.Language;

/// <summary>Texts that no person wrote: they get a clear finding, in a time that grows with their length and no faster.</summary>
[Collection(RunsAlone)]
public class RobustnessTests
{
    /// <summary>No other test runs beside these, so that the processor time of the process is theirs.</summary>
    [CollectionDefinition(RunsAlone, DisableParallelization = true)]
    public sealed class Alone;

    private const string RunsAlone = "Robustness tests run alone";

    /// <summary>
    /// Processor time: far more than any of these needs, far less than one would need if its time grew with the square. A busy
    /// machine does not use it up.
    /// </summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    [Fact]
    public void Deeply_nested_braces_are_refused_once()
    {
        var open = string.Concat(Enumerable.Repeat("a { ", 100_000));
        var findings = InTime(() => TestPanels.Diagnose("fuse F1 1 A\n" + open + string.Concat(Enumerable.Repeat("} ", 100_000))));
        Assert.Single(findings, f => f.Message.StartsWith("Blocks are nested", StringComparison.Ordinal));
        findings = InTime(() => TestPanels.Diagnose(open));
        Assert.Contains(findings, f => f.Message == "This block is not closed.");
    }

    [Fact]
    public void Deeply_nested_parentheses_are_refused()
    {
        var text = "actuator A { a rest ; b }\nrelay K1 24 V 30 mA\nexpect K1 energised when "
            + new string('(', 50_000) + "A b" + new string(')', 50_000);
        var finding = Assert.Single(InTime(() => TestPanels.Diagnose(text)));
        Assert.Contains("at most 16 parentheses", finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("one string", "title \"", "x", "\"")]
    [InlineData("one word", "title ", "x", "")]
    [InlineData("one list", "net A ", "X1:1 ", "")]
    [InlineData("one number", "build ", "1", "")]
    [InlineData("one garbage", "lamp DS1 ", "? ", "")]
    [InlineData("no keyword", "", "x", "")]
    public void A_statement_of_a_megabyte_is_refused_as_too_long(string what, string start, string repeated, string end)
    {
        var text = $"{start}{string.Concat(Enumerable.Repeat(repeated, 1_000_000 / repeated.Length))}{end}\nfuze F1 1 A\n";
        var findings = InTime(() => TestPanels.Diagnose(text));
        Assert.True(findings.Length == 2, what);
        Assert.StartsWith("A statement of ", findings[0].Message, StringComparison.Ordinal);
        Assert.Equal(("unknown-statement", 2), (findings[1].Rule, findings[1].Span.Start.Line));
    }

    [Theory]
    [InlineData("splice SP{0} ; ")]
    [InlineData("net N{0} X1:1 X1:2 ; ")]
    public void A_line_of_a_megabyte_may_hold_many_statements(string statement)
    {
        var text = new StringBuilder("terminals X1 { 1..2 }\n");
        for (var i = 0; text.Length < 1_000_000; i++) text.AppendFormat(System.Globalization.CultureInfo.InvariantCulture, statement, i);
        Assert.Empty(InTime(() => TestPanels.Diagnose(text.ToString())));
    }

    [Fact]
    public void A_comment_of_a_megabyte_is_a_comment() =>
        Assert.Empty(InTime(() => TestPanels.Diagnose("# " + new string('{', 1_000_000))));

    [Fact]
    public void A_statement_may_be_long_within_reason()
    {
        var contacts = string.Join(' ', Enumerable.Range(1, 30_000));
        Assert.Empty(InTime(() => TestPanels.Diagnose($"net A X1:{contacts}\nterminals X1 {{ 1..10000 ; 10001..20000 ; 20001..30000 }}")));
    }

    [Fact]
    public void A_file_of_a_hundred_thousand_lines_is_read()
    {
        var text = new StringBuilder("terminals X1 { 1..1000 }\n");
        for (var i = 1; i < 100_000; i++)
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"wire W{i} 22 AWG black 450 mm X1:{(i % 1000) + 1} -> X1:{(i * 7 % 1000) + 1}\n");
        var result = InTime(() => TestPanels.Read(text.ToString()));
        Assert.Empty(result.Diagnostics);
        Assert.Equal(99_999, result.Panel.Wires.Length);
    }

    [Theory]
    [InlineData("no such statement")]
    [InlineData("connector J1 {")]
    [InlineData("net A Q1:1 Q2:2")]
    [InlineData("title \"")]
    [InlineData("}")]
    [InlineData("lamp DS1 28 V { J1:1 J1:2 J1:3 }")]
    public void Thousands_of_wrong_lines_are_each_reported(string line)
    {
        var text = string.Concat(Enumerable.Repeat(line + "\n", 20_000));
        Assert.True(InTime(() => TestPanels.Diagnose(text)).Length >= 10_000);
    }

    [Fact]
    public void Control_characters_are_reported_where_they_stand_and_hide_nothing()
    {
        var findings = TestPanels.Diagnose("title \"a\0b\"\n\u0001fuze F1 1 A\n");
        Assert.Equal(
            [("unreadable-text", 1, 9), ("unreadable-text", 2, 1), ("unknown-statement", 2, 2)],
            findings.Select(f => (f.Rule, f.Span.Start.Line, f.Span.Start.Column)));
        Assert.Equal("A control character (U+0000) stands in the text.", findings[0].Message);
    }

    [Fact]
    public void A_binary_file_gets_a_bounded_number_of_findings()
    {
        var findings = InTime(() => TestPanels.Diagnose(new string('\0', 1_000_000)));
        Assert.Equal(21, findings.Length);
        Assert.Equal("999,980 more control characters follow.", findings[^1].Message);
    }

    [Fact]
    public void Bytes_that_are_no_utf8_are_reported_with_line_and_column()
    {
        var file = PanelBytes.Decode("t.panel", [.. "title \"caf"u8, 0xE9, .. "\"\nfuse F\u00C4 1 A # "u8, 0xC3, 0x28, .. " ok\n"u8]);
        Assert.Equal(
            [(1, 11, "The byte 0xE9 is no UTF-8."), (2, 15, "The byte 0xC3 is no UTF-8.")],
            file.Diagnostics.Select(d => (d.Span.Start.Line, d.Span.Start.Column, d.Message)));
        Assert.All(file.Diagnostics, d => Assert.Equal("unreadable-text", d.Rule));
        Assert.Equal("title \"caf\uFFFD\"\nfuse F\u00C4 1 A # \uFFFD( ok\n", file.Text.Content);
    }

    [Fact]
    public void Many_bytes_that_are_no_utf8_take_no_longer_and_are_counted()
    {
        var bytes = new byte[2_000_000];
        Array.Fill(bytes, (byte)0xFF, 2, bytes.Length - 2);
        var file = InTime(() => PanelBytes.Decode("t.panel", bytes));
        Assert.Equal(20, file.Diagnostics.Length);
        Assert.EndsWith("; 1999978 more follow.", file.Diagnostics[^1].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_byte_order_mark_is_dropped_and_utf16_is_named()
    {
        var file = PanelBytes.Decode("t.panel", [0xEF, 0xBB, 0xBF, .. "fuze F1"u8]);
        Assert.Equal("fuze F1", file.Text.Content);
        file = PanelBytes.Decode("t.panel", [0xFF, 0xFE, (byte)'a', 0]);
        Assert.Equal("The file is written in UTF-16.", Assert.Single(file.Diagnostics).Message);
    }

    [Fact]
    public void Ranges_do_not_fill_the_memory()
    {
        var list = string.Concat(Enumerable.Repeat("1..10000 ", 25_000));
        var findings = InTime(() => TestPanels.Diagnose($"terminals X1 {{ 1..10000 }}\nnet A X1:{list}\nnet B X1:1..99999999999 X1:1..11111"));
        Assert.All(findings, f => Assert.Equal("out-of-range", f.Rule));
        Assert.Contains(findings, f => f.Message.EndsWith("is too long.", StringComparison.Ordinal));
    }

    [Fact]
    public void Garbage_of_every_kind_of_word_is_read_to_its_end()
    {
        string[] words = ["J1:", "28", "V", "\"x", "{", "}", ";", "#c\n", "\n", "->", "..", ",", "(", "lamp", "net", "when", "size", ":", "=", "\\"];
        var text = new StringBuilder();
        for (var i = 0; text.Length < 300_000; i++) text.Append(words[(int)((uint)(i * 2654435761L >> 7) % words.Length)]).Append(i % 3 == 0 ? "" : " ");
        var source = text.ToString();
        InTime(() => TestPanels.Diagnose(source));
        Assert.Equal(source + "\n", InTime(() => PanelFormatter.Format(source)));
    }

    private static T InTime<T>(Func<T> work)
    {
        using var process = Process.GetCurrentProcess();
        var before = process.TotalProcessorTime;
        var result = work();
        process.Refresh();
        var used = process.TotalProcessorTime - before;
        Assert.True(used < Patience, $"It took {used} of processor time.");
        return result;
    }
}
