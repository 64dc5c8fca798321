using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Model;

namespace Schematic.Layout.Schematics;

/// <summary>
/// A made unit, or the part of one that a sheet shows: a dash-dot frame with its contacts on it, where the devices inside
/// need them.
/// </summary>
internal sealed class UnitItem : SheetItem
{
    private const double NameRoom = 7.5;
    private const double NoteStep = 2.8;
    private const double StubLength = 6.5;

    /// <summary>Least room between the sides of the frame for its name and a note.</summary>
    private const double MinInside = 48;


    private readonly CircuitMap _map;
    private readonly UnitPlan _plan;
    private readonly ImmutableArray<Block> _blocks;
    private readonly ImmutableArray<TerminalId> _bare;
    private readonly bool _isLast;
    private readonly List<ContactSite> _sites = [];
    private readonly Dictionary<Block, double> _tops = [];
    private readonly ItemRow _row;
    private double _bottom;

    public UnitItem(CircuitMap map, UnitPlan plan, ImmutableArray<Block> blocks, ImmutableArray<TerminalId> bare, bool isFirst, bool isLast)
    {
        _map = map;
        _plan = plan;
        _blocks = blocks;
        _bare = bare;
        _isLast = isLast;
        Title = plan.Unit.Name + (isFirst ? "" : " (continued)");
        _row = new ItemRow(this);
        Rows.Add(_row);
        AddSites();
        Groups = [.. _sites.Select(s => s.Port.Group).Concat(blocks.SelectMany(b => b.Rows).Select(r => r.Group)).Distinct()];
    }

    public override IReadOnlyList<FlipGroup> Groups { get; }

    private string Title { get; }

    public override double Width => Measure().Total;

    public override void Arrange()
    {
        var y = NameRoom;
        _tops.Clear();
        foreach (var block in _blocks)
        {
            block.Arrange();
            if (block != _blocks[0]) y = Metrics.Up(y + block.GapBefore);
            _tops[block] = y;
            y += block.Height;
        }

        foreach (var site in _sites) site.Port.Dy = site.Row is null ? 0 : _tops[site.Block!] + site.Row.DyOf(site.End!) + site.Shift;
        foreach (var site in _sites.Where(s => s.Row is null))
        {
            y = Metrics.Up(y + Metrics.RowPitch);
            site.Port.Dy = y;
        }

        _bottom = Metrics.Up(y + 1 + NoteRoom());
        _row.Above = 0;
        _row.Below = _bottom;
    }

    public override void Draw(Canvas canvas, SheetContext context, double left, double right)
    {
        var measures = Measure();
        var slack = Math.Floor((right - left - measures.Total) / 2 * 1000) / 1000;
        var x = measures.At(left + slack);
        var top = _row.Y;
        canvas.Add(LineMark.Rectangle(
            MarkRole.Boundary, new BoxMm(x.FrameLeft, top, x.FrameRight, top + _bottom), Pen.Boundary) with { Owner = _plan.Unit.Name });
        var title = Lettering.Fit(Title, Metrics.NameHeight + 0.5, x.FrameRight - x.FrameLeft - 4, bold: true);
        canvas.Text(_plan.Unit.Name, title, x.FrameLeft + 2, top + 5, Metrics.NameHeight + 0.5, bold: true);
        foreach (var block in _blocks)
            block.Draw(canvas, context.Symbols, x.DevicesLeft, x.DevicesRight, LeftLead, x.FrameRight - 1, top + _tops[block]);
        NotePlaces(canvas, x, top);
        foreach (var site in _sites) DrawSite(canvas, context, site, x, left, right);
        DrawInside(canvas, context, x, top);
        DrawNotes(canvas, x, top);
    }

    private void AddSites()
    {
        foreach (var block in _blocks)
        {
            foreach (var row in block.Rows)
            {
                var extra = new Dictionary<bool, int>();
                foreach (var end in row.Figure.Ends)
                {
                    if (_plan.NodeOf(end.Terminal) is not { } node || node.Home.End != end) continue;
                    AddSites(block, row, end, node, extra);
                }
            }
        }

        foreach (var contact in _bare)
        {
            var port = new ItemPort(this, contact, false, new FlipGroup(false)) { Row = _row };
            _sites.Add(new ContactSite(contact, null, null, null, 0, port));
            _row.Ports.Add(port);
        }
    }

