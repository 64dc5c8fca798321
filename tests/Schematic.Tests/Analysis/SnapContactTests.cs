using Schematic.Analysis;
using Schematic.Diagnostics;
using Schematic.Drawing;
using Schematic.Layout.Inspection;
using Schematic.Layout.Pack;
using Schematic.Model;
using Schematic.Reports;
using Xunit;

namespace Schematic.Tests.Analysis;

/// <summary>Reed contacts, microswitches and what works them; knobs that are pushed to be turned.</summary>
public class SnapContactTests
{
    private const string Things = """
        actuator DOOR "door" magnet { open rest ; closed }
        actuator BLADE "blade" cam { down rest ; lifted ; over }

        """;

    /// <summary>COM, NO and NC as they are stamped on most snap-action switches: common practice, no source.</summary>
    [Theory]
    [InlineData("microswitch S1 changeover on BLADE", "COM NO NC")]
    [InlineData("microswitch S1 make on BLADE", "COM NO")]
    [InlineData("microswitch S1 break on BLADE", "COM NC")]
    [InlineData("microswitch S1 changeover on BLADE terminals C 4 2", "C 4 2")]
    [InlineData("reed S1 make on DOOR", "1 2")]
    [InlineData("reed S1 changeover on DOOR", "COM NO NC")]
    public void Its_terminals_have_their_own_names(string statement, string terminals) =>
        Assert.Equal(terminals, string.Join(' ', TestPanels.Load(Things + statement).FindPart("S1")!.Terminals.Select(t => t.Name)));

    [Theory]
    [InlineData("", "lifted over", "down")]
    [InlineData(" when over", "over", "down lifted")]
    public void NO_makes_in_the_positions_that_operate_it_and_NC_in_all_others(string when, string made, string broken)
    {
        var pole = TestPanels.Load(Things + "microswitch S1 changeover on BLADE" + when).FindPart("S1")!.ContactSets[0];
        Assert.Equal([made, broken], pole.Throws.Select(t => string.Join(' ', ((PositionCondition)t.When).Positions)));
    }

    [Theory]
    [InlineData("{ J1:1 J1:2 J1:3 }")]
    [InlineData("{ COM J1:1 ; NO J1:2 ; NC J1:3 }")]
    [InlineData("{ NC J1:3 ; COM J1:1 ; NO J1:2 }")]
    public void Its_contacts_are_listed_in_order_or_named(string block)
    {
        var panel = TestPanels.Load(Things + "connector J1 { pins ; strip 3 pitch 5 mm }\nmicroswitch S1 changeover on BLADE " + block);
        Assert.Equal(
            ["S1:COM J1:1", "S1:NO J1:2", "S1:NC J1:3"],
            panel.Attachments.OrderBy(a => a.Contact).Select(a => $"{a.Device} {a.Contact}"));
    }

    [Theory]
    [InlineData("microswitch S1 rotary on BLADE", "contradiction")]
    [InlineData("microswitch S1 make on BLADE terminals 1", "count-mismatch")]
    [InlineData("microswitch S1 make on BLADE { C J1:1 ; NO J1:2 }", "missing-value")]
    [InlineData("microswitch S1 changeover on BLADE { J1:1 J1:2 }", "count-mismatch")]
    [InlineData("switch S1 make on BLADE terminals 13 14", "contradiction")]
    [InlineData("actuator A knob lever { a ; b }", "contradiction")]
    [InlineData("actuator A push-to-turn B { a ; b }", "unknown-name")]
    [InlineData("actuator A push-to-turn A { a ; b }", "contradiction")]
    public void What_is_missing_or_wrong_is_told(string statement, string rule) =>
        Assert.Contains(TestPanels.Diagnose(Things + "connector J1 { pins ; strip 3 pitch 5 mm }\n" + statement), d => d.Rule == rule);

