using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Text;
using Xunit;
using static Schematic.Tests.Analysis.PanelBuilder;

namespace Schematic.Tests.Analysis.Positions;

public class FindingTests
{
    [Fact]
    public void A_supply_shorted_in_one_position_is_found_with_the_moves_and_the_path()
    {
        var finding = Assert.Single(new PanelBuilder().Supply("PS1").Actuator("LEVER", "normal", "check", "reverse")
            .Pole("S1", "LEVER", "normal", "reverse").Lamp("DS1")
            .Wire("PS1:+", "S1:C").Wire("S1:normal", "DS1:X1").Wire("DS1:X2", "PS1:-").Wire("S1:reverse", "PS1:-").FindAll());
        Assert.Equal("supply-shorted", finding.Rule);
        Assert.Equal(
            ["Move LEVER reverse", "path PS1:+ [W1] S1:C S1:reverse [W4] PS1:-"], TraceData.Of(finding));
    }

    [Fact]
    public void A_diode_the_wrong_way_round_shorts_the_supply()
    {
        var finding = Assert.Single(new PanelBuilder().Supply("PS1").Actuator("B", "off", "on>off").Make("S1", "B", "on")
            .Solenoid("L1").Diode("D1")
            .Wire("PS1:+", "S1:1").Wire("S1:2", "L1:A1", "D1:A").Wire("PS1:-", "L1:A2", "D1:K").FindAll());
        Assert.Equal("supply-shorted", finding.Rule);
        Assert.Equal(["Hold B on", "path PS1:+ [W1] S1:1 S1:2 [W2] L1:A1 [W3] D1:A D1:K [W5] L1:A2 [W4] PS1:-"],
            TraceData.Of(finding));
    }

    [Fact]
    public void A_lamp_does_not_protect_an_input()
    {
        var finding = Assert.Single(new PanelBuilder().Supply("PS1").Actuator("A", "off", "on").Make("S1", "A", "on")
            .Lamp("DS1").Board("A1", Input("IN1"))
            .Wire("PS1:+", "S1:1").Wire("S1:2", "DS1:X1").Wire("DS1:X2", "A1:IN1").Wire("A1:GND", "PS1:-").FindAll(),
            f => f.Rule == "over-limit-input");
        Assert.Equal(
            [
                "Move A on", "path PS1:+ [W1] S1:1 S1:2 [W2] DS1:X1 DS1:X2 [W3] A1:IN1",
                "fact A1:IN1 A1:GND stands at 22.9 V",
            ],
            TraceData.Of(finding));
        Assert.Equal([new(SubjectKind.Terminal, "A1:IN1"), new(SubjectKind.Part, "PS1")], finding.Subjects.AsEnumerable());
        Assert.Equal(["reaches", "limit"], finding.Values.Select(v => v.Name));
    }

