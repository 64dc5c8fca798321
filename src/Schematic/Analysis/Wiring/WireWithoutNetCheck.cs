using System.Collections.Immutable;
using Schematic.Diagnostics;

namespace Schematic.Analysis.Wiring;

/// <summary>Wires that touch no net, in a file that states nets: nothing says what they should do. One note for all of them.</summary>
public sealed class WireWithoutNetCheck : ICheck
{
    private const string Rule = "wire-without-net";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Gaps;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        if (context.Panel.Nets.Length == 0) yield break;
        var graph = context.Connectivity.ByWires;
        var stated = context.Panel.Nets.SelectMany(n => n.Members).Select(m => graph.ConductorOf(m.Terminal)).ToHashSet();
        var loose = context.Panel.Wires.Where(w => !stated.Contains(graph.ConductorOf(w.From))).ToImmutableArray();
        if (loose.Length == 0) yield break;
        var subject = loose.Length == 1 ? $"Wire {loose[0].Designator} belongs" : $"Wires {NameList.Sentence(loose.Select(w => w.Designator))} belong";
        yield return new Diagnostic(
            Rule, Severity.Note, $"{subject} to no stated net, so there is nothing to compare with.", loose[0].Span)
        {
            Subjects = [.. loose.Select(About.Wire)],
            Help = "State the nets of these wires too and a slip in either will be found.",
        };
    }
}
