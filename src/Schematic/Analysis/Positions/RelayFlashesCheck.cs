using System.Collections.Immutable;
using Schematic.Analysis.States;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Positions;

/// <summary>
/// Time-delay relays that never come to rest because their delays end and begin again: flashers, where that is meant, and relays
/// that open their own feed.
/// </summary>
public sealed class RelayFlashesCheck : ICheck
{
    private const string Rule = "relay-flashes";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Positions;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var proof = context.Positions;
        var told = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (relay, states) in proof.States.Recurring())
        {
            if (told.Contains(relay) || proof.Find(states) is not { } seen) continue;
            var round = proof.States.RoundOf(relay, states, seen.Witness.State);
            var waiting = round.Select(s => NameOf(proof, s.Wait)).Distinct().Order(NaturalOrder.Comparer).ToImmutableArray();
            told.UnionWith(waiting);
            yield return proof.Told(Finding(proof, waiting, round, seen), seen);
        }
    }

    private static Diagnostic Finding(
        PositionProof proof, ImmutableArray<string> waiting, ImmutableArray<(Move Wait, PanelState Then)> round, Sighting seen)
    {
        var relays = waiting.Select(n => (Relay)proof.Circuit.Circuit.ElementOf(n)!.Part).ToImmutableArray();
        var coils = CoilsThatMove(proof, round);
        var (severity, message) = coils.IsEmpty
            ? (Severity.Warning, $"{NameList.Sentence(waiting)} {(waiting.Length == 1 ? "lets" : "let")} go for a moment each time a delay ends, and {(waiting.Length == 1 ? "operates" : "operate")} again at once.")
            : (Severity.Note, $"{NameList.Sentence(coils)} {(coils.Length == 1 ? "flashes" : "flash")} while nobody touches anything{Rhythm(proof, round)}.");
        return new Diagnostic(Rule, severity, message, relays[0].Span)
        {
            Help = coils.IsEmpty
                ? "Its own delayed contact opens its feed, and only for as long as the relay takes to fall back. Feed the coil past that contact; a flasher takes a second delay."
                : "Meant as a flasher this is right. Otherwise feed the coil from a contact that does not follow it.",
            Subjects = [.. waiting.Select(About.Part)],
            Trace =
            [
                .. proof.Trace(seen.Witness),
                .. round.SelectMany(s => new[] { MoveText.Steps(proof.Circuit.Variables, [s.Wait])[0], MoveText.Describe(proof.Circuit.Variables, s.Then) }),
                new FactStep("and so on for ever"),
            ],
        };
    }

    /// <summary>How long a round takes, where every delay in it is known.</summary>
    private static string Rhythm(PositionProof proof, ImmutableArray<(Move Wait, PanelState Then)> round)
    {
        var delays = round.Select(s => DelayOf(proof, s.Wait)).ToImmutableArray();
        if (delays.Any(d => !d.IsKnown)) return "";
        return $": a round takes {new Delay(delays.Sum(d => d.LeastSeconds), delays.Sum(d => d.MostSeconds)).Text}";
    }

    private static Delay DelayOf(PositionProof proof, Move wait)
    {
        var relay = (Relay)proof.Circuit.Circuit.ElementOf(NameOf(proof, wait))!.Part;
        return (wait.To == 1 ? relay.OnDelay : relay.OffDelay) ?? Delay.Unknown;
    }

    private static ImmutableArray<string> CoilsThatMove(PositionProof proof, ImmutableArray<(Move Wait, PanelState Then)> round) =>
    [
        .. proof.Circuit.Variables.All
            .Where((v, i) => v.Kind == StateVariableKind.Coil && round.Select(s => s.Then.Values[i]).Distinct().Count() > 1)
            .Select(v => v.Name).Order(NaturalOrder.Comparer),
    ];

    private static string NameOf(PositionProof proof, Move wait) => proof.Circuit.Variables.All[wait.Variable].Name;
}
