using Schematic.Binding;
using Schematic.Language;
using Xunit;

namespace Schematic.Tests.Binding;

/// <summary>The examples that the repository ships are read without findings, and are laid out as the formatter does.</summary>
public class ExampleTests
{
    public static TheoryData<string> Files =>
    [
        .. Directory.EnumerateFiles(Repository.PathOf("examples"), "*.panel", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(Repository.Root, f).Replace('\\', '/'))
            .Where(f => !f.StartsWith("examples/wrong/", StringComparison.Ordinal))
            .Order(StringComparer.Ordinal),
    ];

    [Theory]
    [MemberData(nameof(Files))]
    public void An_example_is_read_without_findings(string file) =>
        Assert.Empty(PanelLoader.LoadFile(Repository.PathOf(file)).Diagnostics.Select(d => $"{d.Span}: {d.Message}"));

    [Theory]
    [MemberData(nameof(Files))]
    public void Formatting_an_example_twice_gives_the_same_as_once_and_does_not_change_the_panel(string file)
    {
        var text = File.ReadAllText(Repository.PathOf(file));
        var formatted = PanelFormatter.Format(text);
        Assert.Equal(formatted, PanelFormatter.Format(formatted));
        Assert.Equal(PanelText.Describe(TestPanels.Load(text)), PanelText.Describe(TestPanels.Load(formatted)));
    }
}
