using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Layout.Shapes;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>What is written on a link: its name, and colour and gauge of a wire.</summary>
internal static class StubWords
{
    private const double PieceGap = 1.2;

    /// <summary>The wire's number or the net's name.</summary>
    public static string NameOf(Link link) => Lettering.Fit(
        link.Name, Metrics.NameHeight, WiringWeights.Usual.LongestNameMm, bold: true);

    /// <summary>Colour and gauge as stated; a question mark for what is not, the mark of what is assumed before a gauge that the program chose.</summary>
    public static string DataOf(Link link, bool isBrief)
    {
        if (isBrief || link.Wire is not { } wire) return "";
        return $"{wire.Colour?.Code ?? "?"} {UnitSigns.Of(wire.GaugeText ?? "?")}";
    }

    /// <summary>Width of both.</summary>
    public static double Width(Link link, bool isBrief)
    {
        var (name, data) = (NameOf(link), DataOf(link, isBrief));
        return NameWidth(name) + Lettering.WidthMm(data, Metrics.NameHeight) + (name.Length > 0 && data.Length > 0 ? PieceGap : 0);
    }

    /// <summary>Draws both above a line that leaves <paramref name="x"/>.</summary>
    public static void Draw(Canvas canvas, string owner, Link link, double x, double y, Side side, bool isBrief)
    {
        var (name, data) = (NameOf(link), DataOf(link, isBrief));
        var left = side == Side.Right ? x : x - Width(link, isBrief);
        canvas.Text(owner, name, left, y - Metrics.Rise, bold: true, subject: link.Thing);
        canvas.Text(owner, data, left + (name.Length > 0 ? NameWidth(name) + PieceGap : 0), y - Metrics.Rise, subject: link.Thing);
    }

    /// <summary>Where a flag says that its link goes.</summary>
    public static PlaceReference? FarOf(LinkEnd end) => end.Far is { } far
        ? new PlaceReference(end.Other.AsThing) { Before = far + " " }
        : null;

    private static double NameWidth(string name) => Lettering.WidthMm(name, Metrics.NameHeight, bold: true);
}
