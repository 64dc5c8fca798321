using System.Collections.Immutable;

namespace Schematic.Diagnostics;

/// <summary>
/// The order in which findings are shown: by file, then down the text, then by rule and wording; those about no place come
/// last.
/// </summary>
public static class DiagnosticOrder
{
    /// <summary>Sorts findings; equal findings are kept once.</summary>
    public static ImmutableArray<Diagnostic> Sort(IEnumerable<Diagnostic> diagnostics) =>
    [
        .. diagnostics
            .DistinctBy(d => (d.Span.Source.FileName, d.Span.Span, d.Rule, d.Message))
            .OrderBy(d => d.Span.Source.FileName.Length == 0)
            .ThenBy(d => d.Span.Source.FileName, StringComparer.Ordinal)
            .ThenBy(d => d.Span.Span.Start)
            .ThenByDescending(d => d.Severity)
            .ThenBy(d => d.Rule, StringComparer.Ordinal)
            .ThenBy(d => d.Message, StringComparer.Ordinal),
    ];
}
