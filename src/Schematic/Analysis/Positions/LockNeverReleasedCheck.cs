using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;
using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Analysis.Positions;

/// <summary>A lock whose release never holds while the actuator stands where it is locked.</summary>
public sealed class LockNeverReleasedCheck : ICheck
{
    private const string Rule = "lock-never-released";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Positions;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var proof = context.Positions;
        foreach (var stuck in proof.StuckLocks.Where(s => !context.Weak.Explains(s.Lock)).GroupBy(s => s.Lock))
        {
            var position = stuck.First().Position;
            var here = proof.Circuit.Compile(new PositionCondition(stuck.Key.Actuator, [position], SourceSpan.None));
            var witness = proof.States.Nearest(here)!;
            var loads = stuck.Key.Release.Leaves().OfType<EnergisedCondition>()
                .Select(e => proof.Circuit.Circuit.ElementOf(e.Part)).OfType<Element>().ToImmutableArray();
            if (loads.FirstOrDefault(l => IsNotWired(context, l)) is { } unwired)
            {
                yield return new Diagnostic(
                    Rule, Severity.Note, $"Nothing releases the lock of {stuck.Key.Actuator} at {NameList.Sentence(stuck.Select(s => s.Position))} yet: {unwired.Name} is not wired.", stuck.Key.Span)
                {
                    Help = $"Lead wires to {unwired.From} and {unwired.To}; then check again.",
                    Subjects = [About.Actuator(stuck.Key.Actuator), About.Part(unwired.Part)],
                };
                continue;
            }

            yield return new Diagnostic(
                Rule,
                Severity.Error,
                $"{stuck.Key.Actuator} can never leave {NameList.Sentence(stuck.Select(s => s.Position))}: nothing releases its lock there.",
                stuck.Key.Span)
            {
                Help = Advice(proof, stuck.Key, position, here, loads),
                Subjects = [About.Actuator(stuck.Key.Actuator), .. loads.Select(l => About.Part(l.Part))],
                Trace = proof.Trace(witness, [.. loads.SelectMany(l => proof.Explain(l, witness.State))]),
            };
        }
    }

    /// <summary>Whether no harness comes to either of its ends yet: a unit is traced before anything is wired to it.</summary>
    private static bool IsNotWired(AnalysisContext context, Element load) => new[] { load.FromNode, load.ToNode }
        .All(n => n >= 0 && context.Positions.Circuit.Circuit.ContactsAt(n).IsEmpty && !context.Positions.Circuit.Circuit.TerminalsOf(n).Any(context.IsInHarness));

    /// <summary>
    /// What would release it: the contacts of the release's own circuit that are never closed while the actuator stands locked are the
    /// ones to pass by. Where there is none, the circuit has no way to the supply at all.
    /// </summary>
    private static string Advice(
        PositionProof proof, ActuatorLock stuck, string position, Diagram here, ImmutableArray<Element> loads)
    {
        if (loads.IsEmpty) return $"Check what the lock names: none of it comes about while {stuck.Actuator} stands at {position}.";
        var open = loads.SelectMany(l => proof.Circuit.Circuit.ContactsAround(l))
            .Where(c => !proof.States.CanReach(proof.Circuit.Store.And(here, proof.Circuit.Closed(c))))
            .Select(c => c.Part.Designator).Distinct().ToImmutableArray();
        var names = NameList.Sentence(loads.Select(l => l.Name));
        return open.IsEmpty
            ? $"Lead the supply to {names}: follow {NameList.Sentence(loads.SelectMany(l => new[] { l.From.ToString(), l.To.ToString() }))} to find which end lacks it."
            : $"{NameList.Sentence(open)} {(open.Length == 1 ? "is" : "are")} never closed while {stuck.Actuator} stands at {position}: feed {names} past {(open.Length == 1 ? "it" : "them")}, from a contact that is closed there.";
    }
}
