using Schematic.Tests.Cli;
using Xunit;

namespace Schematic.Tests.Bench.Diagnosis;

/// <summary>What a person reads who noted something that cannot be, or nothing at all.</summary>
public class DiagnosisWordsTests
{
    [Fact]
    public void An_empty_file_is_told_to_be_empty_and_where_to_begin()
    {
        var said = Said("at rest { J1:2 J1:3 ? }", exit: 0);
        Assert.StartsWith("Measure next No reading was taken yet.", said, StringComparison.Ordinal);
        Assert.Contains("the right contacts in the right positions, as far as this tells", said, StringComparison.Ordinal);
        Assert.DoesNotContain("explanations above", said, StringComparison.Ordinal);
    }

    [Fact]
    public void The_verdict_comes_first() => Assert.StartsWith(
        "What is behind the readings PASS so far: all 2 readings are those of a sound unit", Said("at rest { J1:4 J1:5 closed ; J1:7 J1:8 closed }", exit: 0), StringComparison.Ordinal);

    [Fact]
    public void One_good_reading_is_no_pass() => Assert.Contains(
        "PASS so far: the one reading is that of a sound unit, and excludes", Said("at rest { J1:4 J1:5 closed }", exit: 0), StringComparison.Ordinal);

    [Fact]
    public void Two_digits_exchanged_on_paper_are_told_with_their_line() => Assert.Contains(
        "Line 5 would fit with J1:13 in the place of J1:31",
        Said("at rest { J1:2 J1:3 68 ohm ; J1:4 J1:5 closed ; J1:7 J1:8 closed\nJ1:31 J1:14 closed\nJ1:24 J1:25 38 ohm ; J1:19 J1:20 closed }", exit: 1), StringComparison.Ordinal);

    [Fact]
    public void A_contact_that_does_not_exist_is_asked_for_with_its_digits_exchanged()
    {
        var said = Said("at rest { J1:4 J1:5 closed ; J1:42 J1:25 38 ohm }", exit: 1, findings: true);
        Assert.Contains("Did you mean `24`?", said, StringComparison.Ordinal);
        Assert.Contains("told above, was left out", Said("at rest { J1:4 J1:5 closed ; J1:42 J1:25 38 ohm }", exit: 1), StringComparison.Ordinal);
    }

    [Fact]
    public void Kohm_written_for_ohm_is_told_as_one_mistake() => Assert.Contains(
        "WRONG: the figures were noted in kohm where the meter showed ohm",
        Said("at rest { J1:2 J1:3 68 kohm ; J1:24 J1:25 38 kohm ; J1:26 J1:27 70 kohm ; J1:7 J1:8 closed }", exit: 1), StringComparison.Ordinal);

    [Fact]
    public void Readings_of_another_panel_are_told_so()
    {
        var said = Said("at rest { J1:2 J1:3 open ; J1:4 J1:7 closed }", exit: 1, head: "readings of \"latch.panel\"\nunit J1\nprint 0123456789abcdef\n");
        Assert.Contains("The file holds readings of latch.panel, and you gave lever.panel.", said, StringComparison.Ordinal);
        Assert.Contains("begun from another panel", said, StringComparison.Ordinal);
        Assert.Contains("WRONG, but not settled", said, StringComparison.Ordinal);
        // What nothing explains is said once.
        Assert.Contains("None of these accounts for line 4: J1:4 J1:7 closed.", said, StringComparison.Ordinal);
    }

    private static string Said(string readings, int exit, bool findings = false, string head = "readings of \"lever.panel\"\nunit J1\nleads 0.3 ohm zeroed\n")
    {
        using var run = new CliRun();
        File.Copy(Repository.PathOf("examples/lever-frame/lever.panel"), Path.Combine(run.Folder, "lever.panel"));
        File.WriteAllText(Path.Combine(run.Folder, "evening.readings"), head + readings + "\n");
        Assert.Equal(exit, run.Run("diagnose", "lever.panel", "evening.readings"));
        return string.Join(' ', (findings ? run.Error : run.Out).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
    }
}
