using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Schematic.Bench.Readings;

namespace Schematic.Bench.Learning;

/// <summary>The readings file with which the measuring of an unknown unit begins, and the list of the next placement.</summary>
public static class LearnStart
{
    /// <summary>More contacts than this are no connector that a person measures by hand.</summary>
    public const int MostContacts = 500;

    /// <summary>A readings file of so many contacts and these actuators, the order at rest laid out with its values left blank.</summary>
    /// <param name="contacts">How many contacts the connector has.</param>
    /// <param name="actuators">Each actuator with its positions in mechanical order, the one at rest first or marked so in the file later.</param>
    public static string File(int contacts, ImmutableArray<(string Name, ImmutableArray<string> Positions)> actuators)
    {
        var text = new StringBuilder();
        text.Append("readings unknown\n");
        text.Append(CultureInfo.InvariantCulture, $"connector J1 \"unknown unit\" {{ pins ; strip {contacts} pitch 5 mm }}  # put in its own insert: spiral, rows, grid, letters\n");
        foreach (var (name, positions) in actuators)
            text.Append(CultureInfo.InvariantCulture, $"actuator {name} {{ {string.Join(" ; ", positions.Select((p, i) => i == 0 ? p + " rest" : p))} }}  # mark what springs: {positions[^1]} springs-to {positions[0]}\n");
        text.Append("unit J1\ndate \"\"  by \"\"\nmeter \"\"\nleads 0.3 ohm zeroed  # what the meter shows when the tips touch\n\n");
        text.Append("# Nothing switched on, nothing plugged in. Put each contact against all before it, clipped together. Where something passes,\n");
        text.Append("# halve the bundle until you know with which one, note that pair, and take one of the two out of the bundle.\n");
        text.Append("# Then, and whenever you want to know what to measure next: schematic learn FILE --plan\n");
        text.Append("at rest {\n");
        for (var i = 2; i <= contacts; i++)
            text.Append(CultureInfo.InvariantCulture, $"  J1:{i} {(i == 2 ? "J1:1" : i == 3 ? "to J1:1 2" : $"to J1:1..{i - 1}")} ?\n");
        text.Append("}\n");
        return text.ToString();
    }

    /// <summary>The next placement as a line to be written into the readings file, its value left blank.</summary>
    public static string Line(LearnStep step, BenchReadings readings)
    {
        var isPair = step.Red.Length + step.Black.Length == 2;
        var joined = MeterTestText.Joined(step.Test, isPair);
        return $"at {StandText.Describe(step.Stand, readings.Declared.Actuators)} {{ {TerminalText.Of(step.Red)}{joined}{TerminalText.Of(step.Black)} ?{MeterTestText.Suffix(step.Test)} }}";
    }

    /// <summary>The next placement as a table.</summary>
    public static Reports.ReportTable Table(LearnStep? step, BenchReadings readings)
    {
        var taken = readings.Taken.Count();
        var note = $"{LearnPlanner.Number(taken)} readings so far; all pairs in all positions are {LearnPlanner.Number(LearnPlanner.AllPairs(readings.Declared))}.";
        ImmutableArray<Reports.ReportColumn> columns =
            [new("hold", "Hold these positions"), new("red", "Red lead"), new("black", "Black lead"), new("test", "Meter"), new("why", "It tells")];
        if (step is null)
            return new Reports.ReportTable("Measure next", columns, []) { Notes = ["Nothing: the unit is known. `schematic learn FILE` writes its panel.", note] };
        return new Reports.ReportTable(
            "Measure next", columns,
            [[
                StandText.Describe(step.Stand, readings.Declared.Actuators), TerminalText.Of(step.Red), TerminalText.Of(step.Black),
                MeterTestText.Words(step.Test), step.Why,
            ]])
        {
            Notes = [$"Write into the file: {Line(step, readings)}", note],
        };
    }
}
