using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Layout.Shapes;

namespace Schematic.Layout.Wirings;

/// <summary>What reaches from a port into the channel beside it: lettering, a cable's loop, a flag.</summary>
/// <param name="Place">The port.</param>
/// <param name="IsLettered">Whether the link's name and data stand here: at flags, and at one end of a line.</param>
/// <param name="IsFlag">Whether the link ends here in a flag.</param>
/// <param name="Widths">How wide what is written on the link is.</param>
/// <param name="LoopMm">How far from the port the loop of a cable stands, or null.</param>
/// <param name="LoopWords">The cable's name and length, beside the loop at its uppermost core; else empty.</param>
internal sealed record Stub(PlacedPort Place, bool IsLettered, bool IsFlag, LinkWidths Widths, double? LoopMm = null, string LoopWords = "")
{
    private const double LoopRoom = 3;
    private const double FlagBlank = 0.7;

    /// <summary>Width of the lettering with a blank before and behind.</summary>
    public double LetteringMm => Place.Port.End switch
    {
        null when Place.Port.Remark.Length == 0 => 0,
        null => Lettering.WidthMm(Place.Port.Remark, Metrics.QuietHeight) + (2 * Metrics.Blank),
        { Link.Kind: LinkKind.Lead } => 0,
        { } end => IsLettered ? Widths.Lettering(end.Link) + (2 * Metrics.Blank) : 0,
    };

    /// <summary>Where the line ends and the flag begins.</summary>
    public double LineMm => Math.Max(2, LoopMm is not { } loop ? LetteringMm
        : loop + LoopRoom + (LoopWords.Length == 0 ? 0 : Lettering.WidthMm(LoopWords, Metrics.NameHeight) + Metrics.Blank));

    /// <summary>How far it reaches into the channel.</summary>
    public double ReachMm => IsFlag ? LineMm + FlagMm
        : LoopMm is not null ? LineMm : LetteringMm;

    private double FlagMm => Place.Port.End is { Link.B: not null } end
        ? FlagArt.HeadLength + FlagBlank + Widths.Far(end) + Metrics.Blank
        : FlagArt.HeadLength + FlagBlank + Lettering.WidthMm("free", Metrics.QuietHeight) + Metrics.Blank;

    /// <summary>Draws all of it but a line that goes on: that is the channel's.</summary>
    public void Draw(Canvas canvas, double x, double y)
    {
        var port = Place.Port;
        var way = port.Side.Way();
        var align = way > 0 ? TextAlign.Start : TextAlign.End;
        if (port.End is not { } end)
        {
            canvas.Text(port.Terminal.ToString(), port.Remark, x + (way * Metrics.Blank), y + Metrics.Sink, Metrics.QuietHeight, align);
            return;
        }

        var owner = OwnerOf(port, end);
        if (IsLettered) StubWords.Draw(canvas, owner, end.Link, x + (way * Metrics.Blank), y, port.Side, Widths.IsBrief);
        if (LoopWords.Length > 0) canvas.Text(owner, LoopWords, x + (way * (LoopMm!.Value + LoopRoom - 0.5)), y - Metrics.Rise, align: align);
        if (!IsFlag) return;
        var neck = x + (way * LineMm);
        canvas.WireOf(end.Link.Thing, owner, new(x, y), new PointMm(neck, y));
        FlagArt.DrawHead(canvas, RefOf(end), neck, y, way);
        if (StubWords.FarOf(end) is { } far) canvas.Reference(owner, far, neck + (way * (FlagArt.HeadLength + FlagBlank)), y + Metrics.Sink, align: align);
        else canvas.Text(owner, "free", neck + (way * (FlagArt.HeadLength + FlagBlank)), y + Metrics.Sink, Metrics.QuietHeight, align);
    }

    /// <summary>The owner of a link's marks at a port: the terminal that it meets there and its flag.</summary>
    public static string OwnerOf(Port port, LinkEnd end) => $"{port.Terminal} {RefOf(end)}";

    /// <summary>The name that both flags of a link carry.</summary>
    public static string RefOf(LinkEnd end) => "ref:" + end.Link.Index.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