    [Fact]
    public void A_diode_does_not_protect_an_input_that_takes_no_current()
    {
        var finding = Assert.Single(new PanelBuilder().Supply("PS1").Actuator("A", "off", "on").Make("S1", "A", "on")
            .Diode("D1").Board("A1", Input("IN1", pullUp: false))
            .Wire("PS1:+", "S1:1").Wire("S1:2", "D1:A").Wire("D1:K", "A1:IN1").Wire("A1:GND", "PS1:-").FindAll(),
            f => f.Rule == "over-limit-input");
        Assert.Contains("to 23.3 V", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Loads_behind_a_diode_that_guards_the_supply_are_fed()
    {
        var builder = new PanelBuilder().Supply("PS1").Diode("D1").Wire("PS1:+", "D1:A");
        for (var i = 0; i < 24; i++)
        {
            builder.Actuator($"A{i}", "off", "on").Make($"S{i}", $"A{i}", "on").Lamp($"DS{i}")
                .Wire("D1:K", $"S{i}:1").Wire($"S{i}:2", $"DS{i}:X1").Wire($"DS{i}:X2", "PS1:-");
        }

        Assert.Empty(builder.FindAll()); // In time: 2 to the power of 24 states.
    }

    [Theory]
    [InlineData(8, true)]
    [InlineData(30, false)]
    public void Lamps_behind_one_dropper_resistor_are_proved_or_named_as_unproved(int lamps, bool isProved)
    {
        var builder = new PanelBuilder().Supply("PS1").Resistor("R1", 1).Wire("PS1:+", "R1:1");
        for (var i = 0; i < lamps; i++)
        {
            builder.Actuator($"A{i}", "off", "on").Make($"S{i}", $"A{i}", "on").Lamp($"DS{i}")
                .Wire("R1:2", $"S{i}:1").Wire($"S{i}:2", $"DS{i}:X1").Wire($"DS{i}:X2", "PS1:-");
        }

        if (isProved) Assert.Empty(builder.FindAll());
        else Assert.Equal("proof-incomplete", Assert.Single(builder.FindAll()).Rule);
    }

    [Fact]
    public void A_divider_that_keeps_the_voltage_down_is_left_in_peace()
    {
        // 24 V over 4.7 kohm and 1 kohm: 4.2 V.
        PanelBuilder Build(double lower) => new PanelBuilder().Supply("PS1").Actuator("A", "off", "on").Make("S1", "A", "on")
            .Resistor("R1", 4700).Resistor("R2", lower).Board("A1", Input("IN1", pullUp: false))
            .Wire("PS1:+", "S1:1").Wire("S1:2", "R1:1").Wire("R1:2", "R2:1", "A1:IN1").Wire("R2:2", "A1:GND", "PS1:-");
        Assert.Empty(Build(1000).FindAll());
        Assert.Equal("over-limit-input", Assert.Single(Build(2200).FindAll()).Rule); // 7.7 V
    }

    [Fact]
    public void Supplies_joined_in_one_position_are_tied()
    {
        PanelBuilder Build() => new PanelBuilder().Supply("PS1").Supply("PS2").Actuator("A", "own", "both").Make("S1", "A", "both")
            .Lamp("DS1").Lamp("DS2").Wire("PS1:+", "DS1:X1").Wire("PS2:+", "DS2:X1").Wire("PS1:-", "DS1:X2", "DS2:X2", "PS2:-");
        Assert.Empty(Build().FindAll().Where(f => f.Rule != "contact-never-closes"));
        var finding = Assert.Single(Build().Wire("PS1:+", "S1:1").Wire("PS2:+", "S1:2").FindAll());
        Assert.Equal("supplies-tied", finding.Rule);
        Assert.Equal("Move A both", TraceData.Of(finding).First());
        Assert.Equal(["PS1", "PS2"], finding.Subjects.Select(s => s.Name));
    }

    [Fact]
    public void A_diode_from_the_higher_supply_to_the_lower_ties_them()
    {
        PanelBuilder Build(double first, double second) => new PanelBuilder().Supply("PS1", first).Supply("PS2", second).Diode("D1")
            .Lamp("DS1").Lamp("DS2", 12).Wire("PS1:+", "DS1:X1", "D1:A").Wire("D1:K", "DS2:X1", "PS2:+")
            .Wire("PS1:-", "DS1:X2", "DS2:X2", "PS2:-");
        Assert.Equal("supplies-tied", Assert.Single(Build(24, 12).FindAll()).Rule);
        Assert.Empty(Build(12, 24).FindAll());
    }

    [Fact]
    public void Supplies_in_series_are_not_tied()
    {
        Assert.Empty(new PanelBuilder().Supply("PS1", 12).Supply("PS2", 12).Lamp("DS1").Wire("PS1:-", "PS2:+")
            .Wire("PS1:+", "DS1:X1").Wire("DS1:X2", "PS2:-").FindAll());
    }

    [Fact]
    public void A_lamp_fed_back_through_another_lamp_is_a_sneak_path()
    {
        // Two lamps share a return that S3 opens. With only S1 closed the current of DS1 then goes backwards through DS2 and on
        // through the coil beside it (the classic shape of a sneak path, common practice). 24 V over 600 + 600 + 800 ohm.
        var finding = Assert.Single(new PanelBuilder().Supply("PS1").Actuator("A", "off", "on").Actuator("B", "off", "on")
            .Actuator("C", "closed", "open").Make("S1", "A", "on").Make("S2", "B", "on").Make("S3", "C", "closed")
            .Lamp("DS1").Lamp("DS2").Solenoid("L1", ohms: 800)
            .Wire("PS1:+", "S1:1").Wire("S1:2", "DS1:X1").Wire("PS1:+", "S2:1").Wire("S2:2", "DS2:X1", "L1:A1")
            .Wire("DS1:X2", "DS2:X2", "S3:1").Wire("S3:2", "PS1:-").Wire("L1:A2", "PS1:-").FindAll());
        Assert.Equal("sneak-path", finding.Rule);
        Assert.Contains("DS1 gets 7.2 V", finding.Message, StringComparison.Ordinal);
        Assert.Equal(
            [
                "Move A on", "Move C open", "fact DS1 gets 7.2 V", "path PS1:+ [W1] S1:1 S1:2 [W2] DS1:X1",
                "path DS1:X2 [W6] DS2:X2 DS2:X1 [W5] L1:A1 L1:A2 [W9] PS1:-",
            ],
            TraceData.Of(finding));
    }

    [Fact]
    public void Two_lamps_always_in_series_are_meant_so() => Assert.Empty(
        new PanelBuilder().Supply("PS1", 24).Actuator("A", "off", "on").Make("S1", "A", "on").Lamp("DS1", 14).Lamp("DS2", 14)
            .Wire("PS1:+", "S1:1").Wire("S1:2", "DS1:X1").Wire("DS1:X2", "DS2:X1").Wire("DS2:X2", "PS1:-").FindAll());

    [Fact]
    public void An_input_without_a_pull_up_floats_while_its_switch_is_open()
    {
        PanelBuilder Build(bool pullUp) => new PanelBuilder().Actuator("A", "off", "on").Make("S1", "A", "on")
            .Board("A1", Input("IN1", pullUp)).Wire("A1:IN1", "S1:1").Wire("S1:2", "A1:GND");
        Assert.Empty(Build(pullUp: true).FindAll());
        Assert.Equal("floating-input", Assert.Single(Build(pullUp: false).FindAll()).Rule);
    }

    [Fact]
    public void An_input_strapped_to_ground_never_changes_unless_that_is_stated()
    {
        PanelBuilder Build() => new PanelBuilder().Actuator("A", "off", "on").Make("S1", "A", "on")
            .Board("A1", Input("IN1"), Input("IN2")).Wire("A1:IN1", "S1:1").Wire("S1:2", "A1:GND", "A1:IN2");
        Assert.Equal("input-never-changes", Assert.Single(Build().FindAll()).Rule);
        Assert.Empty(Build().Expect(new LevelExpectation(Id("A1:IN2"), InputLevel.Low, Always, SourceSpan.None)).FindAll());
    }

    [Fact]
    public void A_contact_that_every_position_closes_never_opens()
    {
        PanelBuilder Build(params string[] closed) => new PanelBuilder().Actuator("A", "one", "two").Make("S1", "A", closed);
        Assert.Empty(Build("two").FindAll());
        Assert.Equal("contact-never-opens", Assert.Single(Build("one", "two").FindAll()).Rule);
        Assert.Equal("contact-never-closes", Assert.Single(Build().FindAll()).Rule);
    }

    [Fact]
    public void A_contact_that_others_always_bridge_never_opens_its_circuit()
    {
        var findings = new PanelBuilder().Actuator("A", "one", "two").Pole("S1", "A", "one", "two")
            .Wire("S1:one", "S1:two").FindAll();
        Assert.Equal(2, findings.Length);
        Assert.All(findings, f => Assert.Equal("contact-never-opens", f.Rule));
    }

    [Fact]
    public void A_lamp_without_a_return_is_never_energised()
    {
        var finding = Assert.Single(new PanelBuilder().Supply("PS1").Actuator("A", "off", "on").Make("S1", "A", "on").Lamp("DS1")
            .Wire("PS1:+", "S1:1").Wire("S1:2", "DS1:X1").FindAll());
        Assert.Equal("load-never-energised", finding.Rule);
        Assert.Equal(
            ["Move A on", "path PS1:+ [W1] S1:1 S1:2 [W2] DS1:X1", "fact DS1:X2"], TraceData.Of(finding));
    }

    [Fact]
    public void An_led_the_wrong_way_round_is_never_energised()
    {
        PanelBuilder Build(string to, string back) => new PanelBuilder().Supply("PS1", 12).Actuator("A", "off", "on")
            .Make("S1", "A", "on").Led("D5").Resistor("R1", 500)
            .Wire("PS1:+", "S1:1").Wire("S1:2", "R1:1").Wire("R1:2", to).Wire(back, "PS1:-");
        Assert.Empty(Build("D5:A", "D5:K").FindAll());
        Assert.Equal("load-never-energised", Assert.Single(Build("D5:K", "D5:A").FindAll()).Rule);
    }

    [Fact]
    public void A_panel_without_a_supply_is_not_blamed_for_what_it_leaves_out() => Assert.Empty(
        new PanelBuilder().Actuator("A", "off", "on").Make("S1", "A", "on").Lamp("DS1").Relay("K1")
            .Board("A1", Input("IN1", pullUp: false)).Wire("DS1:X1", "S1:1").Wire("A1:IN1", "K1:11").FindAll());

    [Fact]
    public void A_lock_that_waits_for_its_own_lever_is_the_one_finding()
    {
        var finding = Assert.Single(new PanelBuilder().Supply("PS1").Actuator("LEVER", "normal", "reverse").Solenoid("L1")
            .Lamp("DS1").Lock("LEVER", "normal", Energised("L1")).Make("S1", "LEVER", "reverse").Make("S2", "LEVER", "reverse")
            .Wire("PS1:+", "S1:1").Wire("S1:2", "L1:A1").Wire("L1:A2", "PS1:-")
            .Wire("PS1:+", "S2:1").Wire("S2:2", "DS1:X1").Wire("DS1:X2", "PS1:-").FindAll());
        Assert.Equal("lock-never-released", finding.Rule);
        Assert.Equal("S1 is never closed while LEVER stands at normal: feed L1 past it, from a contact that is closed there.", finding.Help);
    }

    // The button is there already: it is the other contact in the way that has to be told.
    [Fact]
    public void A_release_button_behind_a_contact_of_the_locked_lever_is_not_advised_again()
    {
        var finding = Assert.Single(new PanelBuilder().Supply("PS1").Actuator("LEVER", "normal", "reverse").Actuator("BUTTON", "released", "pressed")
            .Solenoid("L1").Lock("LEVER", "normal", Energised("L1")).Make("S1", "BUTTON", "pressed").Make("S2", "LEVER", "reverse")
            .Wire("PS1:+", "S1:1").Wire("S1:2", "S2:1").Wire("S2:2", "L1:A1").Wire("L1:A2", "PS1:-").FindAll());
        Assert.Equal("lock-never-released", finding.Rule);
        Assert.Equal("S2 is never closed while LEVER stands at normal: feed L1 past it, from a contact that is closed there.", finding.Help);
    }

    [Fact]
    public void An_expectation_that_fails_shows_the_position_and_the_voltage()
    {
        PanelBuilder Build(InputLevel level) => new PanelBuilder().Actuator("LEVER", "normal", "reverse")
            .Pole("S1", "LEVER", "normal", "reverse").Board("A1", Input("IN1"))
            .Wire("A1:GND", "S1:C").Wire("A1:IN1", "S1:reverse")
            .Expect(new LevelExpectation(Id("A1:IN1"), level, At("LEVER", "reverse"), SourceSpan.None));
        Assert.Empty(Build(InputLevel.Low).FindAll());
        var finding = Assert.Single(Build(InputLevel.High).FindAll());
        Assert.Equal("expectation-fails", finding.Rule);
        Assert.Equal(
            ["Move LEVER reverse", "fact A1:IN1 A1:GND stands at 0.0 V", "path A1:GND [W1] S1:C S1:reverse [W2] A1:IN1"],
            TraceData.Of(finding));
    }

    [Fact]
    public void An_expectation_whose_positions_never_meet_proves_nothing()
    {
        var finding = Assert.Single(new PanelBuilder().Actuator("A", "off", "on").Make("S1", "A", "on").Expect(
            new ContinuityExpectation(Id("S1:1"), Id("S1:2"), true, new AllCondition([At("A", "off"), At("A", "on")], SourceSpan.None), SourceSpan.None)).FindAll());
        Assert.Equal(("claim-proves-nothing", Severity.Warning), (finding.Rule, finding.Severity));
    }

    [Fact]
    public void Never_counts_loads_as_joints_but_ends_at_the_return()
    {
        PanelBuilder Build(string end) => new PanelBuilder().Supply("PS1").Actuator("A", "off", "on").Make("S1", "A", "on")
            .Lamp("DS1").Board("A1", Input("IN1", max: null))
            .Wire("PS1:+", "DS1:X1").Wire("DS1:X2", end).Wire("PS1:-", "A1:GND").Wire("A1:GND", "S1:1").Wire("S1:2", "A1:IN1")
            .Expect(new NeverExpectation([Id("PS1:+")], [Id("A1:IN1")], Always, SourceSpan.None));
        Assert.Empty(Build("PS1:-").FindAll());
        var finding = Assert.Single(Build("A1:IN1").FindAll());
        Assert.Equal("never-violated", finding.Rule);
        Assert.Equal(["rest", "path PS1:+ [W1] DS1:X1 DS1:X2 [W2] A1:IN1"], TraceData.Of(finding));
    }
}