    /// <summary>The contacts of a node: the first beside the device's end, the others and further strands in rows below.</summary>
    private void AddSites(Block block, BlockRow row, FigureEnd end, InnerNode node, Dictionary<bool, int> extra)
    {
        var side = row.IsBaseRight(end);
        var below = Block.LowestPort(row) - row.Figure.DyOf(end, row.Facing);
        foreach (var contact in node.Contacts)
        {
            var used = extra.GetValueOrDefault(side);
            var isFirst = contact == node.Contacts[0];
            var shift = isFirst ? 0 : below + (++used * Metrics.RowPitch);
            var port = new ItemPort(this, contact, side, row.Group)
            {
                Row = _row,
                FirstStrand = isFirst ? below + ((used + 1) * Metrics.RowPitch) : Metrics.RowPitch,
            };
            extra[side] = used + Math.Max(0, _map.EdgesAt(contact).Count - 1);
            _sites.Add(new ContactSite(contact, block, row, end, shift, port));
            _row.Ports.Add(port);
        }
    }

    /// <summary>Symbols stand in line through the whole unit.</summary>
    private double LeftLead => _blocks.Length == 0 ? 0 : _blocks.Max(b => b.LeftLead);

    private UnitMeasures Measure()
    {
        double plugL = 2.5, plugR = 2.5, jackL = 2.5, jackR = 2.5;
        foreach (var site in _sites)
        {
            var plug = PlugOf(site) is { } p ? ContactArt.Width(_map, p) : 2.5;
            var jack = ContactArt.Width(_map, site.Contact);
            if (Elsewhere(site).Count > 0) jack += Lettering.WidthMm(Also(Elsewhere(site)).WidestText, Metrics.QuietHeight) + 1.2;
            if (site.Port.IsRight) (plugR, jackR) = (Math.Max(plugR, plug), Math.Max(jackR, jack));
            else (plugL, jackL) = (Math.Max(plugL, plug), Math.Max(jackL, jack));
        }

        var (channelL, channelR) = (InnerWidth(false), InnerWidth(true));
        var devices = _blocks.Length == 0 ? 10 : LeftLead + _blocks.Max(b => b.RightNeed);
        foreach (var block in _blocks.Where(b => b.Actuator is not null))
            devices = Math.Max(devices, block.LinkageX(LeftLead) + block.HeadRoom - channelR - jackR + 1.5);
        devices = Math.Max(devices, MinInside + 6 - jackL - jackR - channelL - channelR);
        return new UnitMeasures(plugL, jackL, channelL, devices, channelR, jackR, plugR);
    }

    private TerminalId? PlugOf(ContactSite site) =>
        site.IsContact(_map) && _map.MatedContact(site.Contact) is { } plug && !_map.IsUnitConnector(plug.Part) ? plug : null;

    /// <summary>Ends of the site's node that stand on another sheet or on the frame's other side.</summary>
    private List<FigureEnd> Elsewhere(ContactSite site)
    {
        if (site.Row is null || _plan.NodeOf(site.End!.Terminal) is not { } node || node.Contacts[0] != site.Contact) return [];
        return [.. node.Ends.Where(e => !IsInLine(node, e.Row, e.End)).Select(e => e.End)];
    }

    private bool IsHere(BlockRow row) => _blocks.Any(b => b.Rows.Contains(row));

    private bool IsInLine(InnerNode node, BlockRow row, FigureEnd end) =>
        IsHere(row) && IsHere(node.Home.Row) && row.IsRight(end) == node.Home.Row.IsRight(node.Home.End);

