using System.Collections.Immutable;
using Schematic.Binding;
using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests;

/// <summary>Panels from text, for tests of every stage after the language.</summary>
public static class TestPanels
{
    /// <summary>The panel of a text that must have no errors.</summary>
    public static Panel Load(string text)
    {
        var result = Read(text);
        var errors = result.Diagnostics.Where(d => d.Severity == Severity.Error);
        Assert.True(!result.HasErrors, string.Join('\n', errors.Select(d => $"{d.Span}: {d.Rule}: {d.Message}")));
        return result.Panel;
    }

    /// <summary>Everything that reading a text finds.</summary>
    public static ImmutableArray<Diagnostic> Diagnose(string text) => Read(text).Diagnostics;

    /// <summary>Panel and findings of a text; <paramref name="files"/> are what its use statements may name.</summary>
    public static LoadResult Read(string text, params (string Name, string Text)[] files) => PanelLoader.Load(
        new SourceText("main.panel", text),
        new MemoryPanelFiles(files.ToImmutableDictionary(f => f.Name, f => f.Text, StringComparer.Ordinal)));
}
