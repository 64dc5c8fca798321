using System.Collections.Immutable;
using System.Globalization;
using Schematic.Bench.Readings;
using Schematic.Reports;

namespace Schematic.Bench.Diagnosis;

/// <summary>A diagnosis as tables: what may be behind the readings, and what to measure next.</summary>
public static class DiagnosisList
{
    private const int MostShown = 8;
    private const int MostReadings = 4;
    private const int MostMembers = 6;

    /// <summary>Groups less likely than this share of the first are not printed.</summary>
    private const double LeastShare = 0.002;

    /// <summary>Below this share the likeliest explanation is but one of several (own choice).</summary>
    private const double SettledShare = 0.3;

    /// <summary>The tables in the order in which they are read.</summary>
    public static ImmutableArray<ReportTable> Build(DiagnosisResult result) => result.UsedReadings == 0
        ? [Next(result) with { Lead = [Verdict(result), .. result.Doubts] }]
        : [Explanations(result), Next(result)];

    /// <summary>One sentence: pass, or what is likeliest.</summary>
    public static string Verdict(DiagnosisResult result)
    {
        if (result.UsedReadings == 0) return "No reading was taken yet. Begin with the one below, or take the whole list of `schematic ring-out FILE --readings`.";
        if (result.IsPass) return $"PASS: all {Number(result.UsedReadings)} readings are those of a sound unit, and they exclude {Percent(result.ExcludedShare)} of all single faults.";
        var first = result.Ranking[0];
        if (first.Members[0].IsSound)
            return $"Nothing is likelier than that {(first.Against.Length == 1 ? "one reading is" : $"{Number(first.Against.Length)} readings are")} wrong: measure again.{string.Concat(result.Slips.Take(2).Select(Slip))}";
        if (first.Share < SettledShare && result.Next is not null)
            return $"WRONG, but not settled: likeliest of several is that {first.Members[0].Words}. Take the reading that is named below before you mend anything.";
        return $"WRONG: {first.Members[0].Words}.{Again(first.Members[0])}";
    }

    private static string Slip((NotedReading Noted, Model.TerminalId Written, Model.TerminalId Meant) slip) =>
        $" Line {Number(slip.Noted.Span.Start.Line)} would fit with {slip.Meant} in the place of {slip.Written}: look whether two digits were exchanged.";

    /// <summary>A mistake of the person is settled by doing it again, not by another place for the leads.</summary>
    private static string Again(Explanation explanation) => explanation.Mistake?.Kind switch
    {
        null => "",
        MistakeKind.NotAtStop => " Hold it there, against its stop, and take those readings again.",
        MistakeKind.NotZeroed => " Touch the tips together, note what the meter shows, and state it with `leads`.",
        MistakeKind.WrongUnit => " Correct the unit in the file.",
        MistakeKind.NamedWrong => " Look which position is which, and correct the panel or the readings.",
        MistakeKind.Mirrored or MistakeKind.WrongStart or MistakeKind.Turned or MistakeKind.Shifted =>
            " Hold the face beside the drawn one, find the key and the first contact, and take one of those readings again.",
        _ => throw new InvalidOperationException("A kind of mistake without advice."),
    };

    private static ReportTable Explanations(DiagnosisResult result)
    {
        var shown = result.Ranking.TakeWhile((g, i) => i < MostShown && (i == 0 || g.Share >= LeastShare * result.Ranking[0].Share)).ToList();
        // What no explanation accounts for is said once, not in every row.
        var common = shown.Count < 2 ? [] : shown.Skip(1).Aggregate(shown[0].Against.AsEnumerable(), (a, g) => a.Intersect(g.Against)).ToImmutableArray();
        return new ReportTable(
            "What is behind the readings",
            [
                new("rank", "", ColumnAlign.Right),
                new("share_percent", "Share", ColumnAlign.Right),
                new("explanation", "Explanation"),
                new("for", "Readings for it"),
                new("against", "Readings against it"),
            ],
            [.. shown.Select((g, i) => ImmutableArray.Create(Number(i + 1), Percent(g.Share), Words(g), Readings(g.For), Readings([.. g.Against.Except(common)])))])
        {
            Lead = [Verdict(result), .. result.Doubts],
            Notes =
            [
                .. common.IsEmpty ? ImmutableArray<string>.Empty : [$"None of these accounts for {Readings(common)}."],
                "Share: how likely, all explanations together being 100 %. Explanations joined by \"or\" cannot be told apart by any measurement at these contacts. For: readings that a sound unit cannot give and this explains.",
            ],
        };
    }

