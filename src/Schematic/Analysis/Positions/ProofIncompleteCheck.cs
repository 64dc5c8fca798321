using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Text;

namespace Schematic.Analysis.Positions;

/// <summary>
/// Loads and inputs that too many switches bear upon at once for every case to be solved, and relays with too many states to
/// search. Nothing is guessed about them: the finding says what stays unproved, and what hangs on it is told as possible.
/// </summary>
public sealed class ProofIncompleteCheck : ICheck
{
    /// <summary>The rule: whoever is told to accept what is not proved looks for it.</summary>
    public const string Rule = "proof-incomplete";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Positions;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var proof = context.Positions;
        var open = proof.Open();
        var whenTraced = open.Where(name => proof.IsOpenWhenTraced(name)).ToImmutableArray();
        if (!whenTraced.IsEmpty)
        {
            yield return new Diagnostic(
                Rule, Severity.Error, $"Not proved: {NameList.Sentence(whenTraced)}; more cases meet there than are told apart.", SpanOf(context, whenTraced[0]))
            {
                Subjects = [.. whenTraced.Select(SubjectOf)],
                Help = "Prove this part with a meter, or describe it in parts. --accept-unproved goes on without.",
            };
        }

        var others = open.Except(whenTraced).ToImmutableArray();
        if (others.IsEmpty) yield break;
        yield return new Diagnostic(
            Rule, Severity.Note, $"Not proved for every way to join what is not traced: {NameList.Sentence(others)}; more cases meet there than are told apart.", SpanOf(context, others[0]))
        {
            Subjects = [.. others.Select(SubjectOf)],
            Help = "Each contact that is traced leaves fewer ways.",
        };
    }

    private static Subject SubjectOf(string name) => new(name.Contains(':', StringComparison.Ordinal) ? SubjectKind.Terminal : SubjectKind.Part, name);

    private static SourceSpan SpanOf(AnalysisContext context, string name) => context.Part(name.Split(':')[0])?.Span ?? SourceSpan.None;
}
