using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Positions;

/// <summary>What an <c>expect</c> says, as a condition.</summary>
/// <param name="Text">The claim in words.</param>
/// <param name="Holds">When it surely holds.</param>
/// <param name="MayHold">When it may hold.</param>
/// <param name="Subjects">What it is about.</param>
/// <param name="Explain">What a state shows of it.</param>
internal sealed record Claim(
    string Text, Diagram Holds, Diagram MayHold, ImmutableArray<Subject> Subjects, Func<PanelState, IEnumerable<TraceStep>> Explain)
{
    /// <summary>The claim of a statement; null where what it speaks of is not there, and for what the check of <c>never</c> proves.</summary>
    public static Claim? Of(PositionProof proof, Expectation expectation) => expectation.Accept(new Reader(proof));

    /// <summary>The nearest state that refutes the claim, or may; null when it is proved.</summary>
    public Sighting? Refuted(PositionProof proof, Expectation expectation)
    {
        var store = proof.Circuit.Store;
        var whole = store.Not(proof.Circuit.AnyShort);
        Question Broken(bool perhaps)
        {
            var (asked, fails) = (proof.Asked(expectation.When, perhaps), store.AndNot(whole, perhaps ? Holds : MayHold));
            return new Question(store.And(asked, fails))
            {
                InPassing = expectation.IsInPassing ? fails : Diagram.Never, Asked = asked, OpensToo = true,
            };
        }

        return proof.Find(Broken(perhaps: false), Broken(perhaps: true));
    }

    private sealed class Reader(PositionProof proof) : IExpectationVisitor<Claim?>
    {
        private readonly ConditionalCircuit _circuit = proof.Circuit;

        public Claim? Visit(LevelExpectation level)
        {
            if (_circuit.Circuit.Inputs.FirstOrDefault(i => i.Terminal == level.Input) is not { GroundNode: >= 0 } input) return null;
            var reads = _circuit.ReadsAtEverySetting(input, level.Level);
            return new Claim(
                $"{level.Input} {(level.Level == InputLevel.Low ? "low" : "high")}",
                reads,
                _circuit.Store.Or(reads, _circuit.Undecided(input)),
                [About.Terminal(level.Input)],
                state => [.. proof.Explain(input, state), .. SettingLine(input, level.Level, state)]);
        }

        /// <summary>What the input stands at when the claim holds as supplies are set and fails at another setting.</summary>
        private IEnumerable<TraceStep> SettingLine(InputPoint input, InputLevel level, PanelState state)
        {
            if (!_circuit.Store.Holds(_circuit.Reads(input, level), state.Values)) yield break;
            if (proof.CaseIn(_circuit.CasesOf(input), state) is not { LowestVolts: { } low, HighestVolts: { } high }) yield break;
            var supplies = NameList.Sentence(_circuit.Circuit.Supplies.Where(s => s.Source!.IsAdjustable).Select(s => s.Name));
            yield return new FactStep($"over the settings of {supplies} it stands at {PositionProof.Volts(low)} to {PositionProof.Volts(high)}; "
                + (level == InputLevel.Low ? $"low is up to {PositionProof.Volts(LoadLimits.LowVolts(input.Input))}" : $"high is from {PositionProof.Volts(LoadLimits.HighVolts(input.Input))}"))
            {
                Subjects = [About.Terminal(input.Terminal)], Values = [About.Volts("lowest", low), About.Volts("highest", high)],
            };
        }

        public Claim? Visit(EnergisedExpectation energised)
        {
            if (_circuit.Circuit.ElementOf(energised.Part) is not { IsLoad: true } load) return null;
            var (holds, mayHold) = (_circuit.Energised(load), _circuit.MayBeEnergised(load));
            return new Claim(
                $"{energised.Part} {(energised.Energised ? "energised" : "released")}",
                energised.Energised ? holds : _circuit.Store.Not(mayHold),
                energised.Energised ? mayHold : _circuit.Store.Not(holds),
                [About.Part(load.Part)],
                state => proof.Explain(load, state));
        }

        public Claim? Visit(ContinuityExpectation continuity)
        {
            var (from, to) = (_circuit.Circuit.NodeOf(continuity.From), _circuit.Circuit.NodeOf(continuity.To));
            if (from < 0 || to < 0) return null;
            var joined = _circuit.JoinedFrom(from)[to];
            var mayBe = _circuit.MayBeJoined(from, to);
            var holds = continuity.Closed ? joined : _circuit.Store.Not(mayBe);
            var mayHold = continuity.Closed ? mayBe : _circuit.Store.Not(joined);
            ImmutableArray<Subject> ends = [About.Terminal(continuity.From), About.Terminal(continuity.To)];
            return new Claim(
                $"{continuity.From} {(continuity.Closed ? "closed" : "open")} to {continuity.To}",
                holds,
                mayHold,
                ends,
                state => [proof.Joined(state, continuity.From, continuity.To)
                    ?? (TraceStep)new FactStep($"no closed path from {continuity.From} to {continuity.To}") { Subjects = ends }]);
        }

        public Claim? Visit(NeverExpectation never) => null;
    }
}