    private List<(ChannelJoint Joint, InnerNode Node)> InnerJoints(bool right, double top)
    {
        var joints = new List<(ChannelJoint, InnerNode)>();
        foreach (var node in _blocks.SelectMany(b => b.Rows).SelectMany(r => r.Figure.Ends)
                     .Select(e => _plan.NodeOf(e.Terminal)).OfType<InnerNode>().Distinct())
        {
            if (!IsHere(node.Home.Row) || node.Home.Row.IsRight(node.Home.End) != right) continue;
            var joint = new ChannelJoint(node.Contacts[0].ToString());
            var devices = right ? joint.Left : joint.Right;
            var contacts = right ? joint.Right : joint.Left;
            devices.AddRange(node.Ends.Where(e => IsInLine(node, e.Row, e.End)).Select(e => top + YOf(e.Row, e.End)));
            contacts.AddRange(_sites.Where(s => s.Row is not null && node.Contacts.Contains(s.Contact)).Select(s => top - _row.Y + s.Port.TerminalY));
            joints.Add((joint, node));
        }

        return joints;
    }

    private double YOf(BlockRow row, FigureEnd end) => _tops[_blocks.First(b => b.Rows.Contains(row))] + row.DyOf(end);

    private double InnerWidth(bool right)
    {
        var tracks = _tops.Count == 0 ? 0 : ChannelRouter.Route([.. InnerJoints(right, 0).Select(j => j.Joint)]).Tracks;
        var flags = FlaggedEnds(right).Select(f => FlagWidth(f.Node)).DefaultIfEmpty(0).Max();
        return (tracks * Metrics.TrackPitch) + flags + (tracks + flags > 0 ? 0.5 : 0);
    }

    private static double FlagWidth(InnerNode node) => 3.5 + Lettering.WidthMm(Home(node).WidestText, Metrics.QuietHeight);

    private static PlaceReference Home(InnerNode node) => new(InnerNode.InsideOf(node.Home.End)) { Before = node.Contacts[0] + " " };

    private static PlaceReference Also(List<FigureEnd> others) =>
        new(InnerNode.InsideOf(others[0])) { Before = "also ", After = others.Count > 1 ? " …" : "" };

    /// <summary>Device ends whose contact is drawn elsewhere.</summary>
    private IEnumerable<(BlockRow Row, FigureEnd End, InnerNode Node)> FlaggedEnds(bool right) =>
        from block in _blocks
        from row in block.Rows
        from end in row.Figure.Ends
        where row.IsRight(end) == right
        let node = _plan.NodeOf(end.Terminal)
        where node is not null && node.Home.End != end && !IsInLine(node, row, end)
        select (row, end, node);

    private void NotePlaces(Canvas canvas, UnitColumns x, double top)
    {
        foreach (var connector in _plan.Unit.Connectors)
            canvas.Place(Thing.Part(connector.Designator), new BoxMm(x.FrameLeft, top, x.FrameRight, top + _bottom));
        foreach (var block in _blocks)
        {
            foreach (var row in block.Rows)
            {
                foreach (var end in row.Figure.Ends)
                {
                    var edge = row.IsRight(end) ? x.DevicesRight : x.DevicesLeft;
                    canvas.Place(InnerNode.InsideOf(end), new PointMm(edge, top + YOf(row, end)));
                }
            }
        }
    }

    private void DrawSite(Canvas canvas, SheetContext context, ContactSite site, UnitColumns x, double left, double right)
    {
        var y = site.Port.TerminalY;
        var isRight = site.Port.IsRight;
        var frame = isRight ? x.FrameRight : x.FrameLeft;
        var outer = isRight ? right : left;
        var inner = isRight ? x.JackRight : x.JackLeft;
        canvas.Place(Thing.Terminal(site.Contact.ToString()), new PointMm(frame, y));
        if (PlugOf(site) is { } mated) canvas.Place(Thing.Terminal(mated.ToString()), new PointMm(frame, y));
        if (!site.IsContact(_map))
        {
            canvas.Wire(site.Contact.ToString(), new(inner, y), new PointMm(outer, y));
            site.Port.DrawStrands(canvas, site.Contact.ToString(), outer, 0.6);
            canvas.Text(site.Contact.ToString(), site.Contact.ToString(), inner, y - Metrics.Rise, align: isRight ? TextAlign.Start : TextAlign.End);
            return;
        }

        var into = isRight ? -1 : 1;
        ContactArt.Draw(canvas, _map, site.Contact, frame, inner, y, into);
        DrawAlso(canvas, site, frame, into);
        var plug = PlugOf(site);
        // An unwired contact keeps a short stub.
        var stub = site.Port.Edges.Count > 0 ? outer : frame - (into * StubLength);
        if (plug is { } half) ContactArt.Draw(canvas, _map, half, frame, stub, y, -into);
        else if (site.Port.Edges.Count > 0) canvas.Wire(site.Contact.ToString(), new(frame, y), new PointMm(outer, y));
        site.Port.DrawStrands(canvas, (plug ?? site.Contact).ToString(), outer, 0.6);
        if (site.Row is null) canvas.Text(null, "nothing inside", inner + (into * 1.5), y + 0.9, Metrics.QuietHeight, into > 0 ? TextAlign.Start : TextAlign.End);
    }

