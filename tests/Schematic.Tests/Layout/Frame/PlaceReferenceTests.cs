using Schematic.Drawing;
using Schematic.Layout.Frame;
using Schematic.Tests.Rendering;
using Xunit;

namespace Schematic.Tests.Layout.Frame;

public class PlaceReferenceTests
{
    private static readonly Thing Coil = Thing.Part("K1", "coil");

    // A4 landscape, zones of 50 mm from the centring marks at 148.5 and 105 mm (ISO 5457:1999, second-hand listing).
    private static readonly BoxMm InB4 = new(160, 60, 180, 90);

    [Fact]
    public void A_reference_names_sheet_and_zone_of_the_middle_of_the_box()
    {
        var sheets = Finish([Sheet(SheetKind.Wiring, [Refer(Coil)]), Sheet(SheetKind.Wiring, [], new PlacedThing(Coil, InB4))]);
        Assert.Equal("coil 2/B4", TextOn(sheets[0]));
    }

    [Fact]
    public void The_place_follows_when_a_list_of_sheets_comes_before()
    {
        var sheets = Finish([.. Enumerable.Repeat(Sheet(SheetKind.Wiring, [Refer(Coil)], new PlacedThing(Coil, InB4)), 4)]);
        Assert.Equal(SheetKind.Index, sheets[0].Kind);
        Assert.Equal("coil 2/B4", TextOn(sheets[^1]));
    }

    [Fact]
    public void The_same_kind_of_sheet_is_preferred_and_another_can_be_asked_for()
    {
        var onWiring = Sheet(SheetKind.Wiring, [Refer(Coil)], new PlacedThing(Coil, InB4));
        var onCircuit = Sheet(SheetKind.Circuit, [Refer(Coil, SheetKind.Wiring)], new PlacedThing(Coil, InB4.Moved(0, 50)));
        var sheets = Finish([onCircuit, onWiring]);
        Assert.Equal("coil 2/B4", TextOn(sheets[0]));
        Assert.Equal("coil 2/B4", TextOn(sheets[1]));
        Assert.Equal("coil 1/C4", TextOn(Finish([onCircuit, Sheet(SheetKind.Wiring, [])])[0]));
    }

    [Fact]
    public void A_role_is_kept_apart_and_no_role_means_any()
    {
        var sheets = Finish([Sheet(SheetKind.Wiring, [Refer(Thing.Part("K1")), Refer(Thing.Part("K1", "contact"))], new PlacedThing(Coil, InB4))]);
        Assert.Equal(["coil 1/B4", "coil"], sheets[0].Marks.OfType<TextMark>().Where(t => t.Reference is not null).Select(t => t.Text));
    }

    [Fact]
    public void What_is_kept_free_is_as_wide_as_any_place_of_a_usual_pack()
    {
        var reference = new PlaceReference(Coil) { Before = "coil " };
        var open = TextMark.Referring(MarkRole.Label, reference, default, 2.5).WidthMm;
        foreach (var place in (string[])["1/A1", "99/F8", "88/H12"])
            Assert.True(open >= new TextMark(MarkRole.Label, reference.TextFor(place), default, 2.5).WidthMm - 0.3, place);
    }

    private static TextMark Refer(Thing target, SheetKind? on = null) =>
        TextMark.Referring(MarkRole.Label, new PlaceReference(target) { Before = "coil ", On = on }, new PointMm(60, 60), 2.5);

    private static SheetContent Sheet(SheetKind kind, Mark[] marks, params PlacedThing[] things) => new(kind, "Sheet", [.. marks]) { Things = [.. things] };

    private static Sheet[] Finish(SheetContent[] contents)
    {
        var panel = SheetSamples.Panel();
        return [.. SheetFrame.For(panel).Finish(contents, panel)];
    }

    private static string TextOn(Sheet sheet) => sheet.Marks.OfType<TextMark>().Single(t => t.Reference is not null).Text;
}
