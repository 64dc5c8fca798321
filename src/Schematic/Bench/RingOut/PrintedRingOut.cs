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
    private const string EachInTurn = "+ red before";

    /// <summary>Contacts that are touched one after the other in one row: so many boxes stand side by side.</summary>
    private const int MostInTurn = 4;

    /// <summary>
    /// The steps of one plan under headings of what is held and what the meter must show; it begins with what is done before any step.
    /// </summary>
    public static ReportTable Steps(RingOutPlan plan) => new(
        $"Ring-out of {RingOutList.ShortWords(plan.Circuit)}, power off",
        [new("step", "", ColumnAlign.Right), new("red", "Red"), new("black", "Black"), new("reading", "Shows", ColumnAlign.Centre)],
        [.. Rows(plan)])
    {
        // Lists flow to where they find room: each says for itself what is done first and how it is read.
        Lead = [First(plan), .. Before(plan)],
        Notes =
        [
            $"{Number(plan.Steps.Length)} placements find {Number(plan.FoundCount)} of {Number(plan.FaultCount)} single faults.",
            .. RingOutList.Besides(plan),
            .. plan.Undecided.IsEmpty ? ImmutableArray<string>.Empty : [RingOutList.Limit(plan)],
            .. plan.IsCutDown ? ["So many contacts: of bridges and exchanges only neighbours were counted."] : ImmutableArray<string>.Empty,
        ],
    };

    private static string First(RingOutPlan plan) =>
        $"First: {string.Join(' ', RingOutList.Cautions(plan.Circuit).Select((c, i) => $"{Number(i + 1)}. {c}"))}";

    /// <summary>How to read the list.</summary>
    private static IEnumerable<string> Before(RingOutPlan plan)
    {
        var steps = plan.Steps;
        yield return "Contacts under one lead are clipped together; \"+\": clip that on as well and take nothing off. A position is held until the next one is named.";
        if (Enumerable.Range(0, steps.Length).Any(i => LastInTurn(plan, i) > i))
            yield return $"\"{EachInTurn}\": clip to black as well what red touched before, then touch red to the next contact of the row; a box each.";
        yield return $"Meter at ohms{(steps.Any(s => s.Placement.Test == MeterTest.Diode) ? ", or at diode test where that is said (current from red to black)" : "")}. closed: up to 2 ohm without the leads; open: over range, in both cases tick. Else write what the meter shows.";
        if (!steps.All(IsTicked)) yield return $"Limits: {RingOutList.LimitWords(plan.Circuit)}the meter's own error besides.";
    }

    /// <summary>
    /// The steps, under headings where what is held or what must show is not as before. Where red goes on to the next contact and
    /// black takes over the one before, and the meter must show the same, several share a row with a box each.
    /// </summary>
    private static IEnumerable<ImmutableArray<string>> Rows(RingOutPlan plan)
    {
        for (var first = 0; first < plan.Steps.Length;)
        {
            if (Heading(plan, first) is { } heading) yield return [ReportTable.Across + heading, "", "", ""];
            var last = LastInTurn(plan, first);
            yield return first == last ? Row(plan, first) : Together(plan, first, last);
            first = last + 1;
        }
    }

    /// <summary>What is held and what must show from this step on; null where it is as before.</summary>
    private static string? Heading(RingOutPlan plan, int index)
    {
        var step = plan.Steps[index];
        var expected = Expected(step);
        if (index > 0 && step.Doing.Length == 0 && expected == Expected(plan.Steps[index - 1])) return null;
        var held = step.Move.Length == 0 ? "" : StandText.Describe(step.Placement.Stand, plan.Circuit.Actuators) + ": ";
        var turned = step.Turn.Length == 0 ? "" : step.Turn + ": ";
        return held + turned + expected;
    }

    private static ImmutableArray<string> Row(RingOutPlan plan, int index)
    {
        var step = plan.Steps[index];
        return [Number(index + 1), TerminalText.Of(plan.Circuit, step.Placement.Red), Black(plan, index), IsTicked(step) ? Box : Line];
    }

    private static ImmutableArray<string> Together(RingOutPlan plan, int first, int last)
    {
        var reds = Enumerable.Range(first, last - first + 1).Select(i => plan.Steps[i].Placement.Red[0]).ToImmutableArray();
        return [$"{Number(first + 1)}..{Number(last + 1)}", TerminalText.Of(plan.Circuit, reds), EachInTurn, string.Concat(Enumerable.Repeat(Box, reds.Length))];
    }

    /// <summary>The last step that can share a row with this one; the step itself where none can.</summary>
    private static int LastInTurn(RingOutPlan plan, int first)
    {
        var last = first;
        if (!IsInTurn(plan, first)) return first;
        while (last + 1 < plan.Steps.Length && last + 1 - first < MostInTurn && Heading(plan, last + 1) is null && IsInTurn(plan, last + 1)
            && plan.Steps[last].Placement.Red[0] != plan.Circuit.FrameNumber && plan.Steps[last].Placement.Red[0] < plan.Steps[last + 1].Placement.Red[0]) last++;
        return last;
    }

    /// <summary>Whether a step only goes on: one contact under red, under black what both leads had before.</summary>
    private static bool IsInTurn(RingOutPlan plan, int index)
    {
        if (index == 0 || plan.Steps[index].Placement is not { Red.Length: 1 } placement || !IsTicked(plan.Steps[index])) return false;
        var before = plan.Steps[index - 1].Placement;
        return before.Stand == placement.Stand && placement.Black.Order().SequenceEqual(before.Black.Concat(before.Red).Order());
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
