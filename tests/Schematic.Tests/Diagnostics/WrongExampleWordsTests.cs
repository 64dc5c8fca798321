using System.Globalization;
using ApprovalTests;
using ApprovalTests.Namers;
using Schematic.Analysis;
using Schematic.Binding;
using Schematic.Diagnostics;
using Xunit;

namespace Schematic.Tests.Diagnostics;

/// <summary>
/// All that is told of each file of <c>examples/wrong</c>, word for word, with its moves, paths and figures. Read the kept text beside a
/// change: somebody looks for the burnt part by it.
/// </summary>
public sealed class WrongExampleWordsTests
{
    private static readonly string Folder = Repository.PathOf("examples/wrong");

    public static TheoryData<string> Letters =>
        [.. Directory.EnumerateFiles(Folder, "*.panel").Select(f => Path.GetFileName(f)[..1]).Distinct().Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Letters))]
    public void What_is_told_of_wrong_examples_reads(string letter)
    {
        using var scenario = ApprovalResults.ForScenario(letter);
        var written = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        foreach (var file in Directory.EnumerateFiles(Folder, letter + "*.panel").Order(StringComparer.Ordinal))
        {
            var read = PanelLoader.LoadFile(file);
            written.Write($"==== {Path.GetFileName(file)}\n");
            new TextPrinter(TextTheme.Plain, 200).Print(PanelChecker.Check(read.Panel, read.Diagnostics), written);
        }

        Approvals.Verify(written.ToString().Replace(Folder + Path.DirectorySeparatorChar, "", StringComparison.Ordinal));
    }
}
