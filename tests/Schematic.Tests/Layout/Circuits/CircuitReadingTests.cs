using System.Text;
using ApprovalTests;
using Schematic.Analysis;
using Schematic.Drawing;
using Schematic.Layout.Circuits;
using Schematic.Layout.Frame;
using Schematic.Rendering;
using Xunit;

namespace Schematic.Tests.Layout.Circuits;

/// <summary>What a reader who has never seen the panel must find where a draughtsman would have put it.</summary>
public class CircuitReadingTests
{
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
        Assert.Contains("PS1 +  24 V", Texts(latch));
        Assert.Contains("PS1 −", Texts(latch));
    }

    [Fact]
    public void A_lock_names_the_positions_what_releases_it_and_its_button()
    {
        var texts = Sheets("lever-frame/lever").SelectMany(Texts).ToList();
        Assert.Contains("locked at normal,", texts);
        Assert.Contains(texts, t => t.StartsWith("unless L1 energised ", StringComparison.Ordinal) && t.Contains('/', StringComparison.Ordinal));
        Assert.Contains(texts, t => t.StartsWith("by BUTTON ", StringComparison.Ordinal) && t.Contains('/', StringComparison.Ordinal));
    }

    [Fact]
    public void A_position_that_must_be_held_is_marked_and_an_input_says_what_it_means_and_when_it_is_low()
    {
        var texts = Sheets("lever-frame/lever").SelectMany(Texts).ToList();
        Assert.Contains("pressed (hold)", texts);
        Assert.Contains("left-stop (hold)", texts);
        Assert.Contains("lever 14 normal", texts);
        Assert.Contains("low: LEVER normal", texts);
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

    private static BoxMm BoxOf(Sheet sheet, Thing thing) => sheet.Things.First(t => t.Thing == thing).Box;

    private static IEnumerable<string> Texts(Sheet sheet) => sheet.Marks.OfType<TextMark>().Select(t => t.Text);

    private static List<Sheet> Sheets(string example)
    {
        var panel = TestPanels.Load(File.ReadAllText(Repository.PathOf($"examples/{example}.panel")));
        var frame = SheetFrame.For(panel);
        return [.. frame.Finish(CircuitSheets.Build(new AnalysisContext(panel), frame), panel).Where(s => s.Kind == SheetKind.Circuit)];
    }
}
