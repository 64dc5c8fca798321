using Schematic.Drawing;
using Xunit;

namespace Schematic.Tests.Layout.Pack;

/// <summary>
/// ISO 3098-1 has nominal heights of 1.8, 2.5, 3.5, 5 … mm; all that is read at the bench has 2.5 mm at least. What is lower is named
/// here with the reason, and the sheet says so where a person with an iron would look.
/// </summary>
public class LetteringHeightTests
{
    private const double Least = 2.5;

    /// <summary>What the face sheet says of lower letters.</summary>
    private const string Said = "lowered";

    [Theory]
    [MemberData(nameof(SheetWordsTests.Packs), MemberType = typeof(SheetWordsTests))]
    public void Nothing_below_two_and_a_half_millimetres_is_left_unsaid(string pack)
    {
        foreach (var sheet in SheetWordsTests.SheetsOf(pack))
        {
            var texts = sheet.Marks.OfType<TextMark>().ToList();
            var low = texts.Where(t => t.HeightMm < Least - 1e-9 && !IsCaptionOfTitleBlock(t)).ToList();
            // The numbers and colours in the circles of a face with many contacts: the table beside it has them at full height.
            if (low.Count == 0 || (sheet.Kind == SheetKind.Faces && texts.Exists(t => t.Text.Contains(Said, StringComparison.Ordinal)))) continue;
            Assert.Fail($"sheet {sheet.Number}: " + string.Join("; ", low.Select(t => $"'{t.Text}' {t.HeightMm} mm ({t.Role})")));
        }
    }

    /// <summary>The names of fields of ISO 7200: nobody reads them at the bench, and what they name is higher.</summary>
    private static bool IsCaptionOfTitleBlock(TextMark text) => text.Role == MarkRole.TitleBlock && text.Ink == Ink.Quiet;
}
