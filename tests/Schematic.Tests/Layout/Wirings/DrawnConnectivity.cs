using Schematic.Drawing;
using Schematic.Model;

namespace Schematic.Tests.Layout.Wirings;

/// <summary>
/// Reads back from the finished marks which terminals the drawing joins: wires that meet at their ends or under a dot, wires that
/// end on a terminal's symbol, jumpers, and flags of the same link.
/// </summary>
internal sealed class DrawnConnectivity
{
    private readonly Dictionary<string, string> _parent = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _references = new(StringComparer.Ordinal);

    public DrawnConnectivity(IEnumerable<SheetContent> sheets)
    {
        var number = 0;
        foreach (var sheet in sheets) Read(sheet, number++);
    }

    /// <summary>Terminals that a symbol or a lead is drawn for.</summary>
    public HashSet<string> Terminals { get; } = new(StringComparer.Ordinal);

    /// <summary>How often each link's flag is drawn.</summary>
    public IReadOnlyDictionary<string, int> References => _references;

    public void Join(string a, string b)
    {
        var (x, y) = (Find(a), Find(b));
        if (x != y) _parent[y] = x;
    }

    public string Find(string item)
    {
        _parent.TryAdd(item, item);
        while (_parent[item] != item) item = _parent[item] = _parent[_parent[item]];
        return item;
    }

    private static bool IsTerminal(string? owner) =>
        owner is not null && owner.Contains(':', StringComparison.Ordinal) && !owner.Contains(' ', StringComparison.Ordinal)
        && !owner.StartsWith("ref:", StringComparison.Ordinal);

    private void Read(SheetContent sheet, int number)
    {
        var wires = sheet.Marks.OfType<LineMark>().Where(m => m.Role == MarkRole.Wire).ToList();
        string Point(PointMm p) => FormattableString.Invariant($"{number}@{Math.Round(p.X, 2) + 0.0:0.00},{Math.Round(p.Y, 2) + 0.0:0.00}");
        var boxes = SymbolBoxes(sheet);
        foreach (var wire in wires)
        {
            Join(Point(wire.Points[0]), Point(wire.Points[^1]));
            if (IsTerminal(wire.Owner))
            {
                Terminals.Add(wire.Owner!);
                Join(wire.Owner!, Point(wire.Points[0]));
            }

            foreach (var end in (PointMm[])[wire.Points[0], wire.Points[^1]])
            {
                foreach (var (name, box) in boxes.Where(b => b.Box.Grown(0.02).Contains(new BoxMm(end.X, end.Y, end.X, end.Y)))) Join(name, Point(end));
            }
        }

        foreach (var (name, _) in boxes) Terminals.Add(name);
        foreach (var dot in sheet.Marks.OfType<CircleMark>().Where(m => m.Role == MarkRole.Junction)) JoinAt(wires, dot.Centre, Point(dot.Centre), Point);
        ReadJumpers(sheet, boxes);
        ReadFlags(sheet, wires, Point);
    }

    /// <summary>Cells, bars and contacts with the terminals that they are.</summary>
    private static List<(string Name, BoxMm Box)> SymbolBoxes(SheetContent sheet) =>
    [
        .. sheet.Marks.OfType<LineMark>().Where(m => m is { Role: MarkRole.Symbol, IsClosed: true, Fill: null } && IsTerminal(m.Owner)).Select(m => (m.Owner!, m.Bounds)),
        .. sheet.Things.Where(t => t.Thing.Kind == ThingKind.Terminal && t.Thing.Role.Length == 0).Select(t => (t.Thing.Name, t.Box)),
    ];

    private void ReadJumpers(SheetContent sheet, List<(string Name, BoxMm Box)> boxes)
    {
        foreach (var jumper in sheet.Marks.OfType<CircleMark>().Where(m => m.Owner?.Contains(" jumper ", StringComparison.Ordinal) == true).GroupBy(m => m.Owner!))
        {
            var names = jumper.Select(c => boxes.First(b => b.Name.Contains(':', StringComparison.Ordinal) && b.Box.Contains(c.Bounds)).Name).ToList();
            foreach (var name in names) Join(names[0], name);
        }
    }

    private void ReadFlags(SheetContent sheet, List<LineMark> wires, Func<PointMm, string> point)
    {
        foreach (var head in sheet.Marks.OfType<LineMark>().Where(m => m.Role == MarkRole.Symbol && m.Owner?.StartsWith("ref:", StringComparison.Ordinal) == true))
        {
            var name = head.Owner![4..];
            _references[name] = _references.GetValueOrDefault(name) + 1;
            JoinAt(wires, head.Points[0], "link " + name, point);
        }

        // Inside a unit the name of a contact stands at the end of a device's lead.
        foreach (var text in sheet.Marks.OfType<TextMark>().Where(m => m.Owner?.StartsWith("ref:", StringComparison.Ordinal) == true && IsTerminal(m.Owner[4..])))
        {
            var lead = wires.First(w => Math.Abs(w.Points[^1].Y - text.Bounds.Centre.Y) < 1.2
                && Math.Min(Math.Abs(w.Points[^1].X - text.Bounds.Left), Math.Abs(w.Points[^1].X - text.Bounds.Right)) < 1.5);
            Join(text.Owner![4..], point(lead.Points[^1]));
        }
    }

    private void JoinAt(List<LineMark> wires, PointMm at, string key, Func<PointMm, string> point)
    {
        foreach (var wire in wires)
        {
            for (var i = 1; i < wire.Points.Length; i++)
            {
                if (IsOn(at, wire.Points[i - 1], wire.Points[i])) Join(key, point(wire.Points[0]));
            }
        }
    }

    private static bool IsOn(PointMm p, PointMm a, PointMm b) =>
        p.X >= Math.Min(a.X, b.X) - 0.01 && p.X <= Math.Max(a.X, b.X) + 0.01
        && p.Y >= Math.Min(a.Y, b.Y) - 0.01 && p.Y <= Math.Max(a.Y, b.Y) + 0.01
        && (Math.Abs(a.X - b.X) < 0.01 || Math.Abs(a.Y - b.Y) < 0.01);

    /// <summary>What the panel says must be joined, by the same kind of sets.</summary>
    public static DrawnConnectivity Expected(Panel panel)
    {
        var sets = new DrawnConnectivity([]);
        foreach (var wire in panel.Wires) sets.Join(wire.From.ToString(), wire.To.ToString());
        foreach (var attachment in panel.Attachments) sets.Join(attachment.Device.ToString(), attachment.Contact.ToString());
        foreach (var net in panel.Nets)
        {
            foreach (var member in net.Members) sets.Join(net.Members[0].Terminal.ToString(), member.Terminal.ToString());
        }

        foreach (var strip in panel.Parts.OfType<TerminalStrip>())
        {
            foreach (var group in strip.Jumpers)
            {
                foreach (var name in group) sets.Join(strip.At(group[0]).ToString(), strip.At(name).ToString());
            }
        }

        return sets;
    }

    /// <summary>Mated contacts are one joint, in the panel as on the drawing, where they stand face to face.</summary>
    public void JoinMates(Panel panel)
    {
        foreach (var connector in panel.Parts.OfType<Connector>().Where(c => c.Mates is not null))
        {
            foreach (var terminal in connector.Terminals) Join(connector.At(terminal.Name).ToString(), new TerminalId(connector.Mates!, terminal.Name).ToString());
        }
    }
}
