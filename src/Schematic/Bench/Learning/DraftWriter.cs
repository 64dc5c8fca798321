using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Schematic.Analysis;
using Schematic.Bench.Readings;
using Schematic.Model;

namespace Schematic.Bench.Learning;

/// <summary>Writes a learned unit as a panel file: what is settled as statements, what is not as remarks.</summary>
internal sealed class DraftWriter
{
    private readonly Knowledge _known;
    private readonly LearnedUnit _unit;
    private readonly StringBuilder _text = new();
    private int _switches;

    private DraftWriter(Knowledge known, LearnedUnit unit) => (_known, _unit) = (known, unit);

    /// <summary>The text of the panel file.</summary>
    public static string Write(BenchReadings readings, Knowledge known, LearnedUnit unit)
    {
        var writer = new DraftWriter(known, unit);
        writer.Write(readings);
        return writer._text.ToString();
    }

    private void Write(BenchReadings readings)
    {
        Line("# A draft, made of readings. Names and ratings are placeholders: look at the unit and put in its own.");
        if (readings.By.Length + readings.Date.Length > 0) Line($"# Measured {string.Join(" by ", new[] { readings.Date, readings.By }.Where(t => t.Length > 0))}.");
        Line("");
        Line("title \"Draft of an unknown unit\"");
        Line("");
        foreach (var text in readings.DeclaredText) Declaration(text);
        Line("");
        foreach (var gang in Gangs()) Gang(gang);
        Devices();
        foreach (var (track, i) in _unit.Tracks.Select((t, i) => (t, i)))
        {
            Line(track.Last < 0
                ? $"rheostat RP{Number(i + 1)} {ValueText.Ohms(track.Ohms)} {{ {_known.Contacts[track.First]} {_known.Contacts[track.Wiper]} }}  # went with its knob"
                : $"potentiometer RP{Number(i + 1)} {ValueText.Ohms(track.Ohms)} {{ {_known.Contacts[track.First]} {_known.Contacts[track.Wiper]} {_known.Contacts[track.Last]} }}  # what one side gained the other lost: the wiper is the one in the middle");
        }

        foreach (var (group, i) in _unit.Joined.Select((g, i) => (g, i)))
            Line($"splice SP{Number(i + 1)} {{ {List(group)} }}  # joined inside the unit");
        if (!_unit.Open.IsEmpty) Line("");
        foreach (var open in _unit.Open) Line($"# not settled: {open}");
    }

    /// <summary>The statement as the readings file has it; a connector says in its block what is unused and what is not traced.</summary>
    private void Declaration(string text)
    {
        var body = text.TrimEnd();
        var connector = _known.Panel.Parts.OfType<Connector>().FirstOrDefault(c => IsOf(body, c.Designator));
        if (connector is null || !body.EndsWith('}'))
        {
            Line(body);
            return;
        }

        var lines = new List<string> { body[..^1].TrimEnd() };
        if (NamesOf(connector, _unit.Unused) is { Length: > 0 } unused) lines.Add($"  spare {unused}  # measured against all others in every position: nothing on them");
        if (NamesOf(connector, _unit.NotTraced) is { Length: > 0 } open) lines.Add($"  not-traced {open}");
        foreach (var line in lines) Line(line);
        Line("}");
    }

    private static bool IsOf(string statement, string designator) =>
        statement.Split((char[]?)null, 3, StringSplitOptions.RemoveEmptyEntries) is ["connector", var name, ..] && name.TrimEnd('{') == designator;

    private string NamesOf(Connector connector, ImmutableArray<int> contacts) =>
        NameList.Compact(contacts.Select(c => _known.Contacts[c]).Where(t => t.Part == connector.Designator).Select(t => t.Name));

    /// <summary>Poles of one actuator and one form whose throws close in the same positions stand in one statement.</summary>
    private IEnumerable<List<LearnedPole>> Gangs() => _unit.Poles
        .OrderBy(p => p.Actuator).ThenBy(p => p.Common)
        .GroupBy(p => $"{Number(p.Actuator)} {p.MakesBeforeBreak} {string.Join('/', p.Throws.Select(t => string.Join(',', t.Positions.Select(Number))))}")
        .Select(g => g.ToList());

