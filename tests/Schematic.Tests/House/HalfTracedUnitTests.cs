using Schematic.Analysis;
using Schematic.Binding;
using Schematic.Diagnostics;
using Schematic.Drawing;
using Schematic.Language;
using Schematic.Layout.Inspection;
using Schematic.Layout.Pack;
using Schematic.Model;
using Xunit;

namespace Schematic.Tests.House;

/// <summary>A unit of 31 contacts with seven poles of which three are traced: written, checked, drawn, and a second evening added.</summary>
public class HalfTracedUnitTests
{
    private static string Text => File.ReadAllText(Repository.PathOf("examples/gate-desk/gate-desk.panel"));

    private static Panel Panel => PanelLoader.LoadFile(Repository.PathOf("examples/gate-desk/gate-desk.panel")).Panel;

    [Fact]
    public void It_checks_without_an_error_and_warns_of_the_claim_that_waits_alone()
    {
        var result = PanelLoader.LoadFile(Repository.PathOf("examples/gate-desk/gate-desk.panel"));
        Assert.Equal(
            ["claim-undecided Warning"],
            result.Diagnostics.Concat(PanelChecker.Check(result.Panel)).Where(d => d.Severity != Severity.Note).Select(d => $"{d.Rule} {d.Severity}"));
        Assert.Equal(31, ((Connector)result.Panel.FindPart("J1")!).Terminals.Length);
        Assert.Equal((7, 4), (result.Panel.Parts.OfType<Switch>().Count(s => s.Form == ContactForm.Changeover),
            result.Panel.Parts.OfType<Switch>().Count(s => s.Form == ContactForm.Changeover && s.NotTraced.Count == 3)));
    }

    [Fact]
    public void Its_claims_are_proved_or_wait_for_a_measurement_that_is_named()
    {
        var waiting = PanelChecker.Check(Panel).Where(d => d.Rule is "claim-undecided" or "expectation-fails" or "never-violated").ToList();
        var only = Assert.Single(waiting);
        Assert.StartsWith("A1:IN3 high is neither proved nor refuted", only.Message, StringComparison.Ordinal);
        Assert.StartsWith("Measure which of J1:21", only.Help, StringComparison.Ordinal);
    }

    [Fact]
    public void Its_sheets_say_what_is_not_known_and_have_no_fault()
    {
        var panel = Panel;
        var sheets = PackBuilder.Build(panel, [.. PanelChecker.Check(panel)]);
        Assert.Empty(sheets.SelectMany(s => SheetInspector.Inspect(s).Faults).Select(f => f.ToString()));
        var texts = sheets.SelectMany(s => s.Marks.OfType<TextMark>()).Select(t => t.Text).ToList();
        foreach (var words in new[] { "not traced", "far end not traced", "positions not traced", "24 V ? A", "? V 47 Ω", "not traced J1:23..31" })
            Assert.Contains(words, string.Join(' ', texts), StringComparison.Ordinal);
        Assert.Contains(texts, t => t.StartsWith("Currents are those without DS1", StringComparison.Ordinal));
    }

    [Fact]
    public void A_second_evening_adds_lines_and_changes_none()
    {
        const string second = """
            lamp DS2 "gates raised" 24 V 40 mA on-hand { J1:23 J1:24 }
            switch S10 break on BELL on-hand { J1:25 J1:26 }
            resistor R1 on-hand { J1:27 J1:28 }
            wire W12 22 AWG red 300 mm PS1:+ -> P1:23
            wire W11 22 AWG black 300 mm P1:24 -> X1:5
            expect DS2 energised when PS1 on

            """;
        var panel = TestPanels.Load(Text + second);
        var found = PanelChecker.Check(panel);
        Assert.Empty(found.Where(d => d.Severity != Severity.Note && d.Rule != "claim-undecided").Select(d => $"{d.Rule}: {d.Message}"));
        Assert.Contains(found, d => d.Rule == "not-traced" && d.Message == "Contacts 21 22 29..31 of J1 are not traced yet.");
        Assert.Contains(found, d => d.Rule == "resistance-not-known" && d.Message.Contains("R1", StringComparison.Ordinal));
        Assert.Equal(Text, PanelFormatter.Format(Text));
    }
}
