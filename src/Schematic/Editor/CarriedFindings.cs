using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Text;

namespace Schematic.Editor;

/// <summary>
/// What was proved of the version before, for as long as the proof of this one is not done: findings about lines that did not change
/// stay to be seen where those lines stand now, so that they do not flicker at every key.
/// </summary>
public static class CarriedFindings
{
    /// <summary>The findings that still have a place.</summary>
    /// <param name="before">The text that they are about.</param>
    /// <param name="after">The text as it is now.</param>
    /// <param name="found">The findings, of this file and of others.</param>
    public static ImmutableArray<Diagnostic> Of(SourceText before, SourceText after, IEnumerable<Diagnostic> found)
    {
        var start = before.Content.AsSpan().CommonPrefixLength(after.Content);
        var room = Math.Min(before.Content.Length, after.Content.Length) - start;
        var end = 0;
        while (end < room && before.Content[^(end + 1)] == after.Content[^(end + 1)]) end++;
        var (from, to) = (before.LineSpan(before.PositionOf(start).Line).Start, before.LineSpan(before.PositionOf(before.Content.Length - end).Line).End);
        return
        [
            .. found.Where(f => !ReferenceEquals(f.Span.Source, before) || f.Span.Span.End < from || f.Span.Span.Start > to)
                .Select(f => Moved(f, before, after, to) with { Repairs = [], Related = [.. f.Related.Where(r => !ReferenceEquals(r.Span.Source, before))] }),
        ];
    }

    private static Diagnostic Moved(Diagnostic finding, SourceText before, SourceText after, int to) =>
        !ReferenceEquals(finding.Span.Source, before) ? finding
        : finding.Moved(finding.Span.Span.Start > to ? after.Content.Length - before.Content.Length : 0, after);
}
