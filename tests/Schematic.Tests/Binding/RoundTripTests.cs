using System.Text;
using CsCheck;
using Schematic.Analysis;
using Schematic.Language;
using Schematic.Model;
using Schematic.Text;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Binding;

public class RoundTripTests
{
    private const int Runs = 120;

    [Fact]
    public void A_panel_that_is_written_out_is_read_back_the_same() => PanelSample.Panels.Holds(
        panel =>
        {
            var text = PanelSampleWriter.Write(panel);
            var result = TestPanels.Read(text);
            Assert.True(!result.HasErrors, string.Join('\n', result.Diagnostics.Select(d => $"{d.Span}: {d.Message}")) + "\n" + text);
            AssertSame(PanelText.Describe(panel), PanelText.Describe(result.Panel), text);
        },
        count: Runs);

    [Fact]
    public void Formatting_keeps_the_panel_and_its_comments_and_formatting_again_changes_nothing() =>
        Gen.Select(PanelSample.Panels, Gen.Int[0, 1_000_000]).Holds(
            (panel, seed) =>
            {
                var text = Disarrange(PanelSampleWriter.Write(panel), seed);
                var formatted = PanelFormatter.Format(text);
                AssertSame(formatted, PanelFormatter.Format(formatted), text);
                AssertSame(PanelText.Describe(TestPanels.Load(text)), PanelText.Describe(TestPanels.Load(formatted)), text);
                Assert.Equal(Comments(text), Comments(formatted));
            },
            count: Runs);

    [Fact]
    public void No_text_however_damaged_makes_the_reader_or_the_formatter_fail() =>
        Gen.Select(PanelSample.Panels, Gen.Select(Gen.Int[0, 100_000], Gen.Int[0, 5], Gen.Int[0, 40]).Array[1, 6]).Holds(
            (panel, damages) =>
            {
                var text = damages.Aggregate(PanelSampleWriter.Write(panel), Damage);
                var result = TestPanels.Read(text);
                Assert.All(result.Diagnostics, d => Assert.InRange(d.Span.Span.End, 0, text.Length));
                var formatted = PanelFormatter.Format(text);
                Assert.Equal(formatted, PanelFormatter.Format(formatted));
            },
            count: Runs);

    [Fact]
    public void Words_in_wrong_places_give_a_panel_that_names_only_what_it_holds_and_that_can_be_checked() =>
        Gen.Select(PanelSample.Panels, Gen.Select(Gen.Int[0, 100_000], Gen.Int[0, 100_000]).Array[1, 8]).Holds(
            (panel, moves) =>
            {
                var text = PanelSampleWriter.WriteWithMovedWords(panel, moves);
                var (read, findings) = TestPanels.Read(text);
                Assert.True(PanelChecker.Check(read, findings).Length >= findings.Length);
                var terminals = read.Parts.SelectMany(p => p.Terminals.Select(t => p.At(t.Name))).ToHashSet();
                Assert.All(read.Nets.SelectMany(n => n.Members).Select(m => m.Terminal), t => Assert.Contains(t, terminals));
                Assert.All(read.Wires.SelectMany(w => new[] { w.From, w.To }), t => Assert.Contains(t, terminals));
                Assert.All(read.Attachments.SelectMany(a => new[] { a.Device, a.Contact }), t => Assert.Contains(t, terminals));
                Assert.Equal(read.Parts.Length, read.Parts.Select(p => p.Designator).Distinct().Count());
                Assert.All(read.Parts.OfType<Switch>(), s => Assert.Contains(read.Actuators, a => a.Name == s.Actuator));
            },
            count: Runs);

    [Fact]
    public void Any_run_of_marks_and_words_is_read() =>
        PanelSample.OneOf("J1:", "28", " V", "\"x", "\"", "{", "}", ";", "#c\n", "\n", " -> ", "..", ",", "(", ")", " lamp ", " net ", " when ", " use ", " size 20: ", "connector ", " poles ", "\0", "\\", "é", "\uD800", "\u2028", "\u0085", "\u202E", "\u200B", "\uFEFF", "\f", "\v", "\r", "\r\n", "\t", "fuse F9 1 A", "ccw")
            .Array[0, 60].Select(string.Concat).Holds(
                text =>
                {
                    var (panel, findings) = TestPanels.Read(text);
                    Assert.All(findings, f => Assert.False(HiddenCharacters.AreIn(f.Message + f.Help)));
                    var formatted = PanelFormatter.Format(text);
                    Assert.Equal(formatted, PanelFormatter.Format(formatted));
                    Assert.Equal(PanelText.Describe(panel), PanelText.Describe(TestPanels.Read(formatted).Panel));
                },
                count: 500);

