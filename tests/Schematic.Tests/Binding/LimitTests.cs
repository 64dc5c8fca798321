using System.Diagnostics;
using Schematic.Binding;
using Schematic.Tests.Language;
using Xunit;

namespace Schematic.Tests.Binding;

/// <summary>What no sheet has room for and no machine time for ends with a finding.</summary>
public class LimitTests
{
    [Fact]
    public void Use_does_not_multiply_without_end()
    {
        var fuses = string.Concat(Enumerable.Range(1, 2_000).Select(i => $"fuse F{i} 1 A\n"));
        var uses = string.Concat(Enumerable.Range(1, 900).Select(i => $"use \"f.panel\" as U{i}\n"));
        var result = TestPanels.Read(uses, ("f.panel", fuses));
        var finding = Assert.Single(result.Diagnostics);
        Assert.Equal("The panel has more than 200,000 statements, used files and ranges counted out.", finding.Message);
        Assert.InRange(result.Panel.Parts.Length, 100_000, 200_000);
    }

    [Fact]
    public void Ranges_do_not_multiply_without_end()
    {
        var found = TestPanels.Diagnose(string.Concat(Enumerable.Range(1, 21).Select(i => $"splice S{i}X1..S{i}X9999\n")));
        Assert.Contains(found, f => f.Message.StartsWith("The panel has more than 200,000 statements", StringComparison.Ordinal));
    }

    [Fact]
    public void Findings_are_counted_and_end()
    {
        var found = TestPanels.Diagnose(string.Concat(Enumerable.Range(1, 30_000).Select(i => $"net N{i} Q{i}:1\n")));
        Assert.Equal(20_001, found.Length);
        Assert.Contains(found, f => f.Message == "More than 20,000 findings: the others are left out.");
    }

    [Theory]
    [InlineData("ring 5 clockwise on front of pins radius [[10 m]]", "10 m is out of range here. -> Give a length from 0.05 mm to 1 m.")]
    [InlineData("ring 5 clockwise on front of pins radius 1000 mm", "")]
    [InlineData("ring 5 clockwise on front of pins radius [[1000.1 mm]]", "1000.1 mm is out of range here.")]
    [InlineData("strip 5 pitch [[100000000000000000000000000000 mm]]", "100000000000000000000000000000 mm is out of range here.")]
    [InlineData("strip 5 pitch 0.5 mm", "")]
    [InlineData("strip 5 pitch [[0.04 mm]]", "0.04 mm is out of range here.")]
    [InlineData("ring 5 clockwise on front of pins start [[360.5]]", "360.5 is out of range for `start`. -> Give an angle from -360 to 360 degrees.")]
    [InlineData("ring 5 clockwise on front of pins start -360", "")]
    [InlineData("strip 5 ; key [[99999]]", "99999 is out of range for `key`.")]
    [InlineData("positions { 1 [[501 mm]] 0 mm ; 2 -500 mm 0 mm }", "501 mm is out of range here. -> Give a length up to 500 mm to either side.")]
    [InlineData("strip 5 ; cutout [[2 m]]", "2 m is out of range here.")]
    [InlineData("strip 5 ; strip [[300 mm]]", "300 mm is out of range here.")]
    public void A_measure_of_a_connector_has_a_range(string insert, string expected)
    {
        if (insert.Contains("strip [[", StringComparison.Ordinal)) insert = "ring 5 clockwise on front of pins ; strip [[300 mm]]";
        if (expected.Length == 0) Assert.Empty(TestPanels.Diagnose($"connector J1 {{ pins ; {insert} }}"));
        else MarkedText.Gives($"connector J1 {{ pins ; {insert} }}", $"out-of-range: {expected}");
    }

    [Theory]
    [InlineData("wire W1 22 AWG [[300 km]] X1:1 -> X1:2", null)]
    [InlineData("wire W1 22 AWG 10000 m X1:1 -> X1:2", "")]
    [InlineData("wire W1 22 AWG [[10001 m]] X1:1 -> X1:2", "10001 m is out of range here. -> Give a length from 1 mm to 10 km.")]
    [InlineData("wire W1 22 AWG [[0.5 mm]] X1:1 -> X1:2", "0.5 mm is out of range here.")]
    [InlineData("lamp DS1 [[101 kV]] 1 A", "101 kV is out of range here. -> Give a voltage up to 100 kV.")]
    [InlineData("lamp DS1 100 kV 100000 A", "")]
    [InlineData("resistor R1 [[10000000 Mohm]]", "10000000 Mohm is out of range here.")]
    [InlineData("limits { drop [[101 %]] }", "101 % is out of range here.")]
    [InlineData("fuse F1 1 A price [[1000000001]] EUR", "1000000001 is no price.")]
    public void A_quantity_has_a_range(string text, string? expected)
    {
        text = "terminals X1 { 1..2 }\n" + text;
        if (expected is null) Assert.Contains(TestPanels.Diagnose(text.Replace("[[", "", StringComparison.Ordinal).Replace("]]", "", StringComparison.Ordinal)), f => f.Rule == "wrong-unit");
        else if (expected.Length == 0) Assert.Empty(TestPanels.Diagnose(text));
        else MarkedText.Gives(text, $"out-of-range: {expected}");
    }

    [Theory]
    [InlineData(60, 0)]
    [InlineData(61, 1)]
    [InlineData(1000, 1)]
    public void A_name_has_at_most_sixty_letters(int letters, int findings)
    {
        var name = new string('L', letters);
        Assert.Equal(findings, TestPanels.Diagnose($"fuse {name} 1 A").Length);
        Assert.Equal(findings, TestPanels.Diagnose($"actuator K {{ {name} rest ; b }}").Length);
        Assert.Equal(findings, TestPanels.Diagnose($"terminals X1 {{ {name} }}").Length);
    }

    [Theory]
    [InlineData(500, 0)]
    [InlineData(501, 1)]
    [InlineData(5000, 1)]
    public void A_text_has_at_most_five_hundred_letters(int letters, int findings) =>
        Assert.Equal(findings, TestPanels.Diagnose($"fuse F1 \"{new string('x', letters)}\" 1 A").Length);

    [Fact]
    public void A_refused_file_comes_alone_and_its_option_is_named()
    {
        var finding = Assert.Single(TestPanels.Diagnose("use \"../other.panel\" as U\nnet A U.J1:1 U.J1:2\nswitch S1 make on U.LEVER\nexpect U.DS1 released"));
        Assert.Equal("outside-folder", finding.Rule);
        Assert.Equal("Copy it into the folder, or start the program with --allow-outside.", finding.Help);
        Assert.Equal("missing-file", Assert.Single(TestPanels.Diagnose("use \"other.panel\" as U\nnet A U.J1:1 U.J1:2")).Rule);
    }

    [Fact]
    public void Use_of_a_pipe_is_refused_at_once()
    {
        if (OperatingSystem.IsWindows()) return;
        var folder = Directory.CreateTempSubdirectory("schematic-pipe-").FullName;
        try
        {
            using (var process = Process.Start("mkfifo", Path.Combine(folder, "pipe.panel"))) process.WaitForExit();
            File.WriteAllText(Path.Combine(folder, "main.panel"), "use \"pipe.panel\" as U\nuse \"empty.panel\" as E\n");
            File.WriteAllText(Path.Combine(folder, "empty.panel"), "");
            var finding = Assert.Single(PanelLoader.LoadFile(Path.Combine(folder, "main.panel")).Diagnostics);
            Assert.Equal("The file \"pipe.panel\" cannot be read.", finding.Message);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
