using System.Text;
using ApprovalTests;
using Schematic.Analysis;
using Schematic.Drawing;
using Schematic.Layout.Circuits;
using Schematic.Layout.Frame;
using Schematic.Model;
using Schematic.Rendering;
using Xunit;

namespace Schematic.Tests.Layout.Circuits;

/// <summary>What a reader who has never seen the panel must find where a draughtsman would have put it.</summary>
public class CircuitReadingTests
{
    [Fact]
    public void A_line_that_begins_behind_a_fuse_says_so()
    {
        Assert.Contains("PS1 +  28 V behind F1", Sheets("lever-frame/lever").SelectMany(Texts));
    }

    [Fact]
    public void The_latch_looks_as_approved() =>
        Approvals.VerifyBinaryFile(Encoding.UTF8.GetBytes(SvgWriter.Write(Assert.Single(Sheets("relay-latch/latch")))), "svg");

    [Fact]
    public void The_holding_contact_stands_on_the_right_of_the_button_that_it_holds()
    {
        var latch = Assert.Single(Sheets("relay-latch/latch"));
        var (button, holding) = (BoxOf(latch, new Thing(ThingKind.Contact, "S1:1")), BoxOf(latch, new Thing(ThingKind.Contact, "K1:13")));
        Assert.True(holding.Left > button.Right);
        Assert.InRange(holding.Centre.Y, button.Top - 10, button.Bottom + 10);
        Assert.DoesNotContain(latch.Things, t => t.Thing.Kind is ThingKind.Contact or ThingKind.Part && t.Box.Left > button.Right && t.Box.Right < holding.Left);
    }

    [Fact]
    public void The_holding_contact_says_what_it_holds_and_no_other_contact_does()
    {
        var latch = Assert.Single(Sheets("relay-latch/latch"));
        var words = Assert.Single(latch.Marks.OfType<TextMark>(), t => t.Text.StartsWith("holds ", StringComparison.Ordinal));
        Assert.Equal("holds K1", words.Text);
        var holding = BoxOf(latch, new Thing(ThingKind.Contact, "K1:13"));
        Assert.InRange(words.Bounds.Left, holding.Left, holding.Right + 5);
        Assert.InRange(words.Bounds.Centre.Y, holding.Top, holding.Bottom + 2);
    }

    [Fact]
    public void The_diode_stands_beside_its_coil_and_the_contacts_are_named_under_it()
    {
        var latch = Assert.Single(Sheets("relay-latch/latch"));
        var (coil, diode) = (BoxOf(latch, Thing.Part("K1", "coil")), BoxOf(latch, Thing.Part("D1")));
        Assert.True(diode.Left > coil.Right);
        Assert.InRange(diode.Centre.Y, coil.Top - 10, coil.Bottom + 10);
        Assert.Contains(Texts(latch), t => t.StartsWith("13-14 1/", StringComparison.Ordinal));
        Assert.Contains(Texts(latch), t => t.StartsWith("21-22-24 1/", StringComparison.Ordinal));
    }

    [Fact]
    public void A_changeover_is_drawn_once_and_its_throws_open_to_neighbouring_columns()
    {
        var latch = Assert.Single(Sheets("relay-latch/latch"));
        Assert.Single(latch.Things, t => t.Thing == new Thing(ThingKind.Contact, "K1:21"));
        var (contact, silent, ringing) = (BoxOf(latch, new Thing(ThingKind.Contact, "K1:21")), BoxOf(latch, Thing.Part("DS2")), BoxOf(latch, Thing.Part("DS1")));
        Assert.InRange(silent.Centre.X, contact.Left - 5, contact.Right + 5);
        Assert.True(ringing.Centre.X > contact.Right);
        Assert.True(silent.Top > contact.Bottom && ringing.Top > contact.Bottom);
    }

