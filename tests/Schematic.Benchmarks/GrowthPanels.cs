using System.Globalization;
using System.Text;

namespace Schematic.Benchmarks;

/// <summary>
/// Panels of any size whose proof must grow gently: each has one thing in plenty, and none has a fault that a check of the
/// positions finds, unless its name says so.
/// </summary>
internal static class GrowthPanels
{
    /// <summary>The names of the panels with the size each is measured at.</summary>
    public static IReadOnlyList<(string Name, int Size)> All { get; } =
    [
        ("pairs", 24), ("series", 500), ("rotary", 200), ("rotary", 500), ("bridging", 200), ("independent", 500),
        ("relays", 100), ("levers", 100), ("ring", 50), ("latches", 40), ("lamps", 24),
    ];

    /// <summary>The text of a panel.</summary>
    public static string TextOf(string name, int size)
    {
        var panel = new Sketch();
        switch (name)
        {
            case "pairs": Pairs(panel, size); break;
            case "series": Series(panel, size); break;
            case "rotary": Rotary(panel, size, ""); break;
            case "bridging": Rotary(panel, size, " make-before-break"); break;
            case "independent": Independent(panel, size); break;
            case "relays": Relays(panel, size, isRing: false, hasLevers: false); break;
            case "levers": Relays(panel, size, isRing: false, hasLevers: true); break;
            case "ring": Relays(panel, size, isRing: true, hasLevers: true); break;
            case "latches": Latches(panel, size); break;
            case "lamps": Lamps(panel, size); break;
            default: throw new ArgumentException($"There is no panel '{name}'.", nameof(name));
        }

        return panel.Text();
    }

    /// <summary>Two switches in series, many such pairs side by side, one bell.</summary>
    private static void Pairs(Sketch panel, int size)
    {
        panel.Add("lamp BELL 24 V 40 mA");
        List<string> ends = ["BELL:X1"];
        for (var i = 1; i <= size; i++)
        {
            panel.Switch($"A{i}").Switch($"B{i}").Net($"SA{i}:2", $"SB{i}:1").Feed($"SA{i}:1");
            ends.Add($"SB{i}:2");
        }

        panel.Net([.. ends]).Back("BELL:X2");
    }

    /// <summary>Many switches in series, one lamp.</summary>
    private static void Series(Sketch panel, int size)
    {
        for (var i = 1; i <= size; i++)
        {
            panel.Switch($"A{i}");
            if (i > 1) panel.Net($"SA{i - 1}:2", $"SA{i}:1");
        }

        panel.Add("lamp DS1 24 V 40 mA").Feed("SA1:1").Net($"SA{size}:2", "DS1:X1").Back("DS1:X2");
    }

    /// <summary>One rotary pole with a lamp on each throw.</summary>
    private static void Rotary(Sketch panel, int size, string clause)
    {
        var names = Enumerable.Range(1, size).Select(i => $"p{i}").ToList();
        panel.Add($"actuator KNOB {{ {string.Join(" ; ", names)} }}");
        panel.Add($"pole S1 rotary on KNOB{clause} {{ common ; {string.Join(" ; ", names)} }}").Feed("S1:common");
        foreach (var name in names) panel.Add($"lamp DS{name} 24 V 40 mA").Net($"S1:{name}", $"DS{name}:X1").Back($"DS{name}:X2");
    }

    /// <summary>A lever and a lamp, many times.</summary>
    private static void Independent(Sketch panel, int size)
    {
        for (var i = 1; i <= size; i++)
            panel.Switch($"A{i}").Add($"lamp DS{i} 24 V 40 mA").Feed($"SA{i}:1").Net($"SA{i}:2", $"DS{i}:X1").Back($"DS{i}:X2");
    }

    /// <summary>Each relay feeds the next, through a lever of its own where it has one; in a ring the last feeds the first.</summary>
    private static void Relays(Sketch panel, int size, bool isRing, bool hasLevers)
    {
        panel.Switch("START").Feed("SSTART:1");
        List<string> first = ["SSTART:2"];
        for (var i = 1; i <= size; i++)
        {
            panel.Add($"relay K{i} 24 V 30 mA {{ make ; make }}").Feed($"K{i}:13").Back($"K{i}:A2");
            List<string> entry = [hasLevers ? $"SA{i}:1" : $"K{i}:A1"];
            if (hasLevers) panel.Switch($"A{i}").Net($"SA{i}:2", $"K{i}:A1");
            if (i == 1) first.AddRange(entry);
            else panel.Net($"K{i - 1}:14", entry[0]);
            panel.Add($"lamp DS{i} 24 V 40 mA").Feed($"K{i}:23").Net($"K{i}:24", $"DS{i}:X1").Back($"DS{i}:X2");
        }

        if (isRing) first.Add($"K{size}:14");
        panel.Net([.. first]);
    }

    /// <summary>Relays that hold themselves, each with a button to start and one to stop it; each can start only after the one before.</summary>
    private static void Latches(Sketch panel, int size)
    {
        for (var i = 1; i <= size; i++)
        {
            panel.Switch($"A{i}").Switch($"B{i}", "break").Add($"relay K{i} 24 V 30 mA {{ make ; make }}");
            panel.Feed($"SB{i}:1").Net($"SB{i}:2", $"K{i}:13").Net($"SA{i}:2", $"K{i}:A1", $"K{i}:14").Back($"K{i}:A2").Feed($"K{i}:23");
            if (i == 1) panel.Feed("SA1:1");
            else panel.Net($"K{i - 1}:24", $"SA{i}:1");
        }
    }

    /// <summary>Lamps behind one dropper resistor, a lever each: as many cases as states, far too many to solve each.</summary>
    private static void Lamps(Sketch panel, int size)
    {
        List<string> bus = ["R1:2"];
        panel.Add("resistor R1 1 ohm 5 W").Feed("R1:1");
        for (var i = 1; i <= size; i++)
        {
            panel.Switch($"A{i}").Add($"lamp DS{i} 24 V 40 mA").Net($"SA{i}:2", $"DS{i}:X1").Back($"DS{i}:X2");
            bus.Add($"SA{i}:1");
        }

        panel.Net([.. bus]);
    }

    /// <summary>The text so far, and what hangs on the two ends of the supply.</summary>
    private sealed class Sketch
    {
        private readonly StringBuilder _text = new();
        private readonly List<string> _feed = ["PS1:+"];
        private readonly List<string> _back = ["PS1:-"];
        private int _nets;

        public Sketch Add(string statement)
        {
            _text.Append(statement).Append('\n');
            return this;
        }

        public Sketch Switch(string lever, string form = "make") =>
            Add($"actuator {lever} {{ off rest ; on }}").Add($"switch S{lever} {form} on {lever} when on");

        public Sketch Net(params string[] terminals) =>
            Add($"net N{(++_nets).ToString(CultureInfo.InvariantCulture)} {string.Join(' ', terminals)}");

        public Sketch Feed(string terminal)
        {
            _feed.Add(terminal);
            return this;
        }

        public Sketch Back(string terminal)
        {
            _back.Add(terminal);
            return this;
        }

        public string Text() =>
            $"supply PS1 24 V limit 100 A {{ + - }}\n{_text}net FEED {string.Join(' ', _feed)}\nnet RTN {string.Join(' ', _back)}\n";
    }
}
