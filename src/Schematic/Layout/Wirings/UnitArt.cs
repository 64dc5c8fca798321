using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Layout.Shapes;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>Draws what stands in and on a unit's frame.</summary>
internal sealed class UnitArt(WiringMap map, FigureFactory figures, ContactArt contacts, bool isBrief)
{
    private const double WordsWidth = 34;
    private const double FlagLead = 1.5;

    /// <summary>Height of an actuator's name and positions above its first pole.</summary>
    public static double HeadHeight(Actuator actuator) => Math.Max(6.5, 4.6 + (PositionLines(actuator).Count * Metrics.QuietStep));

    /// <summary>Width of an actuator's words right of the linkage.</summary>
    public static double HeadWidth(Actuator actuator) => Math.Max(
        Lettering.WidthMm(NameOf(actuator), Metrics.NameHeight, bold: true),
        PositionLines(actuator).Select(l => Lettering.WidthMm(l, Metrics.QuietHeight)).DefaultIfEmpty(0).Max());

    /// <summary>Where a block's linkage runs, symbols beginning at <paramref name="lead"/>.</summary>
    public static double LinkageX(PlacedBlock block, double lead) =>
        block.IsMirrored ? lead + block.Block.Rows[0].Figure.Length - Figure.LinkageX : lead + Figure.LinkageX;

    /// <summary>Width of a contact's symbol and name; a device terminal has its name alone.</summary>
    public double ContactWidth(TerminalId contact) => map.Parts[contact.Part] is Connector connector
        ? contacts.Width(connector, NameOf(contact))
        : Lettering.WidthMm(contact.ToString(), Metrics.NameHeight) + 2;

    /// <summary>What stands beside a contact: where it is brief, and its unit has one connector, its number alone.</summary>
    private string NameOf(TerminalId contact) => isBrief && map.EquipmentAt(contact) is UnitEquipment { Connectors.Length: 1 } ? contact.Name : contact.ToString();

    /// <summary>The unit's connectors with their words; the plugs are named where the contacts are not.</summary>
    public string HeadingOf(UnitEquipment unit)
    {
        var plugs = unit.Connectors.Select(c => map.Mates.GetValueOrDefault(c.Designator)).OfType<string>().ToList();
        return unit.Heading + (isBrief && plugs.Count == 1 && unit.Connectors.Length == 1 ? ", plug " + plugs[0] : "");
    }

    /// <summary>Draws a block's figures and its actuator.</summary>
    public void DrawBlock(Canvas canvas, PlacedBlock block, UnitX x, double lead, double top)
    {
        for (var i = 0; i < block.Rows.Length; i++)
        {
            var (row, y) = (block.Block.Rows[i], top + (block.Rows[i] * Metrics.Unit));
            var isMirrored = block.IsMirrored != row.IsTurned;
            row.Figure.DrawLying(canvas, x.DevicesLeft, x.DevicesRight, x.DevicesLeft + lead, y, isMirrored);
            var box = row.Figure.LyingBox(x.DevicesLeft + lead, y, isMirrored);
            canvas.Place(Thing.Part(row.Figure.Part.Designator, row.Figure.Name), box);
            foreach (var end in row.Figure.Ends) canvas.Place(Thing.Terminal(end.Terminal.ToString(), "inside"), box);
        }

        if (block.Block.Actuator is { } actuator) DrawHead(canvas, actuator, block, x.DevicesLeft + LinkageX(block, lead), top);
    }

    /// <summary>Draws the contacts of a side and what joins them to the devices.</summary>
    public void DrawSide(Canvas canvas, UnitSide side, UnitX x, BoxMm box, double top)
    {
        var isRight = side.Side == Side.Right;
        foreach (var site in side.Sites) DrawSite(canvas, site, side.Side, x, isRight ? box.Right : box.Left, top);
        var (from, to) = isRight ? (x.DevicesRight, x.JackRight) : (x.JackLeft, x.DevicesLeft);
        for (var i = 0; i < side.Nets.Length; i++)
        {
            var track = side.Side == Side.Right ? from + side.Channel.TrackX[i] : to - side.Channel.WidthMm + side.Channel.TrackX[i];
            NetArt.Draw(canvas, side.Nets[i].Owner, side.Nets[i].Net, from, track, to, top);
        }

        foreach (var flag in side.Flags) DrawFlag(canvas, flag, isRight ? from : to, side.Side.Way(), top + (flag.Unit * Metrics.Unit));
    }