    [Fact]
    public void Reading_takes_steps_that_grow_with_the_text_and_no_faster()
    {
        // Every step of the reader makes values: what it allocates counts its steps, however busy the machine is.
        var (small, large) = (StepsFor(200), StepsFor(2000));
        Assert.InRange(large, small, 12 * small);
    }

    private static long StepsFor(int repeats)
    {
        const string Marks = "lamp DS1 28 V , ( \"x\" -> J1: .. size 20: when ) ; poles \\ é { } \n";
        var before = GC.GetAllocatedBytesForCurrentThread();
        TestPanels.Read(string.Concat(Enumerable.Repeat(Marks, repeats)));
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }

    [Theory]
    [InlineData("wire W1 22 AWG black 450 mm J1:1 -> J1:2", "wire W1 22 AWG black 451 mm J1:1 -> J1:2")]
    [InlineData("net A J1:1 J1:2", "net A J1:2 J1:1")]
    [InlineData("lamp DS1 28 V 40 mA red", "lamp DS1 28 V 40 mA")]
    [InlineData("expect J1:1 open to J1:2 when G a", "expect J1:1 open to J1:2 when G a b")]
    [InlineData("switch S1 make on G when a { J1:1 J1:2 }", "switch S1 break on G when a { J1:1 J1:2 }")]
    [InlineData("fuse F1 1 A { J1:1 J1:2 }", "fuse F1 1 A { J1:1 J1:1 }")]
    public void A_difference_in_one_statement_is_a_difference_of_the_panels(string one, string other)
    {
        const string Unit = "connector J1 { pins ; strip 2 pitch 5 mm }\nactuator G { a rest ; b }\n";
        Assert.NotEqual(PanelText.Describe(TestPanels.Load(Unit + one)), PanelText.Describe(TestPanels.Load(Unit + other)));
    }

    private static void AssertSame(string expected, string actual, string text) =>
        Assert.True(expected == actual, $"{FirstDifference(expected, actual)}\n{text}");

    private static string FirstDifference(string a, string b)
    {
        var at = 0;
        while (at < a.Length && at < b.Length && a[at] == b[at]) at++;
        return $"expected …{Around(a, at)}… but found …{Around(b, at)}…";
    }

    private static string Around(string text, int at) => text[Math.Max(0, at - 60)..Math.Min(text.Length, at + 60)];

    /// <summary>Widens gaps, adds comments and blank lines, all where they mean nothing.</summary>
    private static string Disarrange(string text, int seed)
    {
        var state = (uint)seed;
        var result = new StringBuilder();
        var isQuoted = false;
        for (var i = 0; i < text.Length; i++)
        {
            state = (state * 1664525) + 1013904223;
            var chance = state >> 28;
            var c = text[i];
            if (c == '\\') result.Append(text[i++]);
            else if (c == '"') isQuoted = !isQuoted;
            c = text[i];
            if (c == '\n' && chance < 4) result.Append(chance < 2 ? "  # note ; { \"" : " ;");
            result.Append(c);
            if (isQuoted) continue;
            if (c == ' ' && chance < 3) result.Append(chance == 0 ? "\t" : "   ");
            if (c == '\n' && chance is > 12) result.Append(chance == 13 ? "\n\n\n" : "   # alone\n");
        }

        return result.ToString();
    }

    private static List<string> Comments(string text)
    {
        var comments = new List<string>();
        foreach (var line in text.Split('\n'))
        {
            var isQuoted = false;
            for (var i = 0; i < line.Length; i++)
            {
                if (line[i] == '\\' && isQuoted) i++;
                else if (line[i] == '"') isQuoted = !isQuoted;
                else if (line[i] == '#' && !isQuoted)
                {
                    comments.Add(line[i..].Trim());
                    break;
                }
            }
        }

        return comments;
    }

    /// <summary>Takes out, doubles, swaps or replaces a stretch of a text.</summary>
    private static string Damage(string text, (int Position, int Kind, int Length) damage)
    {
        if (text.Length == 0) return "{";
        var start = damage.Position % text.Length;
        var end = Math.Min(text.Length, start + damage.Length);
        return damage.Kind switch
        {
            0 => text.Remove(start, end - start),
            1 => text.Insert(start, text[start..end]),
            2 => text.Insert(start, "}"),
            3 => text.Insert(start, "{"),
            4 => text.Insert(start, "\""),
            _ => text[end..] + text[start..end] + text[..start],
        };
    }
}
