using System.Globalization;
using Schematic.Diagnostics;

namespace Schematic.Tests;

/// <summary>
/// The data of a trace in a short form for tests, which no wording of the program enters: what a hand does, the terminals that
/// a path passes with wires and nets in brackets, what stands how, what a fact is about with its figures.
/// </summary>
internal static class TraceData
{
    public static IEnumerable<string> Of(Diagnostic finding) => Of(finding.Trace);

    public static IEnumerable<string> Of(IEnumerable<TraceStep> steps)
    {
        var writer = new Writer();
        foreach (var step in steps) step.Accept(writer);
        return writer.Lines;
    }

    private sealed class Writer : ITraceVisitor
    {
        public List<string> Lines { get; } = [];

        public void Visit(MoveStep move) => Lines.Add($"{move.Action} {move.Actuator} {move.Position}");

        public void Visit(PathStep path) => Lines.Add("path " + string.Join(
            ' ', path.Hops.Select(h => h.Over is PathOver.Wire or PathOver.Net ? $"[{h.Name}] {h.To}" : h.To).Prepend(path.From)));

        public void Visit(StateStep state) => Lines.Add(
            state.Things.IsEmpty ? "rest" : "state " + string.Join(", ", state.Things.Select(t => $"{t.Name} {t.Stands}")));

        public void Visit(FactStep fact) => Lines.Add(string.Join(' ', new[] { "fact" }
            .Concat(fact.Subjects.Select(s => s.Name))
            .Concat(fact.Values.Select(v => $"{v.Name} {v.Value.ToString("0.0", CultureInfo.InvariantCulture)} {v.Unit}"))));
    }
}
