using Schematic.Fonts;
using Schematic.Layout.Tables;
using Xunit;

namespace Schematic.Tests.Layout.Tables;

public class TitleWordsTests
{
    [Fact]
    public void A_drawing_is_named_by_fewer_of_its_things_before_a_list_goes_without_its_name()
    {
        Assert.Equal("Circuit: latch, silent, Load sheet", TitleWords.Joined("Circuit: latch, silent", ["Load sheet"]));
        var title = TitleWords.Joined("Circuit: normal proved, reverse proved, lever lock, inputs of A1", ["Work at P1"]);
        Assert.StartsWith("Circuit: normal proved", title, StringComparison.Ordinal);
        Assert.EndsWith(" …, Work at P1", title, StringComparison.Ordinal);
        Assert.True(Lettering.WidthMm(title, 2.5) <= TitleWords.WidthMm);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(12)]
    public void Whatever_stands_on_a_sheet_its_title_fits(int lists)
    {
        var names = Enumerable.Range(1, lists).Select(i => $"Contact chart {i}").ToList();
        foreach (var title in (string[])[TitleWords.Listed(names), TitleWords.Joined("Wiring: supply PS1, strip X1, strip X2, cable C1, cable C2", names)])
        {
            Assert.True(Lettering.WidthMm(title, 2.5) <= TitleWords.WidthMm, title);
            Assert.Contains(lists == 12 ? "…" : "Contact chart 1", title, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void What_is_left_out_is_said_once()
    {
        var title = TitleWords.Joined("Circuit: the normal proving of the signal, a name that fills the line …", ["Contact chart", "Load sheet", "Parts list"]);
        Assert.EndsWith(" …", title, StringComparison.Ordinal);
        Assert.DoesNotContain("… …", title, StringComparison.Ordinal);
        Assert.Equal("the normal proving of the signal, a name that fills the whole line of the title block …",
            TitleWords.Listed(["the normal proving of the signal, a name that fills the whole line of the title block …", "Load sheet"]));
    }
}
