using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
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
                .Select(e => proof.Circuit.Circuit.ElementOf(e.Part)).OfType<Element>();
            yield return new Diagnostic(
                Rule,
                Severity.Error,
                $"{stuck.Key.Actuator} can never leave {NameList.Sentence(stuck.Select(s => s.Position))}: nothing releases its lock there.",
                stuck.Key.Span)
            {
                Help = "Feed the release from a contact that is closed while the actuator stands locked, or add a release button.",
                Subjects = [About.Actuator(stuck.Key.Actuator), .. loads.Select(l => About.Part(l.Part))],
                Trace = proof.Trace(witness, [.. loads.SelectMany(l => proof.Explain(l, witness.State))]),
            };
        }
    }
}
