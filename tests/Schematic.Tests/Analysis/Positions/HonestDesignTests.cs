using Schematic.Analysis;
using Schematic.Diagnostics;
using Xunit;

namespace Schematic.Tests.Analysis.Positions;

/// <summary>Designs as they are built every day (common practice): the proof must have nothing to say about them.</summary>
public class HonestDesignTests
{
    [Theory]
    [InlineData("a board with a ground of its own beside a lamp circuit", """
        supply PS1 24 V { + - }
        actuator LEVER { normal rest ; reverse }
        pole S1 changeover on LEVER { common ; normal ; reverse }
        pole S2 changeover on LEVER { common ; normal ; reverse }
        lamp DS1 24 V 40 mA
        lamp DS2 24 V 40 mA
        board A1 { inputs IN1 IN2 max 5.5 V pull-up 5 V 10 kohm ; ground GND }
        net FEED PS1:+ S1:common
        net ONE S1:normal DS1:X1
        net TWO S1:reverse DS2:X1
        net RTN DS1:X2 DS2:X2 PS1:-
        net GND A1:GND S2:common
        net IN1 S2:normal A1:IN1
        net IN2 S2:reverse A1:IN2
        """)]
    [InlineData("a lamp test button that reaches every lamp through a diode", """
        supply PS1 24 V { + - }
        actuator A { off rest ; on }
        actuator B { off rest ; on }
        actuator TEST { released rest ; pressed springs-to released }
        switch S1 make on A when on
        switch S2 make on B when on
        switch S3 make on TEST when pressed
        lamp DS1 24 V 40 mA
        lamp DS2 24 V 40 mA
        diode D1
        diode D2
        diode D3
        diode D4
        net FEED PS1:+ S1:1 S2:1 S3:1
        net A1 S1:2 D1:A
        net B1 S2:2 D2:A
        net TEST S3:2 D3:A D4:A
        net L1 D1:K D3:K DS1:X1
        net L2 D2:K D4:K DS2:X1
        net RTN DS1:X2 DS2:X2 PS1:-
        """)]
    [InlineData("two supplies that feed one load through diodes, guarded by fuses", """
        supply PS1 24 V { + - }
        supply PS2 24 V { + - }
        fuse F1 2 A
        fuse F2 2 A
        diode D1
        diode D2
        actuator A { off rest ; on }
        switch S1 make on A when on
        lamp DS1 24 V 40 mA
        net P1 PS1:+ F1:1
        net P2 PS2:+ F2:1
        net Q1 F1:2 D1:A
        net Q2 F2:2 D2:A
        net FEED D1:K D2:K S1:1
        net LAMP S1:2 DS1:X1
        net RTN DS1:X2 PS1:- PS2:-
        """)]
    [InlineData("LEDs with resistors behind a diode that guards the supply", """
        supply PS1 12 V { + - }
        diode D1
        actuator A { red rest ; green }
        pole S1 changeover on A { common ; red ; green }
        led D5 2.0 V 20 mA
        led D6 2.1 V 20 mA
        resistor R1 470 ohm 0.5 W
        resistor R2 470 ohm 0.5 W
        net P PS1:+ D1:A
        net FEED D1:K S1:common
        net R S1:red R1:1
        net G S1:green R2:1
        net R2 R1:2 D5:A
        net G2 R2:2 D6:A
        net RTN D5:K D6:K PS1:-
        """)]
    [InlineData("a 24 volt input that is pulled down and switched to the supply", """
        supply PS1 24 V { + - }
        actuator A { off rest ; on }
        switch S1 make on A when on
        board A1 { inputs IN1 max 30 V pull-down 6.8 kohm low 5 V high 15 V ; ground GND }
        net FEED PS1:+ S1:1
        net SIGNAL S1:2 A1:IN1
        net RTN A1:GND PS1:-
        expect A1:IN1 high when A on
        expect A1:IN1 low when A off
        """)]
    [InlineData("an input on the feed of a lamp, at a level that it stands", """
        supply PS1 24 V { + - }
        actuator A { off rest ; on }
        switch S1 make on A when on
        lamp DS1 24 V 40 mA
        board A1 { inputs IN1 max 30 V pull-down 100 kohm low 5 V high 15 V ; ground GND }
        net FEED PS1:+ S1:1
        net LAMP S1:2 DS1:X1 A1:IN1
        net RTN DS1:X2 A1:GND PS1:-
        """)]
    [InlineData("an emergency stop in front of a relay that holds itself", """
        supply PS1 24 V { + - }
        actuator STOP { out rest ; in }
        actuator START { released rest ; pressed springs-to released }
        switch S1 break on STOP when in
        switch S2 make on START when pressed
        relay K1 24 V 30 mA { make ; make }
        diode D1
        lamp DS1 24 V 40 mA
        net FEED PS1:+ S1:1
        net SAFE S1:2 S2:1 K1:13 K1:23
        net COIL S2:2 K1:14 K1:A1 D1:K
        net RUN K1:24 DS1:X1
        net RTN K1:A2 D1:A DS1:X2 PS1:-
        expect DS1 released when STOP in
        never PS1:+ reaches DS1:X1 when STOP in
        """)]
    [InlineData("a unit whose supply is not part of the file", """
        connector J1 { pins ; ring 6 clockwise on front of pins }
        actuator A { off rest ; on }
        pole S1 changeover on A { common J1:1 ; off J1:2 ; on J1:3 }
        lamp DS1 24 V 40 mA { J1:4 J1:5 }
        """)]
    [InlineData("two supplies in series for a relay of twice the voltage", """
        supply PS1 12 V { + - }
        supply PS2 12 V { + - }
        actuator A { off rest ; on }
        switch S1 make on A when on
        relay K1 24 V 30 mA { changeover }
        lamp DS1 12 V 40 mA
        lamp DS2 12 V 40 mA
        net MID PS1:- PS2:+ K1:11
        net FEED PS1:+ S1:1 DS1:X1
        net COIL S1:2 K1:A1
        net ONE K1:12 DS1:X2
        net TWO K1:14 DS2:X1
        net RTN K1:A2 DS2:X2 PS2:-
        """)]
    public void An_honest_design_is_clean(string what, string text)
    {
        var context = new AnalysisContext(TestPanels.Load(text));
        var findings = PanelChecker.AllChecks.Where(c => c.Stage == CheckStage.Positions).SelectMany(c => c.Run(context));
        Assert.Empty(findings.Select(f => $"{what}: {f.Rule}: {f.Message} {string.Join(" | ", f.Trace)}"));
    }

