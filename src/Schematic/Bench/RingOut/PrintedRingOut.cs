using System.Collections.Immutable;
using System.Globalization;
using Schematic.Reports;

namespace Schematic.Bench.RingOut;

/// <summary>
/// A ring-out as a pack prints it: narrow, with a line or a box to fill in, what is done first above each and how to read it above the first. A black
/// lead that takes over what was under the leads before is told by what is added to it.
/// </summary>
internal static class PrintedRingOut
{
    private const string Box = "☐";
    private const string Line = "▂";

    /// <summary>
    /// The steps of one plan under headings of what is held and what the meter must show; it begins with what is done before any step.
    /// </summary>
    public static ReportTable Steps(RingOutPlan plan, IReadOnlyList<RingOutPlan> all) => new(
        $"Ring-out with power off: {RingOutList.SideWords(plan.Circuit)}",
        [new("step", "", ColumnAlign.Right), new("red", "Red"), new("black", "Black"), new("reading", "Shows", ColumnAlign.Centre)],
        [.. plan.Steps.SelectMany((_, i) => Rows(plan, i))])
    {
        // Lists flow to where they find room: each says for itself what is done first.
        Lead = plan == all[0] ? [First(all), .. Before(all)] : [First(all)],
        Notes =
        [
            .. RingOutList.Cautions(plan.Circuit).Except(Common(all)),
            $"{Number(plan.Steps.Length)} placements find {Number(plan.FoundCount)} of {Number(plan.FaultCount)} single faults.",
            .. RingOutList.Besides(plan),
            .. plan.Undecided.IsEmpty ? ImmutableArray<string>.Empty : [RingOutList.Limit(plan)],
            .. plan.IsCutDown ? ["So many contacts: of bridges and exchanges only neighbours were counted."] : ImmutableArray<string>.Empty,
        ],
    };

    private static string First(IReadOnlyList<RingOutPlan> plans) =>
        $"First: {string.Join(' ', Common(plans).Select((c, i) => $"{Number(i + 1)}. {c}"))}";

    /// <summary>How to read the lists.</summary>
    private static IEnumerable<string> Before(IReadOnlyList<RingOutPlan> plans)
    {
        var steps = plans.SelectMany(p => p.Steps).ToList();
        yield return "Contacts under one lead are clipped together; \"+\": clip that on as well and take nothing off. A position is held until the next one is named.";
        yield return $"Meter at ohms{(steps.Exists(s => s.Placement.Test == MeterTest.Diode) ? ", or at diode test where that is said (current from red to black)" : "")}. closed: up to 2 ohm without the leads; open: over range, in both cases tick. Else write what the meter shows.";
        if (!steps.TrueForAll(IsTicked)) yield return "Limits: a cold lamp a tenth of its hot resistance, and half to almost twice that; coils 13 % below to 15 % above.";
    }

    /// <summary>What is said of every plan.</summary>
    private static IEnumerable<string> Common(IReadOnlyList<RingOutPlan> plans) =>
        plans.Select(p => RingOutList.Cautions(p.Circuit)).Aggregate((a, b) => a.Intersect(b));

    /// <summary>A step, under a heading where what is held or what must show is not as before.</summary>
    private static IEnumerable<ImmutableArray<string>> Rows(RingOutPlan plan, int index)
    {
        var (circuit, step) = (plan.Circuit, plan.Steps[index]);
        var expected = Expected(step);
        if (index == 0 || step.Doing.Length > 0 || expected != Expected(plan.Steps[index - 1]))
        {
            var held = step.Move.Length == 0 ? "" : StandText.Describe(step.Placement.Stand, circuit.Actuators) + ": ";
            var turned = step.Turn.Length == 0 ? "" : step.Turn + ": ";
            yield return [$"{ReportTable.Across}{held}{turned}{expected}", "", "", ""];
        }

        yield return [Number(index + 1), TerminalText.Of(circuit, step.Placement.Red), Black(plan, index), IsTicked(step) ? Box : Line];
    }

    /// <summary>What is clipped to the black lead, or what is added to what was there before or under both leads.</summary>
    private static string Black(RingOutPlan plan, int index)
    {
        var black = plan.Steps[index].Placement.Black;
        var whole = TerminalText.Of(plan.Circuit, black);
        if (index == 0 || plan.Steps[index - 1].Placement is not { } before || before.Stand != plan.Steps[index].Placement.Stand) return whole;
        var added = black.Except(before.Black).ToList();
        if (before.Black.Except(black).Any() || added.Count == 0 || before.Black.Length < 2) return whole;
        return $"+ {TerminalText.Of(plan.Circuit, [.. added])}";
    }

    private static string Expected(RingOutStep step)
    {
        var meter = step.Placement.Test == MeterTest.Diode ? "diode test, " : "";
        return IsTicked(step) || step.Expected.Text == step.Expected.Limits ? meter + step.Expected.Text : $"{meter}{step.Expected.Text}: {WithoutFirstUnit(step.Expected.Limits)}";
    }

    /// <summary>Limits with a unit that both share said once: 34.4 to 128 ohm.</summary>
    private static string WithoutFirstUnit(string limits)
    {
        if (limits.Split(" to ") is not [var low, var high]) return limits;
        var unit = high[(high.LastIndexOf(' ') + 1)..];
        return low.EndsWith(" " + unit, StringComparison.Ordinal) ? $"{low[..^(unit.Length + 1)]} to {high}" : limits;
    }

    private static bool IsTicked(RingOutStep step) => step.Placement.Test == MeterTest.Ohms && step.Expected.Text is "open" or "closed";

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
