using Schematic.Analysis;
using Schematic.Reports;
using Xunit;

namespace Schematic.Tests.Analysis;

/// <summary>What the program chose is known to be chosen, with the words that would state it.</summary>
public class AssumptionTests
{
    public static TheoryData<string, string> Statements => new()
    {
        { "relay K1 24 V 800 ohm", "" },
        { "solenoid L1 28 V 0.7 A", "" },
        { "motor M1 24 V 2 A", "" },
        { "meter P1 1 mA 100 ohm", "" },
        { "diode D1 1 A 400 V", "" },
        { "board A1 { inputs IN1..IN3 max 5.5 V", " ; ground GND }" },
        { "connector J1 { pins ; spiral 7 rings 1 6", " }" },
        { "connector J1 { pins ; strip 5", " }" },
    };

    /// <summary>Writing the words that the program asks for, one after the other, leaves nothing assumed and changes no value.</summary>
    [Theory]
    [MemberData(nameof(Statements))]
    public void Stating_what_is_asked_for_leaves_nothing_assumed(string head, string tail)
    {
        var first = AllOf(head + tail);
        Assert.NotEmpty(first);
        var seen = new List<string>();
        for (var all = first; all.FirstOrDefault(a => a.Statement is not null) is { } one; all = AllOf(head + tail))
        {
            Assert.DoesNotContain(one.Statement, seen);
            seen.Add(one.Statement!);
            head += one.Kind == AssumptionKind.Arrangement ? " ; " + Measured(one.Statement!) : " " + one.Statement;
        }

        Assert.All(first.Where(a => a.Statement is not null), a => Assert.Contains(a.Statement!, seen));
    }

    /// <summary>75 % of the rated voltage for a coil of general use (from memory).</summary>
    [Fact]
    public void A_coil_without_an_operate_voltage_is_assumed_to_pull_in_at_three_quarters()
    {
        var one = AllOf("solenoid L1 24 V 0.5 A").Single(a => a.Kind == AssumptionKind.Operates);
        Assert.Equal("L1 operates from 18 V: 75 % of its rated voltage (from memory); state 'operates 18 V'", one.ToString());
    }

    [Theory]
    [InlineData("", true)]
    [InlineData(" operates 18 V", false)]
    public void A_finding_says_what_it_rests_on(string stated, bool isAssumed)
    {
        var findings = MarkedPanel.Check($$"""
            supply PS1 12 V
            actuator KEY { off rest ; on }
            switch S1 make on KEY when on
            solenoid L1 24 V 0.5 A{{stated}} suppressed
            net FEED PS1:+ S1:1
            net ON   S1:2 L1:A1
            net RTN  PS1:- L1:A2
            """);
        var weak = Assert.Single(findings, f => f.Rule == "load-too-weak");
        Assert.Equal(isAssumed, weak.Assumed.Any(a => a.Contains("operates 18 V", StringComparison.Ordinal)));
    }

    [Fact]
    public void The_list_names_inputs_that_are_alike_once()
    {
        var table = AssumedList.Build(new AnalysisContext(TestPanels.Load("board A1 { inputs IN1..IN16 max 6 V ; ground GND }")));
        var row = Assert.Single(table.Rows);
        Assert.Equal(["A1:IN1 to IN16 (16)", "read low up to 2 V and high from 4 V"], row.Take(2));
        Assert.Equal("low 2 V high 4 V", row[3]);
    }

    [Fact]
    public void Wires_whose_gauge_the_program_chose_stand_in_the_list()
    {
        var table = AssumedList.Build(new AnalysisContext(TestPanels.Load("""
            supply PS1 24 V
            lamp DS1 24 V 40 mA
            wire W1 300 mm PS1:+ -> DS1:X1
            wire W2 22 AWG 300 mm PS1:- -> DS1:X2
            """)));
        Assert.Contains(table.Rows, r => r[0] == "W1");
        Assert.DoesNotContain(table.Rows, r => r[0].Contains("W2", StringComparison.Ordinal));
    }

    private static List<Assumption> AllOf(string text) => [.. new Assumptions(TestPanels.Load(text)).All];

    private static string Measured(string word) => word switch
    {
        "on" => "on front of pins",
        "start" => "start 0 0",
        "from" => "from centre",
        "pitch" => "pitch 5 mm",
        _ => word,
    };
}