    [Fact]
    public void A_supply_stands_first_between_its_line_and_its_return_with_its_fuse_above_it()
    {
        var latch = Assert.Single(Sheets("relay-latch/latch"));
        var (supply, fuse) = (BoxOf(latch, Thing.Part("PS1")), BoxOf(latch, Thing.Part("F1")));
        Assert.All(latch.Things.Where(t => t.Thing.Kind == ThingKind.Contact), t => Assert.True(t.Box.Left > supply.Right));
        Assert.True(fuse.Bottom < supply.Top);
        Assert.Contains("PS1 +  24 V behind F1", Texts(latch));
        Assert.Contains("PS1 −", Texts(latch));
    }

    [Fact]
    public void A_lock_names_the_positions_what_releases_it_and_its_button()
    {
        var texts = Sheets("lever-frame/lever").SelectMany(Texts).ToList();
        Assert.Contains("locked at normal, reverse", string.Join(' ', texts), StringComparison.Ordinal);
        Assert.Contains(texts, t => t.StartsWith("unless L1 energised ", StringComparison.Ordinal) && t.Contains('/', StringComparison.Ordinal));
        Assert.Contains(texts, t => t.StartsWith("by BUTTON ", StringComparison.Ordinal) && t.Contains('/', StringComparison.Ordinal));
    }

    [Fact]
    public void A_position_that_must_be_held_is_marked_and_an_input_says_what_it_means_and_when_it_is_low()
    {
        var texts = Sheets("lever-frame/lever").SelectMany(Texts).ToList();
        var words = string.Join(' ', texts);
        foreach (var said in (string[])["pressed (hold)", "left-stop (hold)", "lever 14 normal", "low: LEVER normal"]) Assert.Contains(said, words, StringComparison.Ordinal);
    }

    [Fact]
    public void Contacts_of_one_actuator_beside_each_other_share_its_symbol_by_a_dashed_linkage()
    {
        var sheets = Sheets("lever-frame/lever");
        var linkage = sheets.SelectMany(s => s.Marks.OfType<LineMark>()).Where(m => m.Role == MarkRole.Linkage && m.Owner == "GRIP").ToList();
        Assert.Contains(linkage, l => l.Bounds.Width > 15);
        Assert.Single(sheets.SelectMany(s => s.Marks.OfType<TextMark>()), t => t.Text == "GRIP");
    }

    [Fact]
    public void What_a_person_with_an_iron_needs_is_black_and_at_least_2_5_mm_high()
    {
        var needed = Sheets("lever-frame/lever").Concat(Sheets("engine-order/engine-order")).SelectMany(s => s.Marks.OfType<TextMark>())
            .Where(t => t.Subject?.Kind is ThingKind.Wire or ThingKind.Terminal).ToList();
        Assert.True(needed.Count > 60);
        Assert.All(needed, t => Assert.True(t.HeightMm >= 2.5 && t.Ink == Ink.Black, t.Text));
    }

