using Schematic.Diagnostics;
using Xunit;

namespace Schematic.Tests.Diagnostics;

/// <summary>A change that a finding proposes puts it right.</summary>
public class RepairTests
{
    private const string Around = """
        connector J1 "plug" { pins ; strip 4 pitch 5 mm }
        actuator LEVER { normal rest ; reverse }
        supply PS1 24 V limit 1 A { + - }

        """;

    [Theory]
    [InlineData("lmap DS1 24 V 40 mA { J1:1 J1:2 }", "lamp DS1 24 V 40 mA { J1:1 J1:2 }")]
    [InlineData("lamp DS1 24 V 40 mA colour { J1:1 J1:2 }", null)]
    [InlineData("solenoid L1 24 V 0.5 A operate 18 V { J1:1 J1:2 }", "solenoid L1 24 V 0.5 A operates 18 V { J1:1 J1:2 }")]
    [InlineData("lamp DS1 24 v 40 mA { J1:1 J1:2 }", "lamp DS1 24 V 40 mA { J1:1 J1:2 }")]
    [InlineData("lamp DS1 24,5 V 40 mA { J1:1 J1:2 }", "lamp DS1 24.5 V 40 mA { J1:1 J1:2 }")]
    [InlineData("solenoid L1 24 V 0.5 A operates 18 { J1:1 J1:2 }", "solenoid L1 24 V 0.5 A operates 18 V { J1:1 J1:2 }")]
    [InlineData("wire W1 AWG22 black 300 mm PS1:+ -> J1:1", "wire W1 22 AWG black 300 mm PS1:+ -> J1:1")]
    [InlineData("wire W1 22 AWG blak 300 mm PS1:+ -> J1:1", "wire W1 22 AWG black 300 mm PS1:+ -> J1:1")]
    [InlineData("wire W1 22 AWG black 16\" PS1:+ -> J1:1", "wire W1 22 AWG black 16 in PS1:+ -> J1:1")]
    [InlineData("wire W1 22 AWG black 300 mm PS1:+ -> J1-1", "wire W1 22 AWG black 300 mm PS1:+ -> J1:1")]
    [InlineData("wire W1 22 AWG black 300 mm PSI:+ -> J1:1", "wire W1 22 AWG black 300 mm PS1:+ -> J1:1")]
    [InlineData("lamp DS1 “signal lamp” 24 V 40 mA { J1:1 J1:2 }", "lamp DS1 \"signal lamp\" 24 V 40 mA { J1:1 J1:2 }")]
    [InlineData("switch S1 make on LEVR when normal { J1:1 J1:2 }", "switch S1 make on LEVER when normal { J1:1 J1:2 }")]
    [InlineData("switch S1 make on LEVER when reverze { J1:1 J1:2 }", "switch S1 make on LEVER when reverse { J1:1 J1:2 }")]
    [InlineData("net N1 J1:1-4", "net N1 J1:1..4")]
    [InlineData("// a remark", "# a remark")]
    [InlineData("title \"Signal lamps", "title \"Signal lamps\"")]
    public void A_repair_writes_what_was_meant(string wrong, string? right)
    {
        var text = Around + wrong;
        var finding = Assert.Single(TestPanels.Diagnose(text));
        if (right is null)
        {
            Assert.Empty(finding.Repairs);
            return;
        }

        var repair = Assert.Single(finding.Repairs);
        var repaired = text.Remove(repair.Span.Span.Start, repair.Span.Span.Length).Insert(repair.Span.Span.Start, repair.Text);
        Assert.Equal(Around + right, repaired);
        Assert.DoesNotContain(TestPanels.Diagnose(repaired), d => d.Severity == Severity.Error);
    }

    [Fact]
    public void Where_the_user_has_to_choose_every_choice_is_a_repair()
    {
        var finding = Assert.Single(TestPanels.Diagnose(Around + "lamp DS1 24 V 40 { J1:1 J1:2 }"));
        Assert.Contains("40 mA", finding.Repairs.Select(r => r.Text));
        Assert.Contains("40 A", finding.Repairs.Select(r => r.Text));
    }
}
