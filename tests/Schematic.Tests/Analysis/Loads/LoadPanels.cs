using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Binding;
using Schematic.Diagnostics;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Analysis.Loads;

/// <summary>Panels as text, for the tests of this folder.</summary>
internal static class LoadPanels
{
    public static AnalysisContext Context(string text)
    {
        var loaded = PanelLoader.Load(new SourceText("test.panel", text), MemoryPanelFiles.None);
        Assert.Empty(loaded.Diagnostics.Select(d => d.Message));
        return new AnalysisContext(loaded.Panel);
    }

    public static ImmutableArray<Diagnostic> Check(string text) => PanelChecker.Check(Context(text).Panel);

    public static Diagnostic Single(string text, string rule) => Assert.Single(Check(text), d => d.Rule == rule);

    /// <summary>The rules that are found, warnings and errors, each once.</summary>
    public static string[] Rules(string text) =>
        [.. Check(text).Where(d => d.Severity >= Severity.Warning).Select(d => d.Rule).Distinct().Order(StringComparer.Ordinal)];
}
