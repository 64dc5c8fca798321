using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Positions;

/// <summary>
/// Keypads on which pressed keys make another seem pressed: three at the corners of a rectangle join the row and the column of the
/// fourth. Told once a keypad.
/// </summary>
public sealed class GhostKeyCheck : ICheck
{
    private const string Rule = "ghost-key";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Positions;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        foreach (var keypad in context.Panel.Parts.OfType<Keypad>())
        {
            var read = context.Positions.Circuit.Circuit.Contacts
                .Where(c => c.Part == keypad && context.IsUsed(c.Common) && context.IsUsed(c.Throw) && c.CommonNode != c.ThrowNode).ToList();
            var ghosts = read.Where(c => context.Positions.States.CanReach(SeemsClosed(context.Positions, c))).ToList();
            if (ghosts.Count > 0 && Finding(context.Positions, keypad, ghosts) is { } finding) yield return finding;
        }
    }

    /// <summary>When a key is not pressed and its row meets its column all the same.</summary>
    private static Diagram SeemsClosed(PositionProof proof, Contact key) =>
        proof.Circuit.Store.AndNot(proof.Circuit.JoinedFrom(key.CommonNode)[key.ThrowNode], proof.Circuit.Closed(key));

    private static Diagnostic? Finding(PositionProof proof, Keypad keypad, List<Contact> ghosts)
    {
        var first = ghosts[0];
        if (proof.Find(SeemsClosed(proof, first)) is not { } seen) return null;
        var pressed = keypad.Keys.Where(k => IsPressed(proof, seen.Witness.State, k.ActuatorOn(keypad.Designator))).Select(k => k.Name).ToImmutableArray();
        var others = ghosts.Count - 1;
        return proof.Told(
            new Diagnostic(
                Rule, Severity.Note,
                $"On {keypad.Designator} the keys {NameList.Sentence(pressed)} together read as {first.Label} too{(others > 0 ? $"; likewise {others} more {(others == 1 ? "key" : "keys")}" : "")}.", keypad.Span)
            {
                Help = "Read one key at a time, or put a diode in series with each key where several are to be told apart.",
                Subjects = [About.Part(keypad)],
                Trace = proof.Trace(seen.Witness, proof.Joined(seen.Witness.State, first.Common, first.Throw)),
            }, seen);
    }

    private static bool IsPressed(PositionProof proof, PanelState state, string key) =>
        proof.Circuit.Variables.IndexOf(StateVariableKind.Actuator, key) is >= 0 and var variable && state.Values[variable] == 1;
}
