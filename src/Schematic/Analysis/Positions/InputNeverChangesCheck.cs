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
            .Where(e => e.When.Leaves().All(c => c is SupplyCondition { On: true })).Select(e => e.Input).ToHashSet();
        foreach (var input in proof.Circuit.Circuit.Inputs)
        {
            if (input.GroundNode < 0 || meant.Contains(input.Terminal) || !proof.Circuit.IsDecided(input)) continue;
            if (!LeadsSomewhere(proof, input)) continue;
            if (proof.States.CanReach(proof.BeyondLimit(input))) continue; // That is the finding.
            if (ConstantReading(proof, input) is not { } reading) continue;
            yield return new Diagnostic(Rule, Severity.Warning, $"{input.Terminal} {Words(reading)} in every position.", input.Board.Span)
            {
                Help = Advice(input, reading),
                Subjects = [About.Terminal(input.Terminal)],
                Trace = [.. proof.Explain(input, proof.States.Rest)],
            };
        }
    }

    private enum Reading
    {
        Low,
        High,
        Neither,
    }

    private static string Words(Reading reading) => reading switch
    {
        Reading.Low => "reads low",
        Reading.High => "reads high",
        _ => "reads neither low nor high",
    };

    /// <summary>A claim is advised only where the proof accepts it; like this check it is asked with the supplies on.</summary>
    private static string Advice(InputPoint input, Reading reading)
    {
        if (reading == Reading.Neither)
            return $"Low is {PositionProof.Volts(LoadLimits.LowVolts(input.Input))} and less, high {PositionProof.Volts(LoadLimits.HighVolts(input.Input))} and more: change what holds {input.Terminal} between them, or state its levels if the board has others.";
        return $"Check its wire, or state that it is meant so: 'expect {input.Terminal} {Words(reading)[6..]}'.";
    }

    private static Reading? ConstantReading(PositionProof proof, InputPoint input)
    {
        var store = proof.Circuit.Store;
        var (low, high) = (proof.Circuit.Reads(input, InputLevel.Low), proof.Circuit.Reads(input, InputLevel.High));
        var seesLow = proof.ComesAbout(store.And(proof.Working, low));
        var seesHigh = proof.ComesAbout(store.And(proof.Working, high));
        if (seesLow && seesHigh) return null;
        if (!seesLow && !seesHigh) return Reading.Neither;
        var other = store.AndNot(proof.Working, store.Or(low, high));
        if (proof.ComesAbout(other)) return null; // It does change, to something that is no level: an expectation tells.
        return seesLow ? Reading.Low : Reading.High;
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