    [Fact]
    public void A_column_higher_than_the_sheet_is_cut_and_goes_on_with_references_both_ways()
    {
        var text = new StringBuilder("sheet A4 landscape\nsupply PS1 24 V { + - }\nlamp DS1 24 V 50 mA\n");
        for (var i = 1; i <= 14; i++)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"actuator B{i} {{ out rest ; in springs-to out }}\nswitch S{i} make on B{i} when in\n");
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"wire W{i} 22 AWG red 100 mm {(i == 1 ? "PS1:+" : $"S{i - 1}:2")} -> S{i}:1\n");
        }

        text.Append("wire W15 22 AWG red 100 mm S14:2 -> DS1:X1\nwire W16 22 AWG black 100 mm DS1:X2 -> PS1:-\n");
        var panel = TestPanels.Load(text.ToString());
        Assert.All(CircuitProof.Prove(panel, "tall"), q => Assert.Equal(0, q.Crossings));
        Assert.Contains(CircuitSheets.Build(new AnalysisContext(panel), SheetFrame.For(panel)).SelectMany(s => s.Things), t => t.Thing.Role == "second");
    }

    [Theory]
    [InlineData("a")]
    [InlineData("b")]
    [InlineData("c")]
    public void Knobs_of_any_rest_have_their_words_and_references_clear_of_the_throws(string rest)
    {
        var panel = TestPanels.Load(KnobPanel(rest));
        Assert.NotEmpty(CircuitProof.Prove(panel, rest));
        var texts = SheetsOf(panel).SelectMany(s => s.Marks.OfType<TextMark>()).ToList();
        Assert.Contains(texts, t => t.Text == "MODE" && t.IsBold);
        Assert.Contains(texts, t => t.Text == "MODE" && !t.IsBold);
    }

    [Fact]
    public void Knobs_beside_each_other_share_a_dashed_linkage()
    {
        var linkages = SheetsOf(TestPanels.Load(KnobPanel("a"))).SelectMany(s => s.Marks.OfType<LineMark>()).Where(m => m.Role == MarkRole.Linkage && m.Owner == "MODE");
        Assert.Contains(linkages, l => l.Bounds.Width > 50);
    }

    [Fact]
    public void A_throw_that_is_called_as_its_position_is_named_once()
    {
        var sheets = SheetsOf(TestPanels.Load(KnobPanel("a")));
        Assert.Single(sheets.SelectMany(Texts), t => t == "off");
        Assert.Single(sheets.SelectMany(Texts), t => t == "on");
    }

    [Fact]
    public void The_throws_of_a_relay_say_when_they_are_closed()
    {
        var latch = Assert.Single(Sheets("relay-latch/latch"));
        var (silent, ringing) = (BoxOf(latch, Thing.Part("DS2")), BoxOf(latch, Thing.Part("DS1")));
        double XOf(string text) => Assert.Single(latch.Marks.OfType<TextMark>(), t => t.Text == text).Bounds.Left;
        Assert.InRange(XOf("released"), silent.Left, silent.Right + 5);
        Assert.InRange(XOf("operated"), ringing.Left, ringing.Right + 5);
    }

    /// <summary>Three knobs of one actuator, the last behind a strip, and a changeover with nothing but wires on its own terminals.</summary>
    private static string KnobPanel(string rest)
    {
        string Position(string name) => name == rest ? name + " rest" : name;
        string[] throws = ["R1:a", "R1:b", "R1:c", "R2:a", "R2:b", "R2:c", "S5:off", "S5:on", "X1:2", "X1:3", "X1:4"];
        var text = new StringBuilder($$"""
            actuator MODE "mode knob" { {{Position("a")}} ; {{Position("b")}} ; {{Position("c")}} }
            actuator KEY "key" { off rest ; on }
            pole R1 rotary on MODE { common ; a ; b ; c }
            pole R2 rotary on MODE { common ; a ; b ; c }
            pole R3 rotary on MODE { common X1:1 ; a X1:2 ; b X1:3 ; c X1:4 }
            pole S5 changeover on KEY { common ; off ; on }
            terminals X1 { 1..4 }
            supply PS1 24 V limit 9 A { + - }
            lamp DS1..DS11 24 V 50 mA
            wire W1 22 AWG red 100 mm PS1:+ -> R1:common
            wire W2 22 AWG red 100 mm R1:common -> R2:common
            wire W3 22 AWG red 100 mm R2:common -> S5:common
            wire W4 22 AWG red 100 mm S5:common -> X1:1

            """);
        for (var i = 0; i < throws.Length; i++)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"wire W{(2 * i) + 5} 22 AWG red 100 mm {throws[i]} -> DS{i + 1}:X1\n");
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"wire W{(2 * i) + 6} 22 AWG black 100 mm DS{i + 1}:X2 -> {(i == 0 ? "PS1:-" : $"DS{i}:X2")}\n");
        }

        return text.ToString();
    }

    private static BoxMm BoxOf(Sheet sheet, Thing thing) => sheet.Things.First(t => t.Thing == thing).Box;

    private static IEnumerable<string> Texts(Sheet sheet) => sheet.Marks.OfType<TextMark>().Select(t => t.Text);

    private static List<Sheet> Sheets(string example)
    {
        return SheetsOf(TestPanels.Load(File.ReadAllText(Repository.PathOf($"examples/{example}.panel"))));
    }

    private static List<Sheet> SheetsOf(Panel panel)
    {
        var frame = SheetFrame.For(panel);
        return [.. frame.Finish(CircuitSheets.Build(new AnalysisContext(panel), frame), panel).Where(s => s.Kind == SheetKind.Circuit)];
    }
}
