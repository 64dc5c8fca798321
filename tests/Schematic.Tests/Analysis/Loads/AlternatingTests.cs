using Schematic.Analysis.Electrical;
using Schematic.Diagnostics;
using Xunit;

namespace Schematic.Tests.Analysis.Loads;

/// <summary>Alternating supplies: both half-waves are solved, and no direct-current advice is given.</summary>
public sealed class AlternatingTests
{
    private static string Lamp(string diode, string lamp = "lamp DS1 12 V 100 mA") => $$"""
        actuator KEY { off rest ; on }
        supply PS1 12 V alternating
        switch S1 make on KEY when on
        {{lamp}}
        diode D1
        net FEED PS1:+ S1:1
        {{diode}}
        expect DS1 energised when KEY on
        """;

    [Theory]
    [InlineData("net A S1:2 D1:A\nnet B D1:K DS1:X1\nnet RTN DS1:X2 PS1:-")]
    [InlineData("net A S1:2 D1:K\nnet B D1:A DS1:X1\nnet RTN DS1:X2 PS1:-")]
    public void A_lamp_is_lit_on_either_half_wave(string wiring)
    {
        // One half of the wave: 0.707 of 12 V less a diode's drop, light (8 / 12)^3.4: lit, and dim.
        Assert.Equal(["lamp-dim"], LoadPanels.Rules(Lamp(wiring)));
        var lamp = LoadPanels.Context(Lamp(wiring)).Worst.Loads.Single(l => l.Name == "DS1");
        Assert.Equal((12 - 0.7) / Math.Sqrt(2), lamp.MostVolts!.Value, 0.02);
    }

    [Fact]
    public void On_both_half_waves_a_lamp_gets_what_the_supply_says() => Assert.Empty(LoadPanels.Rules("""
        actuator KEY { off rest ; on }
        supply PS1 12 V alternating
        switch S1 make on KEY when on
        lamp DS1 12 V 100 mA
        net FEED PS1:+ S1:1
        net A S1:2 DS1:X1
        net RTN DS1:X2 PS1:-
        expect DS1 energised when KEY on
        """));

    [Theory]
    [InlineData("D1:A", "D1:K")]
    [InlineData("D1:K", "D1:A")]
    public void A_diode_across_the_coil_shorts_every_second_half_wave(string one, string other)
    {
        var shorted = LoadPanels.Single($$"""
            actuator KEY { off rest ; on }
            supply PS1 24 V alternating
            switch S1 make on KEY when on
            relay K1 24 V 50 mA { make }
            diode D1
            net FEED PS1:+ S1:1
            net A S1:2 K1:A1 {{one}}
            net RTN K1:A2 {{other}} PS1:-
            """, "supply-shorted");
        Assert.Contains(shorted.Trace, t => t.Label == "path");
    }

    [Fact]
    public void The_suppression_of_an_alternating_coil_is_no_diode()
    {
        var missing = LoadPanels.Single("""
            actuator KEY { off rest ; on }
            supply PS1 24 V alternating
            switch S1 make on KEY when on
            solenoid L1 24 V 50 mA
            net FEED PS1:+ S1:1
            net A S1:2 L1:A1
            net RTN L1:A2 PS1:-
            """, "coil-without-suppression");
        Assert.Contains("a plain diode would short the supply: put a varistor", missing.Help, StringComparison.Ordinal);
        Assert.DoesNotContain("cathode", missing.Help, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("max 30 V", "below its ground")]
    [InlineData("max 10 V", "10.0 V at most")]
    public void Alternating_voltage_on_an_input_reaches_its_peaks(string most, string word)
    {
        var found = LoadPanels.Single($$"""
            actuator KEY { off rest ; on }
            supply PS1 12 V alternating
            switch S1 make on KEY when on
            board A1 { inputs IN1 {{most}} pull-down 10 kohm ; ground GND }
            net FEED PS1:+ S1:1
            net A S1:2 A1:IN1
            net RTN PS1:- A1:GND
            """, "over-limit-input");
        Assert.Contains("17.0 V", found.Message, StringComparison.Ordinal); // 12 x 1.414.
        Assert.Contains(word, found.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void An_input_behind_a_resistor_and_an_alternating_supply_is_no_constant_level() => Assert.Contains(
        LoadPanels.Check("""
            actuator KEY { off rest ; on }
            supply PS1 12 V alternating
            switch S1 make on KEY when on
            board A1 { inputs IN1 pull-down 10 kohm low 5 V high 8 V ; ground GND }
            net FEED PS1:+ S1:1
            net A S1:2 A1:IN1
            net RTN PS1:- A1:GND
            expect A1:IN1 high when KEY on
            """), d => d.Rule == "expectation-fails" && d.Severity == Severity.Error);

    [Theory]
    [InlineData(24, 24, 24)]
    [InlineData(-24, -24, -24)]
    [InlineData(24, -24, 24)]
    [InlineData(24, 0, 16.970562748)]
    public void The_effective_value_is_the_root_of_the_mean_square(double one, double other, double effective) =>
        Assert.Equal(effective, HalfWaves.Effective(one, other), 1e-6);

    [Theory]
    [InlineData(0.02, -0.00001, 0.01)]
    [InlineData(0.02, 0.02, 0.02)]
    public void An_indicator_shines_with_the_mean_of_its_forward_current(double one, double other, double mean) =>
        Assert.Equal(mean, HalfWaves.MeanForward(one, other), 1e-9);
}
