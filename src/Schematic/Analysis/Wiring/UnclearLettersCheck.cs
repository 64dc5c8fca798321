using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Wiring;

/// <summary>
/// Contact letters that are read as something else: I, O, Q, l and o, which the published letter sequence of round connectors
/// leaves out.
/// </summary>
public sealed class UnclearLettersCheck : ICheck
{
    private const string Rule = "unclear-letters";
    private const string Unclear = "IOQlo";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Conflicts;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) =>
        from connector in context.Panel.Parts.OfType<Connector>()
        let names = connector.Insert.Contacts.Select(c => c.Name).Where(IsUnclear).ToImmutableArray()
        where names.Length > 0
        select new Diagnostic(
            Rule,
            Severity.Warning,
            $"Contact letters of {connector.Designator} are easily misread: {NameList.Sentence(names)}.",
            connector.Span)
        {
            Help = "The published sequence leaves out I, O, Q, l and o; look at the part again, or write 'letters' to have the sequence.",
        };

    private static bool IsUnclear(string name) =>
        name.Length <= 2 && name.All(char.IsAsciiLetter) && name.Any(c => Unclear.Contains(c, StringComparison.Ordinal));
}
