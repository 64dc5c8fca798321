using System.Globalization;
using System.Text;
using CsCheck;
using Schematic.Model;

namespace Schematic.Tests.Layout.Circuits;

/// <summary>A random circuit of links in series and side by side, as a graph and as a panel file.</summary>
internal abstract record SeriesParallelCircuit
{
    /// <summary>The tens digit of a contact counts the sets of a relay.</summary>
    private const int MostContacts = 9;

    /// <summary>Shapes of up to some dozen links.</summary>
    public static Gen<SeriesParallelCircuit> Shapes { get; } = Shape(3);

    /// <summary>The pairs of nodes that the links join; the whole lies between node 0 and node 1.</summary>
    public (int A, int B)[] Links()
    {
        var links = new List<(int, int)>();
        var next = 2;
        Add(links, 0, 1, ref next);
        return [.. links];
    }

    /// <summary>
    /// A panel in which every link is a device, chosen by its number: contacts of buttons and of one relay, lamps, resistors,
    /// diodes. Nodes are joined over a strip, by wires to the first device, or by wires in a chain.
    /// </summary>
    public Panel Panel(int seed)
    {
        var links = Links();
        var random = new Random(seed);
        var text = new StringBuilder("supply PS1 24 V { + - }\nrelay K1 24 V 30 mA { " + string.Join(" ; ", Enumerable.Repeat("make", MostContacts)) + " }\n");
        var at = new SortedDictionary<int, List<string>> { [0] = ["PS1:+", "K1:A1"], [1] = ["PS1:-", "K1:A2"] };
        var contacts = 0;
        for (var i = 0; i < links.Length; i++)
        {
            var (name, first, second) = Device(random.Next(contacts < MostContacts ? 6 : 5), i, text, ref contacts);
            if (random.Next(2) == 0) (first, second) = (second, first);
            ListAt(at, links[i].A).Add($"{name}:{first}");
            ListAt(at, links[i].B).Add($"{name}:{second}");
        }

        var wires = 0;
        foreach (var (node, ends) in at) Wire(random.Next(3), node, ends, text, ref wires);
        return TestPanels.Load(text.ToString());
    }

    private static (string Name, string First, string Second) Device(int kind, int index, StringBuilder text, ref int contacts)
    {
        var number = (index + 1).ToString(CultureInfo.InvariantCulture);
        switch (kind)
        {
            case 0:
                text.Append(CultureInfo.InvariantCulture, $"actuator B{number} {{ out rest ; in springs-to out }}\nswitch S{number} make on B{number} when in\n");
                return ("S" + number, "1", "2");
            case 1:
                text.Append(CultureInfo.InvariantCulture, $"diode D{number} 1 A 100 V\n");
                return ("D" + number, "A", "K");
            case 2:
                text.Append(CultureInfo.InvariantCulture, $"lamp DS{number} \"lamp number {number}\" 24 V 50 mA\n");
                return ("DS" + number, "X1", "X2");
            case 3:
                text.Append(CultureInfo.InvariantCulture, $"resistor R{number} 100 ohm\n");
                return ("R" + number, "1", "2");
            case 4:
                text.Append(CultureInfo.InvariantCulture, $"fuse F{number} 1 A\n");
                return ("F" + number, "1", "2");
            default:
                contacts++;
                return ("K1", $"{contacts}3", $"{contacts}4");
        }
    }

    private static void Wire(int way, int node, List<string> ends, StringBuilder text, ref int wires)
    {
        if (way == 0)
        {
            text.Append(CultureInfo.InvariantCulture, $"terminals X{node + 1} {{ 1..{ends.Count + 1} ; jumper 1..{ends.Count + 1} }}\n");
            for (var i = 0; i < ends.Count; i++) text.Append(CultureInfo.InvariantCulture, $"wire W{++wires} 22 AWG red 100 mm {ends[i]} -> X{node + 1}:{i + 1}\n");
            return;
        }

        for (var i = 1; i < ends.Count; i++)
            text.Append(CultureInfo.InvariantCulture, $"wire W{++wires} 0.5 mm2 white/blue 100 mm {ends[way == 1 ? 0 : i - 1]} -> {ends[i]}\n");
    }

    private static List<string> ListAt(SortedDictionary<int, List<string>> at, int node)
    {
        if (!at.TryGetValue(node, out var list)) at[node] = list = [];
        return list;
    }

    private static Gen<SeriesParallelCircuit> Shape(int depth) => depth == 0
        ? Gen.Const<SeriesParallelCircuit>(new One())
        : Gen.OneOf(
            Gen.Const<SeriesParallelCircuit>(new One()),
            Shape(depth - 1).Array[2, 3].Select(p => (SeriesParallelCircuit)new InSeries(p)),
            Shape(depth - 1).Array[2, 4].Select(p => (SeriesParallelCircuit)new SideBySide(p)));

    private protected abstract void Add(List<(int, int)> links, int from, int to, ref int next);

    private sealed record One : SeriesParallelCircuit
    {
        private protected override void Add(List<(int, int)> links, int from, int to, ref int next) => links.Add((from, to));
    }

    private sealed record InSeries(SeriesParallelCircuit[] Parts) : SeriesParallelCircuit
    {
        private protected override void Add(List<(int, int)> links, int from, int to, ref int next)
        {
            for (var i = 0; i < Parts.Length; i++)
            {
                var end = i == Parts.Length - 1 ? to : next++;
                Parts[i].Add(links, from, end, ref next);
                from = end;
            }
        }
    }

    private sealed record SideBySide(SeriesParallelCircuit[] Parts) : SeriesParallelCircuit
    {
        private protected override void Add(List<(int, int)> links, int from, int to, ref int next)
        {
            foreach (var part in Parts) part.Add(links, from, to, ref next);
        }
    }
}
