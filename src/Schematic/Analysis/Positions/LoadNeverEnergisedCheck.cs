using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;
using Schematic.Diagnostics;

namespace Schematic.Analysis.Positions;

/// <summary>A load that hangs on a supply with one end at least, and that no reachable position feeds.</summary>
public sealed class LoadNeverEnergisedCheck : ICheck
{
    private const string Rule = "load-never-energised";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Positions;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var proof = context.Positions;
        if (proof.HasShort) yield break;
        foreach (var load in proof.Circuit.Circuit.Loads)
        {
            // One that is fed and gets too little is told by load-too-weak, and what follows with it.
            if (!proof.Circuit.IsDecided(load) || proof.EverWorks(load) || context.Weak.Explains(load)) continue;
            if (!HangsOnSupply(proof, load)) continue;
            yield return new Diagnostic(Rule, Severity.Warning, $"{load.Name} is never energised: no position feeds both its ends.", load.Part.Span)
            {
                Help = $"Follow {load.From} and {load.To} to the supply: one of them lacks its feed or its return.",
                Subjects = [About.Part(load.Part)],
                Trace = [.. Ends(proof, load)],
            };
        }
    }

    /// <summary>For each end of the load the moves after which it meets a supply, and the path; or that it never does.</summary>
    private static IEnumerable<TraceStep> Ends(PositionProof proof, Element load)
    {
        foreach (var end in new[] { load.From, load.To })
        {
            var met = proof.Circuit.Rails.Where(r => r.Supply is not null)
                .Select(r => (Rail: r, Witness: proof.States.Nearest(proof.Circuit.Tied(r, proof.Circuit.Circuit.NodeOf(end)))))
                .FirstOrDefault(p => p.Witness is not null);
            if (met.Witness is not { } witness)
            {
                yield return new FactStep($"{end} meets no supply in any position") { Subjects = [About.Terminal(end)] };
                continue;
            }

            foreach (var step in MoveText.Steps(proof.Circuit.Variables, witness.Moves)) yield return step;
            if (proof.Joined(witness.State, met.Rail.Terminal, end) is { } path) yield return path;
        }
    }

    private static bool HangsOnSupply(PositionProof proof, Element load)
    {
        var circuit = proof.Circuit.Circuit;
        var rails = proof.Circuit.Rails.Where(r => r.Supply is not null).Select(r => r.Node).ToHashSet();
        var seen = new HashSet<int>(new[] { load.FromNode, load.ToNode }.Where(n => n >= 0));
        var waiting = new Stack<int>(seen);
        while (waiting.TryPop(out var node))
        {
            if (rails.Contains(node)) return true;
            foreach (var contact in circuit.ContactsAt(node))
                if (seen.Add(contact.Other(node))) waiting.Push(contact.Other(node));
            foreach (var element in circuit.ElementsAt(node).Where(e => e.Kind is ElementKind.Resistor or ElementKind.Diode))
                if (element.Other(node) is var other && other >= 0 && seen.Add(other)) waiting.Push(other);
        }

        return false;
    }
}
