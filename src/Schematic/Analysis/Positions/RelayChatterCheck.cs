using System.Collections.Immutable;
using Schematic.Analysis.States;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Positions;

/// <summary>Relays that in some position never come to rest: each state of theirs drives them into another.</summary>
public sealed class RelayChatterCheck : ICheck
{
    private const string Rule = "relay-chatter";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Positions;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var proof = context.Positions;
        foreach (var restless in proof.States.RestlessGroups())
        {
            if (proof.Find(restless) is not { } seen) continue;
            var witness = seen.Witness;
            var (names, steps) = Cycle(proof, witness.State);
            if (names.IsEmpty) names = CoilsOf(proof, restless);
            if (names.IsEmpty) continue;
            var first = proof.Circuit.Circuit.ElementOf(names[0])!;
            yield return proof.Told(new Diagnostic(
                Rule,
                Severity.Error,
                $"{NameList.Sentence(names)} {(names.Length == 1 ? "chatters" : "chatter")}: no state of rest exists in this position.",
                first.Part.Span)
            {
                Help = "A coil is fed through a contact that the coil itself opens. Feed it from another contact, or add a holding contact.",
                Subjects = [.. names.Select(About.Part)],
                Trace = [.. MoveText.Steps(proof.Circuit.Variables, witness.Moves), .. steps],
            }, seen);
        }
    }

    /// <summary>The coils on which a set of states hangs.</summary>
    private static ImmutableArray<string> CoilsOf(PositionProof proof, Diagram states) =>
    [
        .. proof.Circuit.Store.Support(states).Select(v => proof.Circuit.Variables.All[v]).Where(v => v.Kind == StateVariableKind.Coil)
            .Select(v => v.Name).Order(NaturalOrder.Comparer),
    ];

    /// <summary>Follows the relays from a restless state until a state comes back.</summary>
    private static (ImmutableArray<string> Names, ImmutableArray<TraceStep> Steps) Cycle(PositionProof proof, PanelState start)
    {
        var seen = new Dictionary<PanelState, int>();
        var steps = new List<(string Name, ImmutableArray<TraceStep> Told)>();
        var at = start;
        while (seen.TryAdd(at, steps.Count))
        {
            var variable = proof.States.FirstUnstable(at);
            if (variable < 0) return ([], []); // It hangs on what is not known whether any coil changes here.
            var name = proof.Circuit.Variables.All[variable].Name;
            var operates = at.Values[variable] == 0;
            var coil = proof.Circuit.Circuit.ElementOf(name)!;
            var isDelay = proof.Circuit.Variables.All[variable].Kind == StateVariableKind.Delay;
            var fact = new FactStep(isDelay ? $"the delayed contacts of {name} follow it" : name + (operates ? " operates" : " releases, its feed being open"))
            {
                Subjects = [About.Part(coil.Part)],
            };
            steps.Add((name, operates && !isDelay ? [fact, .. proof.Explain(coil, at).OfType<PathStep>()] : [fact]));
            at = new PanelState(at.Values.SetItem(variable, operates ? 1 : 0));
        }

        var cycle = steps.Skip(seen[at]).ToList();
        return (
            [.. cycle.Select(s => s.Name).Distinct().Order(NaturalOrder.Comparer)],
            [.. cycle.SelectMany(s => s.Told), new FactStep("and so on for ever")]);
    }
}
