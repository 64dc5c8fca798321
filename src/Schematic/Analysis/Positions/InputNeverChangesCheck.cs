using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Positions;

/// <summary>
/// An input that is wired, directly or through contacts, to a supply or ground and reads the same in every position. Inputs that lead nowhere in
/// the file, and inputs whose constant level is stated by an <c>expect</c> without a condition, are left alone.
/// </summary>
public sealed class InputNeverChangesCheck : ICheck
{
    private const string Rule = "input-never-changes";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Positions;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var proof = context.Positions;
        if (context.Panel.Actuators.IsEmpty || proof.HasShort) yield break;
        var meant = context.Panel.Expectations.OfType<LevelExpectation>()
            .Where(e => e.When is AllCondition { Parts.IsEmpty: true }).Select(e => e.Input).ToHashSet();
        foreach (var input in proof.Circuit.Circuit.Inputs)
        {
            if (input.GroundNode < 0 || meant.Contains(input.Terminal) || !proof.Circuit.IsDecided(input)) continue;
            if (!LeadsSomewhere(proof, input)) continue;
            if (proof.States.CanReach(proof.BeyondLimit(input))) continue; // That is the finding.
            if (ConstantReading(proof, input) is not { } reading) continue;
            yield return new Diagnostic(Rule, Severity.Warning, $"{input.Terminal} {reading} in every position.", input.Board.Span)
            {
                Help = $"Check its wire, or state that it is meant so: 'expect {input.Terminal} {(reading.EndsWith("high", StringComparison.Ordinal) ? "high" : "low")}'.",
                Subjects = [About.Terminal(input.Terminal)],
                Trace = [.. proof.Explain(input, proof.States.Rest)],
            };
        }
    }

    private static string? ConstantReading(PositionProof proof, InputPoint input)
    {
        var store = proof.Circuit.Store;
        var (low, high) = (proof.Circuit.Reads(input, InputLevel.Low), proof.Circuit.Reads(input, InputLevel.High));
        var seesLow = proof.ComesAbout(store.And(proof.Working, low));
        var seesHigh = proof.ComesAbout(store.And(proof.Working, high));
        if (seesLow && seesHigh) return null;
        if (!seesLow && !seesHigh) return "reads neither low nor high";
        var other = store.AndNot(proof.Working, store.Or(low, high));
        if (proof.ComesAbout(other)) return null; // It does change, to something that is no level: an expectation tells.
        return seesLow ? "reads low" : "reads high";
    }

    private static bool LeadsSomewhere(PositionProof proof, InputPoint input)
    {
        var circuit = proof.Circuit.Circuit;
        var rails = proof.Circuit.Rails.Select(r => r.Node).ToHashSet();
        var seen = new HashSet<int> { input.Node };
        var waiting = new Stack<int>(seen);
        while (waiting.TryPop(out var node))
        {
            if (rails.Contains(node)) return true;
            foreach (var contact in circuit.ContactsAt(node))
                if (seen.Add(contact.Other(node))) waiting.Push(contact.Other(node));
            foreach (var element in circuit.ElementsAt(node).Where(e => e.Kind != ElementKind.Pull))
                if (element.Other(node) is var other && other >= 0 && seen.Add(other)) waiting.Push(other);
        }

        return false;
    }
}