    [Fact]
    public void A_knob_leaves_no_position_unless_its_push_is_in()
    {
        const string text = """
            actuator PUSH button { out rest ; in springs-to out }
            actuator KNOB push-to-turn PUSH { off rest ; half ; full }
            supply PS1 24 V limit 1 A
            pole S1 rotary on KNOB { common ; half ; full }
            switch S2 break on PUSH
            lamp DS1 24 V 50 mA
            lamp DS2 24 V 50 mA
            net FEED PS1:+ S1:common S2:1
            net HALF S1:half DS1:X1
            net FULL S1:full DS2:X1
            net IN   S2:2
            net RTN  PS1:- DS1:X2 DS2:X2

            """;
        var failed = Assert.Single(MarkedPanel.Check(text + "expect DS2 released when KNOB full"), f => f.Rule == "expectation-fails");
        Assert.Equal(["hold PUSH at in", "move KNOB to full"], failed.Trace.Take(2).Select(t => t.ToString()));
        var proof = new AnalysisContext(TestPanels.Load(text)).Positions;
        foreach (var (move, when) in proof.States.Moves.Where(m => proof.Circuit.Variables.All[m.Move.Variable].Name == "KNOB"))
            Assert.True(proof.Circuit.Store.And(when, proof.Circuit.Compile(PanelBuilder.At("PUSH", "out"))).IsNever, $"{move}");
    }

    [Fact]
    public void A_knob_without_contacts_on_its_push_is_pushed_and_turned_by_one_move()
    {
        var failed = Assert.Single(
            MarkedPanel.Check("""
                actuator KNOB push-to-turn { off rest ; low ; high }
                supply PS1 24 V limit 1 A
                switch S1 make on KNOB when high
                lamp DS1 24 V 50 mA
                net FEED PS1:+ S1:1
                net ON S1:2 DS1:X1
                net RTN PS1:- DS1:X2
                expect DS1 released when KNOB high
                """), f => f.Rule == "expectation-fails");
        Assert.Equal("push KNOB and turn it to high", failed.Trace[0].ToString());
    }

    [Theory]
    [InlineData("reed S1 make on DOOR rated 24 V 0.5 A", "reed contact, make, 24 V 500 mA")]
    [InlineData("microswitch S1 changeover on BLADE", "microswitch, changeover")]
    [InlineData("pole S1 changeover on DOOR make-before-break { common ; open ; closed }", "switch, changeover, make-before-break")]
    public void Lists_call_it_by_its_data(string statement, string words) =>
        Assert.Equal(words, PartNames.Of(TestPanels.Load(Things + statement).FindPart("S1")!));

    [Theory]
    [InlineData("iec")]
    [InlineData("ieee")]
    public void Sheets_name_what_works_it_and_overlap_nothing(string style)
    {
        var panel = TestPanels.Load($$"""
            title "Kinds"  number K-1
            symbols {{style}}
            {{Things}}
            actuator PUSH button { out rest ; in springs-to out }
            actuator KNOB "dimmer" push-to-turn PUSH { off rest ; half ; full }
            actuator DIAL knob { a rest ; b }
            connector J1 "unit" { pins ; strip 8 pitch 5 mm ; spare 6..8 }
            supply PS1 24 V limit 5 A
            reed S1 make on DOOR { J1:1 J1:2 }
            reed S2 changeover on DOOR
            microswitch S3 changeover on BLADE when lifted { J1:3 J1:4 J1:5 }
            microswitch S4 break on BLADE when over
            pole S5 rotary on KNOB { common ; half ; full }
            switch S6 make on PUSH
            switch S7 make on DIAL
            lamp DS1..DS9 24 V 50 mA
            net FEED PS1:+ J1:1 J1:3 S2:COM S4:COM S5:common S6:1 S7:1
            net L1 J1:2 DS1:X1
            net L2 S2:NO DS2:X1
            net L3 S2:NC DS3:X1
            net L4 J1:4 DS4:X1
            net L5 J1:5 DS5:X1
            net L6 S4:NC DS6:X1
            net L7 S5:half S5:full DS7:X1
            net L8 S6:2 DS8:X1
            net L9 S7:2 DS9:X1
            net RTN PS1:- DS1:X2 DS2:X2 DS3:X2 DS4:X2 DS5:X2 DS6:X2 DS7:X2 DS8:X2 DS9:X2
            """);
        var found = PanelChecker.Check(panel);
        Assert.DoesNotContain(found, f => f.Severity == Severity.Error);
        var sheets = PackBuilder.Build(panel, [.. found]);
        Assert.Empty(sheets.SelectMany(s => SheetInspector.Inspect(s).Faults).Select(f => f.ToString()));
        var texts = sheets.SelectMany(s => s.Marks.OfType<TextMark>()).Select(t => t.Text).ToList();
        Assert.Contains(texts, t => t.Contains("push to turn: PUSH", StringComparison.Ordinal));
        Assert.Contains("KNOB turns only while it is pushed.", ContactChart.Build(new AnalysisContext(panel)).SelectMany(t => t.Notes));
    }
}
