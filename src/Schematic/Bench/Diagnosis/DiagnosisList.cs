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
    private const int MostMoved = 40;

    /// <summary>Groups less likely than this share of the first are not printed.</summary>
    private const double LeastShare = 0.002;

    /// <summary>Below this share the likeliest explanation is not settled, as long as a measurement tells more (own choice).</summary>
    private const double SettledShare = 0.9;

    /// <summary>With less than this share of all faults excluded the unit is not yet measured (own choice; a whole ring-out excludes more).</summary>
    private const double WholeShare = 0.9;

    /// <summary>Below this share it is but one of several (own choice).</summary>
    private const double LikelyShare = 0.3;

    /// <summary>The tables in the order in which they are read.</summary>
    public static ImmutableArray<ReportTable> Build(DiagnosisResult result) => result.UsedReadings == 0
        ? [Next(result) with { Lead = [Verdict(result), .. result.Doubts] }]
        : [Explanations(result), Next(result)];

    /// <summary>One sentence: pass, or what is likeliest.</summary>
    public static string Verdict(DiagnosisResult result)
    {
        if (result.UsedReadings == 0) return "No reading was taken yet. Begin with the one below, or take the whole list of `schematic ring-out FILE --readings`.";
        if (result.IsPass) return $"PASS{(result.ExcludedShare < WholeShare ? " so far" : "")}: {(result.UsedReadings == 1 ? "the one reading is that" : $"all {Number(result.UsedReadings)} readings are those")} of a sound unit, and {(result.UsedReadings == 1 ? "excludes" : "they exclude")} {Percent(result.ExcludedShare)} of all single faults.{(result.ExcludedShare < WholeShare ? " What is not excluded nobody has looked at: go on." : "")}";
        var first = result.Ranking[0];
        if (first.Members[0].IsSound)
            return $"Nothing is likelier than that {(first.Against.Length == 1 ? "one reading is" : $"{Number(first.Against.Length)} readings are")} wrong: measure again.{string.Concat(result.Slips.Take(2).Select(Slip))}";
        // Whoever may not have held a spring holds it and reads again: that settles it sooner than any other reading.
        var isTriedAgain = first.Members[0] is { Faults.IsEmpty: true, Mistake.IsSprung: true } && first.Share >= LikelyShare;
        if (result.Next is not null && first.Share < SettledShare && !isTriedAgain)
        {
            return first.Share < LikelyShare
                ? $"WRONG, but not settled: likeliest of several is that {first.Members[0].Words}. Take the reading that is named below before you mend anything."
                : $"WRONG, most likely: {first.Members[0].Words}{Or(first)}{OrElse(result)}. Take the reading that is named below, then you know.";
        }

        return $"WRONG: {first.Members[0].Words}{Or(first)}.{Again(first.Members[0])}";
    }

    /// <summary>What is nearly as likely is said in the same breath: whoever stops reading after the first would mend the wrong thing.</summary>
    private static string OrElse(DiagnosisResult result) => result.Ranking.Length > 1 && result.Ranking[1].Share >= LikelyShare && !result.Ranking[1].Members[0].IsSound
        ? $"; or else: {result.Ranking[1].Members[0].Words}{Or(result.Ranking[1])}" : "";

    private static string Or(ExplanationGroup group) => group.Members.Length == 1 || group.Members[0].Mistake is not null ? "" : ", or what reads the same and stands beside it in the list";

    private static string Slip((NotedReading Noted, Model.TerminalId Written, Model.TerminalId Meant) slip) =>
        $" Line {Number(slip.Noted.Span.Start.Line)} would fit with {slip.Meant} in the place of {slip.Written}: look whether two digits were exchanged.";

    /// <summary>A mistake of the person is settled by doing it again, not by another place for the leads.</summary>
    private static string Again(Explanation explanation) => explanation.Mistake?.Kind switch
    {
        null => "",
        MistakeKind.NotAtStop when explanation.Mistake.IsSprung => " Hold it there, against its stop, and take those readings again.",
        MistakeKind.NotAtStop => " Move it there as far as it goes, and take those readings again.",
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
                new("for", "For it: line and reading"),
                new("against", "Against it"),
            ],
            [.. shown.Select((g, i) => ImmutableArray.Create(Number(i + 1), Percent(g.Share), Words(g), Readings(g.For), Readings([.. g.Against.Except(common)])))])
        {
            Lead = [Verdict(result), .. result.Doubts],
            Notes =
            [
                .. common.IsEmpty ? ImmutableArray<string>.Empty : [$"None of these accounts for line {Readings(common)}."],
                .. Really(result),
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
                Notes = [result.IsNextCutShort ? "Not found: there are too many positions and explanations to try every reading, and one that was not tried may tell more."
                    : result.IsPass ? "Nothing: no measurement would tell more about what is left." : "Nothing: no measurement at these contacts tells the explanations apart any further."],
            };
        }

        var circuit = result.Circuit;
        return new ReportTable(
            "Measure next", columns,
            [
                .. Outcomes(result, next).Select((o, i) => ImmutableArray.Create(
                    i > 0 ? "" : StandText.Describe(next.Placement.Stand, circuit.Actuators),
                    i > 0 ? "" : TerminalText.Of(circuit, next.Placement.Red),
                    i > 0 ? "" : TerminalText.Of(circuit, next.Placement.Black),
                    i > 0 ? "" : MeterTestText.Words(next.Placement.Test),
                    o.Reads, o.Then)),
            ])
        {
            Notes =
            [
                next.IsOfPerson
                    ? $"Before any fault is looked for: it tells most about whether contacts or positions were taken for others. It takes {Number(next.Moves)} {(next.Moves == 1 ? "move" : "moves")}."
                    : $"It is expected to tell {next.Bits.ToString("0.0", CultureInfo.InvariantCulture)} bits, and takes {Number(next.Moves)} {(next.Moves == 1 ? "move" : "moves")}.{(result.UsedReadings == 0 ? "" : " Numbers are those of the explanations above and of those behind them.")}",
                .. result.IsNextCutShort ? ImmutableArray.Create("There are too many positions and explanations to try every reading: this is the best of those that were tried, and another may tell more.") : [],
            ],
        };
    }

    private static IEnumerable<(string Reads, string Then)> Outcomes(DiagnosisResult result, NextMeasurement next)
    {
        if (!next.IsOfPerson)
        {
            foreach (var (reading, groups) in next.Outcomes)
                yield return (reading.Text, result.UsedReadings == 0 ? groups.Contains(0) ? "a sound unit, or what does not show here" : "a fault or a mistake"
                    : string.Join(", ", groups.Take(MostShown).Select(g => Number(g + 1))) + (groups.Length > MostShown ? " and more" : ""));
            yield break;
        }

        yield return (next.Outcomes.First(o => o.Groups.Contains(0)).Reading.Text, "the right contacts in the right positions, as far as this tells");
        yield return ("anything else", "contacts or positions taken for others, or a fault");
    }

    private static string Words(ExplanationGroup group)
    {
        if (group.Both is { } both) return $"two things: {OneOf(both.Ones)}; and {OneOf(both.Others)}";
        var words = string.Join("; or ", group.Members.Take(MostMembers).Select(m => m.Words));
        var more = group.Members.Length - MostMembers;
        if (more > 0) words += $"; or {Number(more)} more";
        return group.Members[0].IsSound && !group.Against.IsEmpty ? $"{words} but {(group.Against.Length == 1 ? "a reading" : "readings")}" : words;
    }

    private static string OneOf(ImmutableArray<Faults.Fault> faults) => faults.Length == 1 ? faults[0].Words
        : $"{faults[0].Words} (or {string.Join(", or ", faults.Skip(1).Take(MostMembers).Select(f => f.Words))}{(faults.Length - 1 > MostMembers ? ", or more" : "")})";

    /// <summary>Whoever took one contact for another need not measure all again: what was noted is told with what was touched.</summary>
    private static IEnumerable<string> Really(DiagnosisResult result)
    {
        var first = result.Ranking[0];
        if (first.Members[0] is not { Mistake.Contacts: { IsEmpty: false } map } || first.Share < SettledShare) yield break;
        var circuit = result.Circuit;
        var noted = result.Readings.SelectMany(r => r.Red.Concat(r.Black)).Distinct().Where(t => circuit.NumberOf(t) >= 0).Order().ToList();
        var moved = noted.Select(t => (Noted: t, Real: circuit.Terminals[map[circuit.NumberOf(t)]])).Where(p => p.Noted != p.Real).ToList();
        if (moved.Count == 0) yield break;
        yield return $"If so, nothing has to be measured again. Noted and really touched: {string.Join(", ", moved.Take(MostMoved).Select(p => $"{p.Noted} {p.Real.Name}"))}{(moved.Count > MostMoved ? " and so on" : "")}.";
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
        return $"{line}: {TerminalText.Of(reading.Red)}{joined}{TerminalText.Of(reading.Black)} {reading.Value!.Text}";
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Percent(double share) => share is > 0 and < 0.001 ? "< 0.1 %" : (100 * share).ToString(share > 0.9995 || share < 0.0005 ? "0" : "0.0", CultureInfo.InvariantCulture) + " %";
}