    private void DrawSite(Canvas canvas, UnitSite site, Side side, UnitX x, double outer, double top)
    {
        var y = top + (site.Unit * Metrics.Unit);
        var (frame, inner) = side == Side.Right ? (x.FrameRight, x.JackRight) : (x.FrameLeft, x.JackLeft);
        var way = side.Way();
        var owner = (map.MatedContact(site.Contact) ?? site.Contact).ToString();
        var lead = site.Ends.Length > 1 ? outer - (way * TerminalArt.SlotWidth) : site.Ends.IsEmpty ? frame + (way * 5) : outer;
        canvas.Place(Thing.Terminal(site.Contact.ToString()), new BoxMm(Math.Min(frame, inner), y - Metrics.Unit, Math.Max(frame, inner), y + Metrics.Unit));
        if (map.Parts[site.Contact.Part] is not Connector connector)
        {
            canvas.Wire(owner, new(inner, y), new PointMm(lead, y));
            canvas.Text(owner, owner, inner + (way * 1), y - Metrics.Rise, align: way > 0 ? TextAlign.Start : TextAlign.End);
        }
        else
        {
            contacts.Draw(canvas, connector, site.Contact, frame, inner, y, NameOf(site.Contact));
            if (site.Node is null) canvas.Text(null, map.IsNotTraced(site.Contact) ? "not traced" : "nothing inside", inner - (way * 1.5), y + (Metrics.QuietHeight / 2), Metrics.QuietHeight, way > 0 ? TextAlign.End : TextAlign.Start);
            if (map.MatedContact(site.Contact) is { } plug)
            {
                var end = site.Ends.IsEmpty ? outer : lead;
                contacts.Draw(canvas, (Connector)map.Parts[plug.Part], plug, frame, end, y, NameOf(plug));
                canvas.Place(Thing.Terminal(plug.ToString()), new BoxMm(Math.Min(frame, outer), y - Metrics.Unit, Math.Max(frame, outer), y + Metrics.Unit));
            }
            else if (!site.Ends.IsEmpty)
            {
                canvas.Wire(owner, new(frame, y), new PointMm(lead, y));
            }
        }

        if (site.Ends.Length > 1) TerminalArt.DrawSlot(canvas, owner, outer, side, y, site.Ends.Length);
    }

    /// <summary>The contact's name at a device end whose contact is drawn elsewhere.</summary>
    private static void DrawFlag(Canvas canvas, InnerFlag flag, double from, int way, double y)
    {
        var owner = "ref:" + flag.Words;
        canvas.Wire(flag.End.ToString(), new(from, y), new PointMm(from + (way * FlagLead), y));
        canvas.Text(
            owner, flag.Words, from + (way * (FlagLead + 0.7)), y + (Metrics.QuietHeight / 2), Metrics.QuietHeight,
            way > 0 ? TextAlign.Start : TextAlign.End);
    }

    private void DrawHead(Canvas canvas, Actuator actuator, PlacedBlock block, double linkage, double top)
    {
        var head = top + (block.Top * Metrics.Unit);
        var y = head + 5;
        var symbol = figures.ActuatorSymbol(actuator);
        canvas.Add(symbol.PlacedAt(new PointMm(linkage - 1.5, y), actuator.Name));
        canvas.Place(new Thing(ThingKind.Actuator, actuator.Name), symbol.Bounds.Moved(linkage - 1.5, y));
        canvas.Line(
            MarkRole.Linkage, Pen.Linkage, actuator.Name,
            new(linkage - 1.5, y), new(linkage, y), new PointMm(linkage, top + (block.Rows[^1] * Metrics.Unit) - 1));
        canvas.Text(actuator.Name, NameOf(actuator), linkage + 2, head + 3.6, bold: true);
        canvas.QuietLines(actuator.Name, PositionLines(actuator), linkage + 2, head + 3.7 + Metrics.QuietStep);
    }

    private static string NameOf(Actuator actuator) => Lettering.Fit(
        actuator.Description.Length == 0 ? actuator.Name : $"{actuator.Name}  {actuator.Description}", Metrics.NameHeight,
        WiringWeights.Usual.LongestNameMm + 6, bold: true);

    private static IReadOnlyList<string> PositionLines(Actuator actuator) =>
        Lettering.Wrap(FigureFactory.PositionWords(actuator), Metrics.QuietHeight, WordsWidth);
}
