using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;
using Schematic.Diagnostics;

namespace Schematic.Analysis.Positions;

/// <summary>
/// An input that in some position is brought to more than it stands. A lamp or coil on the way does not protect it; a divider
/// that keeps the voltage down does.
/// </summary>
public sealed class OverLimitInputCheck : ICheck
{
    private const string Rule = "over-limit-input";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Positions;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var proof = context.Positions;
        return proof.Circuit.Circuit.Inputs.Where(i => i.Input.MaxVolts is not null).Select(i => Find(proof, i)).OfType<Diagnostic>();
    }

    private static Diagnostic? Find(PositionProof proof, InputPoint input)
    {
        if (proof.FindAlsoInPassing(proof.BeyondLimit(input), proof.BeyondLimit(input, isSure: false)) is not { } seen) return null;
        var witness = seen.Witness;

        var most = input.Input.MaxVolts!.Value;
        var found = proof.CaseIn(proof.Circuit.CasesOf(input), witness.State)!;
        if (!found.Corners.IsEmpty) found = found.Corners.MaxBy(c => Math.Max((c.HighestVolts ?? 0) - most, -(c.LowestVolts ?? 0)))!;
        var isHigh = found.HighestVolts > most;
        var reached = isHigh ? found.HighestVolts!.Value : found.LowestVolts!.Value;
        var volts = PositionProof.Volts(reached);
        var ground = input.Board.At(input.Board.Grounds[0]);
        var (supply, path) = Driver(proof, input, witness.State, isHigh);
        return proof.Told(new Diagnostic(
            Rule,
            Severity.Error,
            $"{supply ?? "The circuit"} brings {input.Terminal} to {volts}{seen.InPassing}{(isHigh ? $"; the input stands {PositionProof.Volts(most)} at most." : ", below its ground.")}",
            input.Board.Span)
        {
            Help = "Keep the supply away from the input: use a pole of its own, switched to ground, or a divider.",
            Subjects = supply is null ? [About.Terminal(input.Terminal)] : [About.Terminal(input.Terminal), About.Part(supply)],
            Values = [About.Volts("reaches", reached), About.Volts("limit", isHigh ? most : 0)],
            Trace = proof.Trace(witness, path, new FactStep($"{input.Terminal} then stands at {volts} against {ground}")
            {
                Subjects = [About.Terminal(input.Terminal), About.Terminal(ground)], Values = [About.Volts("stands at", reached)],
            }),
        }, seen);
    }

    /// <summary>The supply that drives the input, and the way: of current if there is one, else of the joint.</summary>
    private static (string? Supply, PathStep? Path) Driver(PositionProof proof, InputPoint input, PanelState state, bool isHigh)
    {
        var ways =
            from supply in proof.Circuit.Circuit.Supplies
            from path in new[]
            {
                isHigh ? proof.Conducting(state, supply.From, input.Terminal) : proof.Conducting(state, input.Terminal, supply.To),
                proof.Joined(state, supply.From, input.Terminal),
                proof.Joined(state, supply.To, input.Terminal),
            }
            where path is not null
            select (supply.Name, path);
        return ways.FirstOrDefault();
    }
}