    [Fact]
    public void A_switched_supply_is_on_for_every_claim_that_does_not_name_it()
    {
        const string text = """
            supply PS1 24 V switched { + - }
            actuator A { off rest ; on }
            switch S1 make on A when on
            lamp DS1 24 V 40 mA
            net FEED PS1:+ S1:1
            net LAMP S1:2 DS1:X1
            net RTN DS1:X2 PS1:-
            expect DS1 energised when A on and PS1 on
            expect DS1 released when PS1 off
            """;
        Assert.Empty(Findings(text));
        Assert.Empty(Findings(text + "\nexpect DS1 energised when A on"));
        var finding = Assert.Single(Findings(text + "\nexpect DS1 energised when A on and (PS1 on or PS1 off)"));
        Assert.Equal("expectation-fails", finding.Rule);
        Assert.Equal(["Move A on", "Switch PS1 off"], TraceData.Of(finding).Take(2));

        // A claim about a supply that is not switched asks for nothing; it moves no other verdict.
        finding = Assert.Single(Findings(text.Replace(" switched", "", StringComparison.Ordinal)));
        Assert.Equal(("claim-proves-nothing", "DS1 released"), (finding.Rule, finding.Message[..12]));
    }

    [Fact]
    public void Findings_are_the_same_every_time()
    {
        var text = File.ReadAllText(Repository.PathOf("examples/wrong/sneak-path.panel"));
        string Told() => string.Join('\n', Findings(text).Select(f => $"{f.Message} {string.Join(" | ", f.Trace)}"));
        Assert.Equal(Told(), Told());
    }

    private static List<Diagnostic> Findings(string text)
    {
        var context = new AnalysisContext(TestPanels.Load(text));
        return [.. PanelChecker.AllChecks.Where(c => c.Stage == CheckStage.Positions).SelectMany(c => c.Run(context))];
    }
}
