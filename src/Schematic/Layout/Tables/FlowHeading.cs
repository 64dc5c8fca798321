using System.Globalization;
using Schematic.Drawing;
using Schematic.Fonts;

namespace Schematic.Layout.Tables;

/// <summary>What stands above a block on its sheet.</summary>
internal static class FlowHeading
{
    private const double TitleHeight = 3.5;
    private const double TitlePitch = 5.25;
    private const double TitleBlank = 2.2;

    /// <summary>The title, with its number where a block goes on elsewhere.</summary>
    public static string Numbered(string title, int index, int count) =>
        count == 1 ? title : string.Create(CultureInfo.InvariantCulture, $"{title} ({index + 1} of {count})");

    /// <summary>The letters of a title in that place.</summary>
    public static IEnumerable<Mark> Marks(string title, BoxMm place) => Lines(title, place.Width).Select((line, i) =>
        new TextMark(MarkRole.Table, line, new PointMm(place.Left, place.Top + TitleHeight + (i * TitlePitch)), TitleHeight) { IsBold = true });

    /// <summary>The lines of a title in a width of so many millimetres.</summary>
    public static IReadOnlyList<string> Lines(string title, double width) =>
        [.. Lettering.Wrap(title, TitleHeight, width, bold: true).Select(l => Lettering.Fit(l, TitleHeight, width, bold: true))];

    /// <summary>Height in millimetres, counted with the longest number of pieces so that it never grows.</summary>
    public static double HeightOf(FlowBlock block, double width) =>
        TitleHeight + ((Math.Max(1, Lines(block.IsWhole ? block.Title : block.Title + " (88 of 88)", width).Count) - 1) * TitlePitch) + TitleBlank;
}
