using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;
using Schematic.Model;

namespace Schematic.Reports;

/// <summary>
/// What software has to know about each input that is wired: its meaning, the contact it comes from, the level that counts
/// as active, and the positions in which it surely reads low or high.
/// </summary>
public static class SignalList
{
    private const string Otherwise = "otherwise";
    private const string NotKnown = "?";

    // What is longer is said as the other cases where a sheet is printed: so many letters.
    private const int LongestSaid = 28;

    private static readonly ImmutableArray<ReportColumn> Columns =
    [
        new("input", "Input"),
        new("meaning", "Meaning"),
        new("wired_to", "Wired to"),
        new("at_rest", "At rest", ColumnAlign.Centre),
        new("active", "Active", ColumnAlign.Centre),
        new("low_when", "Low when"),
        new("high_when", "High when"),
        new("neither_when", "Neither when"),
    ];

    /// <summary>Builds the list; inputs that no wire or net reaches are named in a note.</summary>
    public static ReportTable Build(AnalysisContext context)
    {
        var inputs = context.Panel.Parts.OfType<Board>().Any() ? context.Positions.Circuit.Circuit.Inputs : [];
        var used = inputs.Where(i => context.IsInHarness(i.Terminal)).ToList();
        var unused = context.Panel.Parts.OfType<Board>().SelectMany(b => UnusedRuns(context, b)).ToList();
        return new ReportTable("Signal list", Columns, [.. used.Select(i => Row(context, i))])
        {
            Notes =
            [
                .. used.Any(i => HangsOnUnknown(context, i)) ? ["?: what is not traced or not known decides; nothing is proved of that level."] : Array.Empty<string>(),
                "Levels are proved for every position that can be reached. Positions marked (hold) spring back when let go: read them often enough.",
                "Active: the level that a closed contact gives: low at an input with a pull-up, high at one with a pull-down or none.",
                .. unused.Count > 0 ? [$"Not wired: {string.Join(", ", unused)}."] : Array.Empty<string>(),
            ],
        };
    }

    /// <summary>What a pack prints: the longest of what is said of a level is called the other cases.</summary>
    public static ReportTable BuildPrinted(AnalysisContext context)
    {
        var table = Build(context);
        ImmutableArray<int> levels = [.. Enumerable.Range(0, table.Columns.Length).Where(i => table.Columns[i].Key.EndsWith("_when", StringComparison.Ordinal))];
        ImmutableArray<string> Short(ImmutableArray<string> row)
        {
            var longest = levels.MaxBy(i => row[i].Length);
            return levels.Count(i => row[i].Length > 0) > 1 && row[longest].Length > LongestSaid ? row.SetItem(longest, Otherwise) : row;
        }

        return table with { Rows = [.. table.Rows.Select(Short)] };
    }

    /// <summary>Inputs that nothing reaches, runs drawn together as the language writes them: <c>A1:IN5..IN16</c>.</summary>
    private static IEnumerable<string> UnusedRuns(AnalysisContext context, Board board)
    {
        for (var i = 0; i < board.Inputs.Length; i++)
        {
            if (context.IsInHarness(board.At(board.Inputs[i].Terminal))) continue;
            var first = i;
            while (i + 1 < board.Inputs.Length && !context.IsInHarness(board.At(board.Inputs[i + 1].Terminal))) i++;
            var name = board.At(board.Inputs[first].Terminal).ToString();
            yield return i == first ? name : $"{name}..{board.Inputs[i].Terminal}";
        }
    }

    private static ImmutableArray<string> Row(AnalysisContext context, InputPoint input)
    {
        var states = context.Positions.States;
        var circuit = context.Positions.Circuit;
        var store = circuit.Store;
        var undecided = circuit.Undecided(input);
        var hangs = HangsOnUnknown(context, input);
        // Sure is what is so whatever is joined where nobody has traced it.
        Diagram Sure(Diagram level) => hangs ? store.AndNot(store.Not(store.Exists(store.Not(level), v => IsUnknown(context, v))), undecided) : level;
        var (low, high) = (Sure(circuit.Reads(input, InputLevel.Low)), Sure(circuit.Reads(input, InputLevel.High)));
        var neither = Sure(store.Not(store.Or(circuit.Reads(input, InputLevel.Low), circuit.Reads(input, InputLevel.High))));
        var asked = store.Support(low).Union(store.Support(high));
        string Said(Diagram level) => When(context, asked, level) is { Length: > 0 } words ? words : hangs ? NotKnown : "";
        return
        [
            input.Terminal.ToString(), input.Input.Meaning, WiredTo(context, input.Terminal),
            store.Holds(low, states.Rest.Values) ? "low" : store.Holds(high, states.Rest.Values) ? "high" : hangs && !store.Holds(neither, states.Rest.Values) ? NotKnown : "neither",
            input.Input.PullUpVolts is not null ? "low" : "high",
            Said(low), Said(high), When(context, asked, neither),
        ];
    }

    /// <summary>Whether what an input reads hangs anywhere on what is not traced or not known.</summary>
    private static bool HangsOnUnknown(AnalysisContext context, InputPoint input)
    {
        var circuit = context.Positions.Circuit;
        return !circuit.Undecided(input).IsNever
            || circuit.Store.Support(circuit.Reads(input, InputLevel.Low)).Union(circuit.Store.Support(circuit.Reads(input, InputLevel.High))).Any(v => IsUnknown(context, v));
    }

    private static bool IsUnknown(AnalysisContext context, int variable) =>
        context.Positions.Circuit.Variables.All[variable].Kind == StateVariableKind.Unknown;

    /// <summary>The nearest connector contacts that wires and nets lead to, mated halves left away.</summary>
    private static string WiredTo(AnalysisContext context, TerminalId input)
    {
        var ends = context.WiresAt(input).Select(w => w.From == input ? w.To : w.From)
            .Concat(context.NetsAt(input).SelectMany(n => n.Members.Select(m => m.Terminal)))
            .Where(t => t != input && context.Part(t.Part) is Connector).Distinct().Order();
        return string.Join(" ", ends);
    }

    /// <summary>
    /// The combinations of those variables in which the condition holds for sure, in words. Values of one variable are drawn
    /// together where nothing else matters, and a variable that does not matter is left out.
    /// </summary>
    private static string When(AnalysisContext context, ImmutableSortedSet<int> asked, Diagram condition)
    {
        var words = new ConditionWords(context, [.. asked]);
        return words.Of(condition) is not { } found ? "see the contact chart"
            : found.IsEmpty ? "" : found[0].Length == 0 ? "always" : string.Join("; ", found);
    }
}
