using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Text;
using Xunit;
using static Schematic.Tests.Analysis.PanelBuilder;

namespace Schematic.Tests.Analysis.Positions;

/// <summary>What shows for a moment while an actuator moves from one position to the next.</summary>
public class PassingTests
{
    [Theory]
    [InlineData(false, false)]
    [InlineData(true, true)]
    public void Neighbours_that_are_joined_for_a_moment_short_the_supply(bool bridges, bool isShorted)
    {
        var builder = Pole(bridges, "a", "b").Wire("S1:a", "PS1:+").Wire("S1:b", "PS1:-").Lamp("DS1").Wire("S1:C", "DS1:X1").Wire("DS1:X2", "PS1:-");
        if (!isShorted)
        {
            Assert.Empty(builder.FindAll());
            return;
        }

        var finding = Assert.Single(builder.FindAll());
        Assert.Equal(("supply-shorted", Severity.Error), (finding.Rule, finding.Severity));
        Assert.StartsWith("PS1 is shorted in passing", finding.Message, StringComparison.Ordinal);
        Assert.Equal(
            ["everything at rest", "while KNOB moves from a to b", "PS1:+ - W1 - S1:a - S1:C - S1:b - W2 - PS1:-"], finding.Trace.Select(t => t.ToString()));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_last_position_of_an_endless_knob_is_a_neighbour_of_the_first(bool isEndless)
    {
        var builder = new PanelBuilder().Supply("PS1");
        builder = (isEndless ? builder.Endless("KNOB", "a", "b", "c") : builder.Actuator("KNOB", "a", "b", "c")).Pole("S1", "KNOB", "a", "b", "c").Bridging()
            .Wire("S1:a", "PS1:+").Wire("S1:c", "PS1:-").Lamp("DS1").Wire("S1:C", "DS1:X1").Wire("DS1:X2", "PS1:-");
        var shorts = builder.FindAll().Where(f => f.Rule == "supply-shorted").ToList();
        if (!isEndless) Assert.Empty(shorts);
        else Assert.Contains("while KNOB moves from a to c", Assert.Single(shorts).Trace.Select(t => t.ToString()));
    }

    [Theory]
    [InlineData(false, false)]
    [InlineData(true, true)]
    public void A_relay_that_makes_before_it_breaks_joins_its_throws_while_it_changes_over(bool bridges, bool isShorted)
    {
        var builder = new PanelBuilder().Supply("PS1").Actuator("A", "off", "on").Make("S1", "A", "on").Relay("K1", sets: 1);
        if (bridges) builder.BridgingRelay();
        builder.Wire("PS1:+", "S1:1").Wire("S1:2", "K1:A1").Wire("K1:A2", "PS1:-")
            .Wire("K1:12", "PS1:+").Wire("K1:14", "PS1:-").Lamp("DS1").Wire("K1:11", "DS1:X1").Wire("DS1:X2", "PS1:-");
        if (!isShorted)
        {
            Assert.Empty(builder.FindAll());
            return;
        }

        var finding = Assert.Single(builder.FindAll());
        Assert.Equal("PS1 is shorted in passing: PS1:+ meets PS1:- with no load between.", finding.Message);
        Assert.Equal(
            ["move A to on", "while K1 changes from released to operated", "PS1:+ - W4 - K1:12 - K1:11 - K1:14 - W5 - PS1:-"], finding.Trace.Select(t => t.ToString()));
    }

    [Fact]
    public void A_relay_that_changes_over_only_when_all_is_switched_on_does_so_in_passing_too()
    {
        var finding = Assert.Single(new PanelBuilder().Supply("PS1").Relay("K1", sets: 1).BridgingRelay()
            .Wire("PS1:+", "K1:A1").Wire("K1:A2", "PS1:-").Wire("K1:12", "PS1:+").Wire("K1:14", "PS1:-").FindAll(), f => f.Rule == "supply-shorted");
        Assert.Equal(["everything at rest", "while K1 changes from released to operated"], finding.Trace.Take(2).Select(t => t.ToString()));
    }

    [Fact]
    public void A_relay_stands_as_it_does_on_the_way_when_another_changes_over()
    {
        // K1 joins its throws while K2, which follows it, still feeds the one; once all is at rest it does not.
        var builder = new PanelBuilder().Supply("PS1").Actuator("A", "off", "on").Make("S1", "A", "on").Relay("K1", sets: 2).BridgingRelay().Relay("K2", sets: 1)
            .Wire("PS1:+", "S1:1").Wire("S1:2", "K1:A1").Wire("K1:A2", "PS1:-").Wire("PS1:+", "K1:21").Wire("K1:24", "K2:A1").Wire("K2:A2", "PS1:-")
            .Wire("K2:11", "PS1:+").Wire("K2:12", "K1:12").Wire("K1:14", "PS1:-").Lamp("DS1").Wire("K1:11", "DS1:X1").Wire("DS1:X2", "PS1:-");
        Assert.Contains(builder.FindAll(), f => f.Rule == "supply-shorted" && f.Message.Contains("in passing", StringComparison.Ordinal));
    }

    [Fact]
    public void An_input_over_its_limit_for_a_moment_is_found_with_the_moves()
    {
        var finding = Assert.Single(Pole(true, "a", "b", "c").Board("B1", Input("IN1")).Lamp("DS1")
            .Wire("B1:GND", "PS1:-").Wire("S1:C", "DS1:X1").Wire("DS1:X2", "PS1:-").Wire("S1:b", "B1:IN1").Wire("S1:c", "PS1:+").FindAll(), f => f.Rule == "over-limit-input");
        Assert.StartsWith("PS1 brings B1:IN1 to 24.0 V in passing;", finding.Message, StringComparison.Ordinal);
        Assert.Equal(["move KNOB to b", "while KNOB moves from b to c"], finding.Trace.Take(2).Select(t => t.ToString()));
    }

    [Fact]
    public void Other_decks_stand_as_before_or_as_after()
    {
        // S1 joins a and b for a moment; S2 breaks first, but it may be the later of the two.
        var builder = Pole(true, "a", "b").Pole("S2", "KNOB", "a").Lamp("DS1").Wire("DS1:X1", "S1:C").Wire("DS1:X2", "PS1:-")
            .Wire("S1:a", "S2:a").Wire("S2:C", "PS1:+").Wire("S1:b", "PS1:-");
        Assert.Single(builder.FindAll(), f => f.Rule == "supply-shorted" && f.Message.Contains("in passing", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(false, false, true)]
    [InlineData(false, true, false)]
    [InlineData(true, true, true)]
    public void A_contact_that_breaks_first_opens_for_a_moment_where_a_claim_asks_for_it(bool bridges, bool inPassing, bool holds)
    {
        var builder = Pole(bridges, "a", "b").Wire("PS1:+", "S1:C").Wire("S1:a", "S1:b", "DS1:X1").Lamp("DS1").Wire("DS1:X2", "PS1:-")
            .Expect(new EnergisedExpectation("DS1", true, At("KNOB", "a", "b"), SourceSpan.None) { IsInPassing = inPassing });
        var failed = builder.FindAll().Where(f => f.Rule == "expectation-fails").ToList();
        if (holds) Assert.Empty(failed);
        else Assert.Equal(("DS1 energised does not hold in passing in every position asked for.", "while KNOB moves from a to b"), (failed[0].Message, failed[0].Trace[1].ToString()));
    }

    [Fact]
    public void A_claim_about_one_position_is_not_asked_on_the_way_out_of_it() => Assert.DoesNotContain(
        Pole(false, "a", "b").Wire("PS1:+", "S1:C").Wire("S1:a", "DS1:X1").Lamp("DS1").Wire("DS1:X2", "PS1:-")
            .Expect(new EnergisedExpectation("DS1", true, At("KNOB", "a"), SourceSpan.None) { IsInPassing = true }).FindAll(),
        f => f.Rule == "expectation-fails");

    [Fact]
    public void A_claim_in_passing_moves_no_other_verdict()
    {
        // Opening S1 alone would lift the input; no claim speaks of it.
        PanelBuilder Build() => Pole(false, "a", "b").Resistor("R1", 4700).Resistor("R2", 1000).Board("B1", Input("IN1", pullUp: false))
            .Wire("PS1:+", "R1:1").Wire("R1:2", "B1:IN1", "R2:1").Wire("R2:2", "S1:C").Wire("S1:a", "S1:b", "PS1:-", "B1:GND");
        Assert.DoesNotContain(Build().FindAll(), f => f.Rule == "over-limit-input");
        Assert.DoesNotContain(
            Build().Expect(new ContinuityExpectation(Id("PS1:+"), Id("PS1:-"), false, Always, SourceSpan.None) { IsInPassing = true }).FindAll(),
            f => f.Rule == "over-limit-input");
    }

    [Fact]
    public void Never_holds_for_a_moment_too()
    {
        var finding = Assert.Single(Pole(true, "a", "b").Board("B1", Input("IN1", max: null)).Wire("S1:a", "PS1:+").Wire("S1:b", "B1:IN1").Wire("B1:GND", "PS1:-")
            .Expect(new NeverExpectation([Id("PS1:+")], [Id("B1:IN1")], Always, SourceSpan.None)).FindAll(), f => f.Rule == "never-violated");
        Assert.Equal("PS1:+ reaches B1:IN1 in passing.", finding.Message);
    }

    [Fact]
    public void A_spring_takes_the_knob_over_all_positions_on_its_way()
    {
        var builder = new PanelBuilder().Supply("PS1").Actuator("KNOB", "a*", "b", "c", "d>a").Lock("KNOB", "b", Energised("DS1")).Lamp("DS1")
            .Pole("S1", "KNOB", "a", "b", "c", "d").Bridging().Wire("S1:c", "PS1:+").Wire("S1:b", "PS1:-");
        var moves = builder.Proof.States.Moves.Single(m => m.Move.Kind == Schematic.Analysis.States.MoveKind.LetGo).Move;
        Assert.Equal([0, 0, 1, 1, 2, 2], builder.Proof.States.PassingsOf(moves).Select(p => p.From));
    }

    private static PanelBuilder Pole(bool bridges, params string[] positions)
    {
        var builder = new PanelBuilder().Supply("PS1").Actuator("KNOB", positions).Pole("S1", "KNOB", positions);
        return bridges ? builder.Bridging() : builder;
    }
}