    private static ReportTable Next(DiagnosisResult result)
    {
        ImmutableArray<ReportColumn> columns =
        [
            new("hold", "Hold these positions"), new("red", "Red lead"), new("black", "Black lead"), new("test", "Meter"),
            new("reads", "If it reads"), new("then", "it speaks for"),
        ];
        if (result.Next is not { } next)
        {
            return new ReportTable("Measure next", columns, [])
            {
                Notes = [result.IsPass ? "Nothing: no measurement would tell more about what is left." : "Nothing: no measurement at these contacts tells the explanations apart any further."],
            };
        }

        var circuit = result.Circuit;
        return new ReportTable(
            "Measure next", columns,
            [
                .. next.Outcomes.Select((o, i) => ImmutableArray.Create(
                    i > 0 ? "" : StandText.Describe(next.Placement.Stand, circuit.Actuators),
                    i > 0 ? "" : TerminalText.Of(circuit, next.Placement.Red),
                    i > 0 ? "" : TerminalText.Of(circuit, next.Placement.Black),
                    i > 0 ? "" : MeterTestText.Words(next.Placement.Test),
                    o.Reading.Text, result.UsedReadings == 0 ? (o.Groups.Contains(0) ? "a sound unit, or what does not show here" : "a fault or a mistake") : string.Join(", ", o.Groups.Take(MostShown).Select(g => Number(g + 1))) + (o.Groups.Length > MostShown ? " and more" : ""))),
            ])
        {
            Notes = [$"It is expected to tell {next.Bits.ToString("0.0", CultureInfo.InvariantCulture)} bits, and takes {Number(next.Moves)} {(next.Moves == 1 ? "move" : "moves")}.{(result.UsedReadings == 0 ? "" : " Numbers are those of the explanations above and of those behind them.")}"],
        };
    }

    private static string Words(ExplanationGroup group)
    {
        var words = string.Join("; or ", group.Members.Take(MostMembers).Select(m => m.Words));
        var more = group.Members.Length - MostMembers;
        if (more > 0) words += $"; or {Number(more)} more";
        return group.Members[0].IsSound && !group.Against.IsEmpty ? $"{words} but {(group.Against.Length == 1 ? "a reading" : "readings")}" : words;
    }

    private static string Readings(ImmutableArray<NotedReading> readings)
    {
        var shown = string.Join("; ", readings.Take(MostReadings).Select(Text));
        return readings.Length > MostReadings ? $"{shown}; and {Number(readings.Length - MostReadings)} more" : shown;
    }

    /// <summary>A reading as its file writes it, with the positions that were held.</summary>
    private static string Text(NotedReading reading)
    {
        var joined = MeterTestText.Joined(reading.Test, reading.Red.Length + reading.Black.Length == 2);
        var line = reading.Span.Start.Line.ToString(CultureInfo.InvariantCulture);
        return $"line {line}: {TerminalText.Of(reading.Red)}{joined}{TerminalText.Of(reading.Black)} {reading.Value!.Text}";
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Percent(double share) => share is > 0 and < 0.001 ? "< 0.1 %" : (100 * share).ToString(share > 0.9995 || share < 0.0005 ? "0" : "0.0", CultureInfo.InvariantCulture) + " %";
}
