using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Schematic.Analysis;
using Schematic.Binding;
using Schematic.Diagnostics;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Analysis;

/// <summary>
/// Whoever follows a finding's help to the letter must be rid of it and get no other for it: where the help names a statement to write, it
/// is written; where it names the right word, the word takes the place of the wrong one.
/// </summary>
public partial class FollowedAdviceTests
{
    private static readonly string WrongFolder = Repository.PathOf("examples/wrong");

    public static TheoryData<string> WrongFiles =>
        [.. Directory.EnumerateFiles(WrongFolder, "*.panel").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(WrongFiles))]
    public void A_statement_that_the_help_names_makes_the_finding_go_and_adds_none(string file)
    {
        var text = File.ReadAllText(Path.Combine(WrongFolder, file + ".panel"));
        AssertFollowed(text, Check(text));
    }

    // A claim is asked with the supply on, whatever another claim says of it switched off; between two levels no claim holds at all.
    [Theory]
    [InlineData("pull-down 10 kohm", "resistor R1 1 kohm\nwire W1 PS1:+ -> R1:2\nwire W2 A1:IN1 -> R1:1", "expect A1:IN1 high")]
    [InlineData("pull-up 5 V 10 kohm", "wire W1 A1:IN1 -> S2:1\nwire W2 S2:2 -> PS1:-", null)]
    [InlineData("pull-up 5 V 10 kohm", "resistor R1 10 kohm\nwire W1 A1:IN1 -> R1:1\nwire W2 R1:2 -> PS1:-", "")]
    public void The_claim_advised_for_an_input_that_never_changes_is_one_that_holds(string pull, string wiring, string? advice)
    {
        var text = $$"""
            supply PS1 5 V limit 1 A switched { + - }
            actuator LEVER { normal rest ; reverse }
            switch S2 make on LEVER when reverse
            board A1 "input board" { inputs IN1 max 5.5 V {{pull}} ; ground GND }
            wire W9 PS1:- -> A1:GND
            switch S3 make on LEVER when reverse
            lamp DS1 5 V 40 mA
            wire W6 PS1:+ -> S3:1
            wire W7 S3:2 -> DS1:X1
            wire W8 DS1:X2 -> PS1:-
            expect A1:IN1 low when PS1 off
            {{wiring}}
            """;
        var finding = Check(text).SingleOrDefault(f => f.Rule == "input-never-changes");
        Assert.Equal(advice is null, finding is null);
        if (finding is null) return;
        Assert.Equal(advice!, Statement().Match(finding.Help!).Groups[1].Value);
        AssertFollowed(text, Check(text));
    }

    [GeneratedRegex("'((?:expect|never|wire|net) [^'.]*)'")]
    private static partial Regex Statement();

    private static void AssertFollowed(string text, ImmutableArray<Diagnostic> before)
    {
        foreach (var finding in before)
        {
            if (Statement().Match(finding.Help ?? "") is not { Success: true } advised) continue;
            var after = Check($"{text.TrimEnd()}\n{advised.Groups[1].Value}\n");
            Assert.DoesNotContain(after, f => f.Rule == finding.Rule && f.Message == finding.Message);
            Assert.Empty(after.Select(f => f.Rule).Except(before.Select(f => f.Rule)));
        }
    }

    private static ImmutableArray<Diagnostic> Check(string text)
    {
        var loaded = PanelLoader.Load(new SourceText("example.panel", text), MemoryPanelFiles.None);
        return PanelChecker.Check(loaded.Panel, loaded.Diagnostics);
    }
}
