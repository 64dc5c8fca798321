using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Text;

namespace Schematic.Analysis.Wiring;

/// <summary>Two names of one kind that differ only in what the eye passes over: capitals, 0 and O, 1 and I and l.</summary>
public sealed class SimilarNamesCheck : ICheck
{
    private const string Rule = "similar-names";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Conflicts;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var panel = context.Panel;
        return
        [
            .. Compare("parts", SubjectKind.Part, panel.Parts.Select(p => (p.Designator, p.Span))),
            .. Compare("nets", SubjectKind.Net, panel.Nets.Select(n => (n.Name, n.Span))),
            .. Compare("wires", SubjectKind.Wire, panel.Wires.Select(w => (w.Designator, w.Span))),
            .. Compare("actuators", SubjectKind.Actuator, panel.Actuators.Select(a => (a.Name, a.Span))),
        ];
    }

    private static IEnumerable<Diagnostic> Compare(string kind, SubjectKind subject, IEnumerable<(string Name, SourceSpan Span)> names) =>
        from alike in names.DistinctBy(n => n.Name).GroupBy(n => Blurred(n.Name))
        let all = alike.ToImmutableArray()
        where all.Length > 1
        select new Diagnostic(
            Rule,
            Severity.Warning,
            $"The {kind} {NameList.Sentence(all.Select(a => a.Name))} are told apart by a detail that the eye passes over.",
            all[1].Span)
        {
            Subjects = [.. all.Select(a => new Subject(subject, a.Name))],
            Help = "If one thing is meant, write its name alike everywhere; if not, choose names that differ in sound.",
            Related = [new RelatedSpan(all[0].Span, $"{all[0].Name} is declared here")],
        };

    private static string Blurred(string name) => string.Create(name.Length, name, (letters, source) =>
    {
        for (var i = 0; i < letters.Length; i++)
        {
            letters[i] = char.ToLowerInvariant(source[i]) switch
            {
                'o' => '0',
                'i' or 'l' => '1',
                var other => other,
            };
        }
    });
}
