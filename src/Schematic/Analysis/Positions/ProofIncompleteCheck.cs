using System.Collections.Immutable;
using Schematic.Analysis.States;
using Schematic.Diagnostics;

namespace Schematic.Analysis.Positions;

/// <summary>
/// Loads and inputs that too many switches bear upon at once for every case to be solved. Nothing is guessed about them: the
/// finding says what stays unproved.
/// </summary>
public sealed class ProofIncompleteCheck : ICheck
{
    private const string Rule = "proof-incomplete";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Positions;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var circuit = context.Positions.Circuit;
        var left = circuit.Circuit.Loads.Where(l => !circuit.IsDecided(l)).Select(l => (Name: l.Name, Subject: About.Part(l.Part), l.Part.Span))
            .Concat(circuit.Circuit.Inputs.Where(i => !circuit.IsDecided(i)).Select(i => (Name: i.Terminal.ToString(), Subject: About.Terminal(i.Terminal), i.Board.Span)))
            .ToImmutableArray();
        if (left.IsEmpty) yield break;
        yield return new Diagnostic(
            Rule,
            Severity.Warning,
            $"Not proved: {NameList.Sentence(left.Select(l => l.Name))}; more than {ConditionalCircuit.MostCases} electrically different cases meet there.",
            left[0].Span)
        {
            Subjects = [.. left.Select(l => l.Subject)],
            Help = "Many switches share a resistor or another load: prove this part with a meter, or describe it in parts.",
        };
    }
}