    private void Gang(List<LearnedPole> poles)
    {
        var first = _switches + 1;
        _switches += poles.Count;
        var actuator = _known.Actuators[poles[0].Actuator];
        var name = poles.Count == 1 ? $"S{Number(first)}" : $"S{Number(first)}..S{Number(_switches)}";
        if (poles[0].Throws.Length == 1)
        {
            Single(name, actuator, poles);
            return;
        }

        var form = poles[0].Throws.Length == 2 ? "changeover" : "rotary";
        Line($"{(poles.Count == 1 ? "pole " : "poles")} {name} {form} on {actuator.Name}{(poles[0].MakesBeforeBreak ? " make-before-break" : "")} {{");
        Line($"  common {List(poles.Select(p => p.Common))}");
        for (var i = 0; i < poles[0].Throws.Length; i++)
        {
            var row = i;
            Line($"  {string.Join(',', poles[0].Throws[row].Positions.Select(p => actuator.Positions[p].Name))} {List(poles.Select(p => p.Throws[row].Contact))}");
        }

        Line("}");
    }

    private void Single(string name, Actuator actuator, List<LearnedPole> poles)
    {
        var closed = poles[0].Throws[0].Positions;
        var isBreak = closed.Contains(actuator.Positions.IndexOf(actuator.Rest));
        var operated = Enumerable.Range(0, actuator.Positions.Length).Where(p => closed.Contains(p) != isBreak).Select(p => actuator.Positions[p].Name);
        var form = isBreak ? "break" : "make";
        var head = $"{(poles.Count == 1 ? "switch" : "poles")} {name} {form} on {actuator.Name} when {string.Join(' ', operated)}";
        Line(poles.Count == 1
            ? $"{head} {{ {List([poles[0].Common])} {List([poles[0].Throws[0].Contact])} }}"
            : $"{head} {{ common {List(poles.Select(p => p.Common))} ; {form} {List(poles.Select(p => p.Throws[0].Contact))} }}");
    }

    private void Devices()
    {
        var count = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var device in _unit.Devices)
        {
            var ends = $"{{ {_known.Contacts[device.From]} {_known.Contacts[device.To]} }}";
            var ohms = ValueText.Ohms(device.Ohms);
            Line(device switch
            {
                { IsDiode: true, Ohms: > 1.2 } or { Seen: "led" } => $"led {Next("DS")} {ValueText.Volts(Math.Max(1.2, device.Ohms) / 0.9)} 20 mA {ends}  # current assumed",
                { IsDiode: true } => $"diode {Next("D")} {ends}  # {ValueText.Volts(device.Ohms)} forward",
                { Seen: "lamp" } => $"lamp {Next("DS")} {ohms} {ends}  # cold; its rating stands on the bulb",
                { Seen: "coil" } => $"solenoid {Next("L")} {ohms} {ends}  # its voltage is not known, and suppression was not looked for",
                { Seen: "resistor" } => $"resistor {Next("R")} {ohms} {ends}",
                _ => $"resistor {Next("R")} {ohms} {ends}  # {Guess(device.Ohms)}",
            });
        }

        string Next(string letters)
        {
            count[letters] = count.GetValueOrDefault(letters) + 1;
            return letters + Number(count[letters]);
        }
    }

    private static string Guess(double ohms) => ohms switch
    {
        < 5 => "few ohms: a strong coil, or a bad joint; note what you see: lamp, coil or resistor",
        < 3000 => "nobody noted what it is: a lamp glows at a few volts, a coil clicks; note lamp, coil or resistor behind the reading",
        _ => "nobody noted what it is; lamps and coils have less",
    };

    private string List(IEnumerable<int> contacts)
    {
        var text = new StringBuilder();
        string? part = null;
        foreach (var contact in contacts.Select(c => _known.Contacts[c]))
        {
            if (text.Length > 0) text.Append(' ');
            text.Append(contact.Part == part ? contact.Name : contact.ToString());
            part = contact.Part;
        }

        return text.ToString();
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private void Line(string line) => _text.Append(line).Append('\n');
}
