using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Schematic.Diagnostics;
using Schematic.Editor;
using Schematic.Text;

namespace Schematic.Cli.LanguageServer;

/// <summary>The library's answers in the words of the protocol; its numbers are those of the specification.</summary>
internal static class Conversion
{
    private const string SourceName = "schematic";

    /// <summary>A finding; its help and its path to follow stand below the sentence.</summary>
    public static LspDiagnostic Diagnostic(Diagnostic finding, Func<string, string> uriOf)
    {
        var text = new StringBuilder(finding.Message);
        if (finding.Help is { } help) text.Append('\n').Append(help);
        foreach (var step in finding.Trace) text.Append(CultureInfo.InvariantCulture, $"\n{step.Label}: {step}");
        foreach (var assumed in finding.Assumed) text.Append(CultureInfo.InvariantCulture, $"\nassumed: {assumed}");
        var related = finding.Related.Where(r => r.Span.Source.FileName.Length > 0)
            .Select(r => new DiagnosticRelatedInformation(new Location(uriOf(r.Span.Source.FileName), Places.RangeOf(r.Span)), r.Message)).ToImmutableArray();
        return new LspDiagnostic(
            Places.RangeOf(finding.Span), SeverityOf(finding.Severity), finding.Rule, SourceName, text.ToString(), related.IsEmpty ? null : related);
    }

    private static int SeverityOf(Severity severity) => severity switch
    {
        Severity.Error => 1,
        Severity.Warning => 2,
        _ => 3,
    };

    /// <summary>A proposal.</summary>
    public static CompletionItem Item(Proposal proposal, int index, SourceText source) => new(
        proposal.Word, KindOf(proposal.Kind), proposal.Detail.Length == 0 ? null : proposal.Detail,
        index.ToString("D5", CultureInfo.InvariantCulture), new TextEdit(Places.RangeOf(source, proposal.Replaces), proposal.Word));

    private static int KindOf(ProposalKind kind) => kind switch
    {
        ProposalKind.Keyword => 14,
        ProposalKind.Name => 6,
        ProposalKind.Contact => 5,
        ProposalKind.State => 20,
        ProposalKind.Unit => 11,
        ProposalKind.Colour => 16,
        ProposalKind.File => 17,
        _ => 1,
    };

    /// <summary>An entry of the outline; characters that cannot be seen are written out, as in every list.</summary>
    public static DocumentSymbol Symbol(OutlineEntry entry, SourceText source) => new(
        HiddenCharacters.Show(entry.Name), HiddenCharacters.Show(entry.Detail.Length == 0 ? entry.Kind : $"{entry.Kind}, {entry.Detail}"), SymbolOf(entry.Kind),
        Places.RangeOf(source, entry.Span), Places.RangeOf(source, entry.NameSpan), [.. entry.Children.Select(c => Symbol(c, source))]);

    private static int SymbolOf(string kind) => kind switch
    {
        "connector" => 11,
        "actuator" => 10,
        "position" => 22,
        "wire" or "cable" or "core" or "screen" => 25,
        "net" => 3,
        "use" => 2,
        _ => 19,
    };

    /// <summary>Changes, file by file.</summary>
    public static WorkspaceEdit Edit(IEnumerable<TextChange> changes, Func<string, string> uriOf) => new(
        changes.GroupBy(c => c.Span.Source.FileName).ToImmutableSortedDictionary(
            g => uriOf(g.Key), g => g.Select(Change).ToImmutableArray(), StringComparer.Ordinal));

    /// <summary>One change.</summary>
    public static TextEdit Change(TextChange change) => new(Places.RangeOf(change.Span), change.Text);
}
