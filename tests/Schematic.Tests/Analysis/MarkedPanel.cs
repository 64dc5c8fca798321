using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Binding;
using Schematic.Diagnostics;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Analysis;

/// <summary>A panel text in which <c>«»</c> stands around the place where a finding is expected.</summary>
internal static class MarkedPanel
{
    /// <summary>All findings about a text without marks.</summary>
    public static ImmutableArray<Diagnostic> Check(string text)
    {
        var loaded = PanelLoader.Load(new SourceText("test.panel", text), MemoryPanelFiles.None);
        Assert.Empty(loaded.Diagnostics.Select(d => $"{d.Span}: {d.Message}"));
        return PanelChecker.Check(loaded.Panel);
    }

    /// <summary>The one finding of that rule, at the mark; with nothing else of warning or error.</summary>
    public static Diagnostic AssertOnly(string marked, string rule, string message)
    {
        var start = marked.IndexOf('«', StringComparison.Ordinal);
        var end = marked.IndexOf('»', StringComparison.Ordinal) - 1;
        var findings = Check(marked.Replace("«", "", StringComparison.Ordinal).Replace("»", "", StringComparison.Ordinal));
        var finding = Assert.Single(findings, f => f.Severity >= Severity.Warning || f.Rule == rule);
        Assert.Equal(message, finding.Message);
        Assert.Equal(rule, finding.Rule);
        Assert.Equal((start, end), (finding.Span.Span.Start, finding.Span.Span.End));
        return finding;
    }

    /// <summary>No finding of that rule.</summary>
    public static void AssertNone(string text, string rule) =>
        Assert.Empty(Check(text).Where(f => f.Rule == rule).Select(f => f.Message));
}
