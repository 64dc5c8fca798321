using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Schematic.Analysis;
using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Layout.Pack;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Layout.Pack;

/// <summary>What is read on the sheets of a pack: of every example and of some generated designs.</summary>
public partial class SheetWordsTests
{
    public static TheoryData<string> Packs =>
    [
        "examples/lever-frame/lever.panel", "examples/relay-latch/latch.panel", "examples/dsub-breakout/breakout.panel",
        "examples/engine-order/engine-order.panel", "examples/signal-lamp/signal-lamp.panel", "examples/gate-desk/gate-desk.panel",
        "30", "80", "140",
    ];

    [Theory]
    [MemberData(nameof(Packs))]
    public void No_line_ends_between_a_figure_and_its_unit(string pack)
    {
        foreach (var sheet in SheetsOf(pack))
        {
            // Lines of one text stand below each other at no more than 1.5 times their height, rows further apart.
            var texts = sheet.Marks.OfType<TextMark>().Where(t => t.Role is MarkRole.Label or MarkRole.Caution or MarkRole.Table).ToList();
            foreach (var text in texts)
            {
                var next = texts.FirstOrDefault(t => t.Align == text.Align && t.HeightMm == text.HeightMm && Math.Abs(t.Anchor.X - text.Anchor.X) < 1e-6
                    && t.Anchor.Y - text.Anchor.Y > 0 && t.Anchor.Y - text.Anchor.Y < (1.51 * text.HeightMm) && t.Owner == text.Owner);
                if (next is null) continue;
                var isTorn = BoundBlanks.IsBound($"{text.Text} {next.Text}", text.Text.Length);
                Assert.False(isTorn, $"sheet {sheet.Number}: '{text.Text}' / '{next.Text}'");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Packs))]
    public void Sheets_have_the_signs_of_units_and_not_what_is_typed_for_them(string pack)
    {
        var typed = SheetsOf(pack).SelectMany(s => s.Marks.OfType<TextMark>().Select(t => (s.Number, t.Text))).Where(t => TypedUnit().IsMatch(t.Text));
        Assert.Empty(typed);
    }

    [Theory]
    [MemberData(nameof(Packs))]
    public void The_parts_of_one_list_are_read_left_to_right_and_then_down(string pack)
    {
        foreach (var sheet in SheetsOf(pack))
        {
            var parts = sheet.Marks.OfType<TextMark>().Where(t => t.IsBold).Select(t => (Match: PartOf().Match(t.Text), t.Anchor)).Where(p => p.Match.Success)
                .GroupBy(p => (p.Match.Groups["title"].Value, p.Match.Groups["count"].Value));
            foreach (var list in parts)
            {
                var inOrder = list.OrderBy(p => int.Parse(p.Match.Groups["part"].ValueSpan, System.Globalization.CultureInfo.InvariantCulture)).Select(p => p.Anchor).ToList();
                Assert.All(inOrder.Zip(inOrder.Skip(1)), p => Assert.True(
                    p.Second.X > p.First.X + 1 || (p.Second.X > p.First.X - 1e-6 && p.Second.Y > p.First.Y), $"sheet {sheet.Number}: {list.Key.Item1}"));
            }
        }
    }

    internal static ImmutableArray<Sheet> SheetsOf(string pack)
    {
        if (!int.TryParse(pack, out var contacts)) return ExamplePacks.Of(pack).Sheets;
        var panel = DesignGenerator.Generate(3, contacts);
        return PackBuilder.Build(panel, PanelChecker.Check(panel, []));
    }

    [GeneratedRegex(@"[0-9?] (?:[mkM]?ohm|mm2|u[AF]|degC)\b")]
    private static partial Regex TypedUnit();

    [GeneratedRegex(@"^(?<title>.*) \((?<part>\d+) of (?<count>\d+)\)$")]
    private static partial Regex PartOf();
}
