using Schematic.Analysis;
using Schematic.Cli.Commands;
using Schematic.Diagnostics;
using Schematic.Language;
using Xunit;

namespace Schematic.Tests.Cli;

public sealed class NewCommandTests : IDisposable
{
    private readonly CliRun _cli = new();

    public static TheoryData<string> Units => [.. NewCommand.Units];

    public void Dispose() => _cli.Dispose();

    [Theory]
    [MemberData(nameof(Units))]
    public void A_new_file_checks_clean_and_stands_in_its_usual_form(string unit)
    {
        Assert.Equal(0, _cli.Run("new", unit));
        Assert.Equal($"{unit}.panel\n", _cli.Out);
        var text = System.Text.Encoding.UTF8.GetString(_cli.Read($"{unit}.panel"));
        var result = TestPanels.Read(text);
        var found = PanelChecker.Check(result.Panel, result.Diagnostics);
        Assert.Empty(found.Where(f => f.Severity != Severity.Note).Select(f => $"{f.Span}: {f.Rule}: {f.Message}"));
        Assert.All(found, f => Assert.Equal("not-traced", f.Rule));
        Assert.Equal(text, PanelFormatter.Format(text));
        Assert.Equal(0, _cli.Run("check", $"{unit}.panel"));
    }

    [Fact]
    public void A_unit_of_31_contacts_with_seven_poles_of_which_three_are_traced_checks_and_draws_what_is_not_known_as_not_known()
    {
        Assert.Equal(0, _cli.Run("new", "unknown-unit", "found.panel"));
        var lines = System.Text.Encoding.UTF8.GetString(_cli.Read("found.panel")).Split('\n').Where(l => !l.StartsWith("pole S1", StringComparison.Ordinal));
        _cli.Write("found.panel", string.Join('\n', lines) + """
            poles S1..S7 changeover on LEVER on-hand { common J1:1 4 7 ? ; normal J1:2 5 8 ? ; reverse J1:3 6 9 ? }
            lamp  DS1 70 ohm on-hand { J1:10 J1:11 }
            solenoid L1 47 ohm on-hand { J1:12 ? }

            """);
        Assert.Equal(0, _cli.Run("check", "found.panel"));
        Assert.EndsWith("\n4 notes\n", _cli.Out, StringComparison.Ordinal);
        Assert.Contains("To which contact 13 terminals of S4, S5, S6, S7 and L1 lead is not traced yet.", _cli.Out, StringComparison.Ordinal);
        Assert.Contains("note proof-incomplete: Not proved for every way to join what is not traced: L1", _cli.Out, StringComparison.Ordinal);
        Assert.Contains("Contacts 13..31 of J1 are not traced yet.", _cli.Out, StringComparison.Ordinal);
        Assert.Equal(0, _cli.Run("draw", "found.panel", "--format", "svg"));
        var sheets = string.Concat(_cli.Files("out").Select(f => System.Text.Encoding.UTF8.GetString(_cli.Read($"out/{f}"))));
        Assert.Contains(">not traced<", sheets, StringComparison.Ordinal);
        Assert.Contains("? V 47 Ω<", sheets, StringComparison.Ordinal);

        // The next evening only adds a line: the rest shrinks by itself.
        var known = System.Text.Encoding.UTF8.GetString(_cli.Read("found.panel"));
        _cli.Write("found.panel", known + "switch S8 make on LEVER on-hand { J1:13 J1:14 }\n");
        Assert.Equal(0, _cli.Run("check", "found.panel"));
        Assert.Contains("Contacts 15..31 of J1 are not traced yet.", _cli.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void There_is_a_file_for_each_kind_of_unit() =>
        Assert.Equal(["lever", "relay-box", "switch-panel", "unknown-unit"], NewCommand.Units.AsEnumerable());

    [Fact]
    public void The_examples_of_the_repository_are_inside_and_the_same()
    {
        string[] folders = [.. Directory.EnumerateDirectories(Repository.PathOf("examples"))
            .Select(f => Path.GetFileName(f)).Where(f => f is not ("inserts" or "wrong")).Order(StringComparer.Ordinal)];
        Assert.Equal(folders, NewCommand.Examples.AsEnumerable());
        foreach (var name in folders)
        {
            Assert.Equal(0, _cli.Run("new", name));
            Assert.Equal($"Draw it with: schematic draw {name}.panel\n", _cli.Error);
            Assert.Equal(File.ReadAllText(Directory.EnumerateFiles(Repository.PathOf($"examples/{name}"), "*.panel").Single()), System.Text.Encoding.UTF8.GetString(_cli.Read($"{name}.panel")));
        }
    }

    [Fact]
    public void A_file_that_is_there_is_never_written_over()
    {
        _cli.Write("lever.panel", "# mine\n");
        Assert.Equal(2, _cli.Run("new", "lever"));
        Assert.Equal("# mine\n"u8.ToArray(), _cli.Read("lever.panel"));
    }

    [Fact]
    public void The_remarks_of_a_file_of_another_name_speak_of_that_name()
    {
        Assert.Equal(0, _cli.Run("new", "lever", "frame.panel"));
        Assert.Contains("#   schematic check frame.panel\n", System.Text.Encoding.UTF8.GetString(_cli.Read("frame.panel")), StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_kind_of_unit_is_told_with_the_nearest()
    {
        Assert.Equal(2, _cli.Run("new", "levre"));
        Assert.Equal("schematic: there is no file for 'levre'; did you mean 'lever'?\n", _cli.Error);
    }
}
