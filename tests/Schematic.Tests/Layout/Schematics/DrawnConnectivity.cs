using Schematic.Drawing;
using Schematic.Model;

namespace Schematic.Tests.Layout.Schematics;

/// <summary>
/// Reads back from the finished marks which terminals the drawing joins: wires that meet at ends or under a dot, terminals'
/// symbols, and references with the same name.
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

    /// <summary>Terminals that a lead is drawn for.</summary>
    public HashSet<string> Terminals { get; } = new(StringComparer.Ordinal);

    /// <summary>How often each edge's reference is drawn.</summary>
    public IReadOnlyDictionary<string, int> References => _references;

    public bool AreJoined(string a, string b) => Find(a) == Find(b);

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

    private void Read(SheetContent sheet, int number)
    {
        var wires = sheet.Marks.OfType<LineMark>().Where(m => m.Role == MarkRole.Wire).ToList();
        string Point(PointMm p) => FormattableString.Invariant($"{number}@{Math.Round(p.X, 2) + 0.0:0.00},{Math.Round(p.Y, 2) + 0.0:0.00}");
        foreach (var wire in wires)
        {
            foreach (var point in wire.Points) Join(Point(wire.Points[0]), Point(point));
            if (wire.Owner is not { } owner || owner.StartsWith("ref:", StringComparison.Ordinal) || !owner.Contains(':', StringComparison.Ordinal)) continue;
            Terminals.Add(owner);
            Join(owner, Point(wire.Points[0]));
        }

        foreach (var dot in sheet.Marks.OfType<CircleMark>().Where(m => m.Role == MarkRole.Junction)) JoinAt(wires, dot.Centre, Point(dot.Centre), Point);
        foreach (var circle in sheet.Marks.OfType<CircleMark>().Where(m => m.Role == MarkRole.Symbol && m.Owner?.Contains(':', StringComparison.Ordinal) == true))
        {
            foreach (var end in wires.SelectMany(w => new[] { w.Points[0], w.Points[^1] }))
            {
                if (Math.Abs(Distance(end, circle.Centre) - circle.RadiusMm) >= 0.01) continue;
                Terminals.Add(circle.Owner!);
                Join(circle.Owner!, Point(end));
            }
        }

        foreach (var head in sheet.Marks.OfType<LineMark>().Where(m => m.Role == MarkRole.Symbol && m.Owner?.StartsWith("ref:", StringComparison.Ordinal) == true))
        {
            foreach (var name in head.Owner![4..].Split(','))
            {
                _references[name] = _references.GetValueOrDefault(name) + 1;
                var key = name.Contains(':', StringComparison.Ordinal) ? name : "edge " + name;
                JoinAt(wires, head.Points[0], key, Point);
            }
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

    private static double Distance(PointMm a, PointMm b) => Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y)));

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
