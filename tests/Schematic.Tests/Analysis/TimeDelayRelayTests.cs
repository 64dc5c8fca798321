using Schematic.Analysis;
using Schematic.Diagnostics;
using Schematic.Drawing;
using Schematic.Layout.Inspection;
using Schematic.Layout.Pack;
using Schematic.Model;
using Schematic.Reports;
using Xunit;

namespace Schematic.Tests.Analysis;

/// <summary>Time-delay relays, from the words of the file to lists and sheets.</summary>
public class TimeDelayRelayTests
{
    private const string Gong = """
        title "Kinds"  number K-1
        actuator START "start" { off rest ; on }
        supply PS1 24 V limit 1 A
        switch S1 make on START when on
        relay K1 "hold-over" 24 V 800 ohm operates 18 V releases 2 V suppressed on-delay 5 s { delayed-changeover ; make ; delayed-make }
        lamp DS1 24 V 50 mA
        lamp DS2 24 V 50 mA
        net FEED PS1:+ S1:1 K1:15 K1:23
        net COIL S1:2 K1:A1
        net LATE K1:18 DS1:X1
        net NOW  K1:24 DS2:X1
        net RTN  PS1:- K1:A2 DS1:X2 DS2:X2

        """;

    /// <summary>
    /// Function digits 5-6-8 of timed changeover contacts, 7-8 of timed make, 5-6 of timed break: EN 50005, as secondary pages and
    /// memory have it; the tens digit counts every set of the relay.
    /// </summary>
    [Theory]
    [InlineData("delayed-changeover", "15 16 18")]
    [InlineData("delayed-make", "17 18")]
    [InlineData("delayed-break", "15 16")]
    [InlineData("changeover ; delayed-changeover", "11 12 14 25 26 28")]
    [InlineData("delayed-changeover ; delayed-changeover ; make", "15 16 18 25 26 28 33 34")]
    public void Its_contacts_carry_the_usual_numbers(string block, string terminals) => Assert.Equal(
        "A1 A2 " + terminals,
        string.Join(' ', TestPanels.Load($"relay K1 24 V 800 ohm on-delay 5 s {{ {block} }}").FindPart("K1")!.Terminals.Select(t => t.Name)));

    [Theory]
    [InlineData("on-delay 5 s", "time-delay relay 24 V, on-delay 5 s, 1 delayed changeover, 1 make")]
    [InlineData("off-delay 0.5..10 s", "time-delay relay 24 V, off-delay 0.5 to 10 s, 1 delayed changeover, 1 make")]
    [InlineData("on-delay 300 ms off-delay 2 min", "time-delay relay 24 V, on-delay 300 ms, off-delay 120 s, 1 delayed changeover, 1 make")]
    [InlineData("on-delay", "time-delay relay 24 V, on-delay ? s, 1 delayed changeover, 1 make")]
    public void Lists_call_it_by_its_delay(string delay, string words) =>
        Assert.Equal(words, PartNames.Of(TestPanels.Load($"relay K1 24 V 800 ohm {delay} {{ delayed-changeover ; make }}").FindPart("K1")!));

    [Theory]
    [InlineData("relay K1 24 V 800 ohm { delayed-make }", "missing-value")]
    [InlineData("relay K1 24 V 800 ohm on-delay 5 V { delayed-make }", "wrong-unit")]
    [InlineData("relay K1 24 V 800 ohm on-delay 10..2 s { delayed-make }", "out-of-range")]
    [InlineData("relay K1 24 V 800 ohm { make }\nexpect K1 energised when K1 delayed-operated", "unknown-position")]
    [InlineData("timer K1 24 V 5 s", "unknown-statement")]
    public void What_is_missing_or_wrong_is_told(string statement, string rule) =>
        Assert.Contains(TestPanels.Diagnose(statement), d => d.Rule == rule);

    [Fact]
    public void A_delay_that_nobody_has_timed_is_a_note_and_stops_nothing()
    {
        var found = MarkedPanel.Check(Gong.Replace("on-delay 5 s", "on-delay", StringComparison.Ordinal));
        Assert.Contains(found, f => f is { Rule: "rating-not-known", Severity: Severity.Note });
        Assert.DoesNotContain(found, f => f.Severity == Severity.Error);
    }

    [Fact]
    public void Claims_about_its_coil_and_about_its_delayed_contacts_are_told_apart()
    {
        string[] Failing(string claim) => [.. MarkedPanel.Check(Gong + claim).Where(f => f.Severity == Severity.Error).Select(f => f.Rule)];
        Assert.Empty(Failing("expect DS2 energised when K1 energised"));
        Assert.Empty(Failing("expect DS1 energised when K1 delayed-operated"));
        Assert.Empty(Failing("expect DS1 released when START off"));
        Assert.Equal(["expectation-fails"], Failing("expect DS1 energised when K1 energised"));
    }

    [Fact]
    public void The_contact_chart_shows_its_delayed_contacts_by_their_own_state()
    {
        var chart = ContactChart.Build(new AnalysisContext(TestPanels.Load(Gong))).Single(t => t.Title.EndsWith("relays", StringComparison.Ordinal));
        Assert.Equal(
            [
                "K1:15 - K1:16|K1 on-delay 5 s|CLOSED|open",
                "K1:15 - K1:18|K1 on-delay 5 s|open|CLOSED",
                "K1:23 - K1:24|K1|open|CLOSED",
                "K1:37 - K1:38|K1 on-delay 5 s|open|CLOSED",
            ],
            chart.Rows.Select(r => string.Join('|', r)));
        Assert.Contains("K1 has delayed contacts: they operate 5 s after its coil and release with it.", chart.Notes);
    }

    [Theory]
    [InlineData("iec", "on-delay 5 s")]
    [InlineData("iec", "off-delay 5 s")]
    [InlineData("ieee", "on-delay 5 s off-delay 3 s")]
    public void Sheets_show_the_delay_at_the_coil_and_overlap_nothing(string style, string delay)
    {
        var panel = TestPanels.Load($"symbols {style}\n" + Gong.Replace("on-delay 5 s", delay, StringComparison.Ordinal));
        var sheets = PackBuilder.Build(panel, [.. PanelChecker.Check(panel)]);
        Assert.Empty(sheets.SelectMany(s => SheetInspector.Inspect(s).Faults).Select(f => f.ToString()));
        var texts = sheets.SelectMany(s => s.Marks.OfType<TextMark>()).Select(t => t.Text).ToList();
        Assert.Contains(texts, t => t.Contains(((Relay)panel.FindPart("K1")!).DelayText, StringComparison.Ordinal));
    }
}
