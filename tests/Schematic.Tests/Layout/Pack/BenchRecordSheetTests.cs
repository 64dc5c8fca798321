using System.Globalization;
using Schematic.Analysis;
using Schematic.Drawing;
using Schematic.Layout.Circuits;
using Schematic.Layout.Faces;
using Schematic.Layout.Frame;
using Schematic.Layout.Pack;
using Schematic.Layout.Shapes;
using Schematic.Model;
using Xunit;

namespace Schematic.Tests.Layout.Pack;

/// <summary>What was measured shows on paper: signs at contacts, told by form alone, and a sheet of its own.</summary>
public class BenchRecordSheetTests
{
    private const string Unit = """
        connector J1 { pins ; spiral 7 rings 1 6 from centre clockwise on front of pins ; solder ; spare 6 7 }
        actuator KNOB { off rest ; on }
        pole S1 changeover on KNOB on-hand { common J1:1 ; off J1:2 ; on J1:3 }
        lamp DS1 28 V 40 mA on-hand { J1:4 J1:5 }
        readings "first.readings"
        """;

    private const string Taken = """
        readings of "unit.panel"
        unit J1
        date 2026-11-24  by "A. Warden"
        at rest { J1:1 J1:2 closed ; J1:4 J1:5 open }
        """;

    private static Panel Kept => TestPanels.Read(Unit, ("first.readings", Taken)).Panel;

    [Fact]
    public void The_record_is_a_sheet_of_its_own()
    {
        var sheet = Assert.Single(PackBuilder.Build(Kept, []), s => s.Kind == SheetKind.BenchRecord);
        var words = string.Join(' ', sheet.Marks.OfType<TextMark>().Select(t => t.Text));
        Assert.Contains("A. Warden", words, StringComparison.Ordinal);
        Assert.Contains("DS1", words, StringComparison.Ordinal); // blown: the likeliest
        Assert.Contains("Readings that this panel does not give", words, StringComparison.Ordinal);
        Assert.Contains("not yet measured", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_readings_there_is_no_such_sheet_and_no_sign()
    {
        var sheets = PackBuilder.Build(TestPanels.Load(Unit.Replace("readings \"first.readings\"", "", StringComparison.Ordinal)), []);
        Assert.DoesNotContain(sheets, s => s.Kind == SheetKind.BenchRecord);
        Assert.DoesNotContain(sheets.SelectMany(s => s.Marks.OfType<TextMark>()), t => t.Text.Contains("tick, proved", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(SheetKind.Faces)]
    [InlineData(SheetKind.Circuit)]
    public void Contacts_carry_a_sign_and_the_sheet_says_what_it_means(SheetKind kind)
    {
        var marks = PackBuilder.Build(Kept, []).Where(s => s.Kind == kind).SelectMany(s => s.Marks).ToList();
        Assert.Contains("tick, proved", string.Join(' ', marks.OfType<TextMark>().Select(t => t.Text)), StringComparison.Ordinal);
        Assert.Equal(2, SignStrokes(marks, "J1:4").Count()); // the two strokes of a cross
        if (kind == SheetKind.Circuit) return; // the switch is in no circuit here
        Assert.All(SignStrokes(marks, "J1:4"), m => Assert.True(m.Bounds.Height >= 2.5)); // as high as lettering
        Assert.Equal(3, SignStrokes(marks, "J1:2").Single().Points.Length); // a tick
        Assert.Contains(SignStrokes(marks, "J1:3"), m => m.IsClosed); // a box
    }

    [Fact]
    public void Every_sheet_that_bears_signs_says_what_they_mean()
    {
        var numbers = Enumerable.Range(1, 48).Select(i => i.ToString(CultureInfo.InvariantCulture)).ToList();
        var panel = TestPanels.Read($$"""
            connector J1 { pins ; grid 40 by 4 pitch 2.54 mm by-rows on front of pins from upper-left ; solder }
            {{string.Join('\n', numbers.Select(i => $"lamp DS{i} 28 V 40 mA on-hand {{ J1:{i} J1:159 }}"))}}
            readings "first.readings"
            """, ("first.readings", "readings of \"unit.panel\"\nunit J1\ndate 2026-11-24\nat rest { J1:1 J1:158 open }")).Panel;
        var circuits = CircuitSheets.Build(new AnalysisContext(panel), SheetFrame.For(panel));
        Assert.True(circuits.Length > 1, "one circuit sheet proves nothing");
        var faces = FaceSheets.Build(panel, panel.Parts.OfType<Connector>().Single(), SheetFrame.For(panel)).Where(s => s.Kind == SheetKind.Faces);
        var bearing = circuits.Concat(faces).Where(BearsSigns).ToList();
        Assert.Equal(circuits.Length, bearing.Count(s => s.Kind == SheetKind.Circuit));
        Assert.NotEqual(circuits.Length, bearing.Count);
        Assert.All(bearing, s => Assert.Contains("tick, proved", string.Join(' ', s.Marks.OfType<TextMark>().Select(t => t.Text)), StringComparison.Ordinal));
        Assert.All(circuits, s => Assert.All(s.Marks, m => Assert.True(m.Bounds.Bottom <= SheetFrame.For(panel).ContentBox(SheetKind.Circuit).Bottom + 0.01, m.ToString())));
    }

    private static bool BearsSigns(SheetContent sheet) => sheet.Marks.OfType<CircleMark>().Any(c =>
        c.Fill == Ink.White && c.Pen is null && c.Owner is { } owner && owner.StartsWith("J1:", StringComparison.Ordinal));

    [Fact]
    public void The_signs_lie_on_nothing() => Assert.Empty(PackBuilder.Draw(Kept, []).Findings.Select(f => f.Message));

    /// <summary>Lines no larger than a sign that stand on the sign's white ground.</summary>
    private static IEnumerable<LineMark> SignStrokes(List<Mark> marks, string contact)
    {
        var ground = marks.OfType<CircleMark>().First(c => c.Owner == contact && c.Fill == Ink.White && c.Pen is null && c.RadiusMm <= ProofSign.FaceMm * 1.3);
        return marks.OfType<LineMark>().Where(l => l.Owner == contact && ground.Bounds.Grown(0.3).Contains(l.Bounds) && l.Points.Length is >= 2 and <= 4);
    }
}
