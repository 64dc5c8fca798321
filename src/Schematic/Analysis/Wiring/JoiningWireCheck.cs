using System.Collections.Immutable;
using Schematic.Diagnostics;

namespace Schematic.Analysis.Wiring;

/// <summary>A wire, or a chain of wires, that joins two nets which the file keeps apart.</summary>
public sealed class JoiningWireCheck : ICheck
{
    private const string Rule = "joining-wire";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Conflicts;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) =>
        context.Nets.Conflicts.Where(c => c.Kind == NetConflictKind.Wire).Select(Report);

    private static Diagnostic Report(NetConflict conflict)
    {
        var names = conflict.Wires.Select(w => w.Designator).ToImmutableArray();
        var subject = names.Length == 1 ? $"Wire {names[0]} joins" : $"Wires {NameList.Sentence(names)} join";
        return new Diagnostic(
            Rule,
            Severity.Error,
            $"{subject} the nets {conflict.First.Name} and {conflict.Second.Name}.",
            conflict.Wires[0].Span)
        {
            Subjects = [.. conflict.Wires.Select(About.Wire), About.Net(conflict.First), About.Net(conflict.Second)],
            Help = names.Length == 2
                ? $"{names[0]} and {names[1]} look swapped: exchange one end of each."
                : "Move the end that is on the wrong contact, or write the two nets as one if they belong together.",
            Related =
            [
                .. conflict.Wires.Skip(1).Select(w => new RelatedSpan(w.Span, $"wire {w.Designator}")),
                new RelatedSpan(conflict.First.Span, $"net {conflict.First.Name}"),
                new RelatedSpan(conflict.Second.Span, $"net {conflict.Second.Name}"),
            ],
            Trace = conflict.Wires.Length > 1
                ? [.. conflict.Wires.Select(w => new PathStep(w.From.ToString(), [new PathHop(PathOver.Wire, w.Designator, w.To.ToString())]))]
                : [conflict.Path.Step],
        };
    }
}