    /// <summary>Names the other places where the contact's inner joint is drawn, behind the contact's name.</summary>
    private void DrawAlso(Canvas canvas, ContactSite site, double frame, int into)
    {
        var others = Elsewhere(site);
        if (others.Count == 0) return;
        canvas.Reference(
            site.Contact.ToString(), Also(others),
            frame + (into * ContactArt.Width(_map, site.Contact)), site.Port.TerminalY - Metrics.Rise, Metrics.QuietHeight,
            into > 0 ? TextAlign.Start : TextAlign.End);
    }

    private void DrawInside(Canvas canvas, SheetContext context, UnitColumns x, double top)
    {
        foreach (var right in (ReadOnlySpan<bool>)[false, true])
        {
            var joints = InnerJoints(right, top);
            var refused = ChannelRouter.Route([.. joints.Select(j => j.Joint)]).Refused;
            System.Diagnostics.Debug.Assert(refused.Count == 0);
            var (from, to) = right ? (x.DevicesRight, x.JackRight) : (x.JackLeft, x.DevicesLeft);
            var flags = FlaggedEnds(right).Select(f => FlagWidth(f.Node)).DefaultIfEmpty(0).Max();
            var tracks = right ? from + flags : from;
            ChannelRouter.Draw(canvas, joints.Select(j => j.Joint), from, tracks, to, Metrics.TrackPitch);
            foreach (var (row, end, node) in FlaggedEnds(right))
            {
                var port = new PointMm(right ? x.DevicesRight : x.DevicesLeft, top + YOf(row, end));
                Flags.DrawEnd(
                    canvas, "ref:" + node.Contacts[0], port, right ? 1 : -1, 1.5,
                    Home(node), Metrics.QuietHeight);
            }
        }
    }

    private double NoteRoom()
    {
        var lines = NoteLines();
        return lines.Count == 0 || IsNoteAtHead ? 1 : (lines.Count * NoteStep) + 2;
    }

    /// <summary>A short note finds room beside the name.</summary>
    private bool IsNoteAtHead => NoteLines() is [var only]
        && Lettering.WidthMm(only, Metrics.QuietHeight) + Lettering.WidthMm(Title, Metrics.NameHeight + 0.5, bold: true) < MinInside;

    private IReadOnlyList<string> NoteLines()
    {
        if (!_isLast || _plan.Unused.IsEmpty) return [];
        var width = UnitMeasures.NoteWidth;
        return Lettering.Wrap("Unused: " + TerminalWords.List(_plan.Unused), Metrics.QuietHeight, width);
    }

    private void DrawNotes(Canvas canvas, UnitColumns x, double top)
    {
        var lines = NoteLines();
        if (IsNoteAtHead)
        {
            canvas.Text(_plan.Unit.Name, lines[0], x.FrameRight - 2, top + 5, Metrics.QuietHeight, TextAlign.End);
            return;
        }

        for (var i = 0; i < lines.Count; i++)
        {
            canvas.Text(
                _plan.Unit.Name, lines[i], x.FrameLeft + 2, top + _bottom - 1.6 - ((lines.Count - 1 - i) * NoteStep), Metrics.QuietHeight);
        }
    }

    /// <summary>A contact, or a wire that passes the frame, and what it belongs to inside.</summary>
    private sealed record ContactSite(TerminalId Contact, Block? Block, BlockRow? Row, FigureEnd? End, double Shift, ItemPort Port)
    {
        public bool IsContact(CircuitMap map) => map.Find(Contact.Part) is Connector;
    }
}
