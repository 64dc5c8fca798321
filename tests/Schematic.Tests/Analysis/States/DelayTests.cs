using Schematic.Analysis;
using Schematic.Analysis.Positions;
using Schematic.Analysis.States;
using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Text;
using Xunit;
using static Schematic.Tests.Analysis.PanelBuilder;

namespace Schematic.Tests.Analysis.States;

/// <summary>
/// Relays whose contacts follow their coil after a while. What on-delay and off-delay contacts do is common practice; their
/// terminals 15-16-18 are those of EN 50005 (from memory).
/// </summary>
public class DelayTests
{
    [Fact]
    public void On_delay_contacts_stand_released_until_the_delay_is_over_and_fall_back_with_their_coil()
    {
        var proof = Timer(5, null).Proof;
        Assert.Equal(["move LEVER to on"], Lines(proof, All(Energised("K1"), Delayed("K1", false))));
        Assert.Equal(["move LEVER to on", "wait until K1 is delayed-operated"], Lines(proof, Delayed("K1")));
        Assert.False(CanBe(proof, All(Energised("K1", false), Delayed("K1"))));
    }

    [Fact]
    public void Off_delay_contacts_operate_with_their_coil_and_stay_for_the_delay()
    {
        var proof = Timer(null, 5).Proof;
        Assert.Equal(["move LEVER to on"], Lines(proof, Delayed("K1")));
        Assert.False(CanBe(proof, All(Energised("K1"), Delayed("K1", false))));
        Assert.Equal(["move LEVER to on", "move LEVER to off"], Lines(proof, All(Energised("K1", false), Delayed("K1"))));
    }

    [Fact]
    public void With_both_delays_the_contacts_wait_either_way()
    {
        var proof = Timer(5, 3).Proof;
        Assert.True(CanBe(proof, All(Energised("K1"), Delayed("K1", false))));
        Assert.True(CanBe(proof, All(Energised("K1", false), Delayed("K1"))));
    }

    [Fact]
    public void A_claim_holds_before_the_delay_is_over_too()
    {
        Panel Claiming(Condition when) => Timer(5, null)
            .Lamp("DS1").Wire("PS1:+", "K1:15").Wire("K1:18", "DS1:X1").Wire("DS1:X2", "PS1:-")
            .Expect(new EnergisedExpectation("DS1", true, when, SourceSpan.None)).Panel;
        var failed = Assert.Single(Check(Claiming(Energised("K1"))), f => f.Rule == "expectation-fails");
        Assert.Contains("K1 operated, K1 still delayed-released", failed.Trace.Select(t => t.ToString()));
        Assert.DoesNotContain(Check(Claiming(Delayed("K1"))), f => f.Rule == "expectation-fails");
    }

    [Fact]
    public void A_short_that_shows_only_while_the_delay_runs_is_found()
    {
        // The instantaneous contact puts plus on the joint, the delayed one takes minus from it five seconds later.
        var builder = Timer(5, null).Wire("PS1:+", "K1:21").Wire("K1:24", "K1:16").Wire("K1:15", "PS1:-");
        var finding = Assert.Single(builder.FindAll(), f => f.Rule == "supply-shorted");
        Assert.Equal("K1 operated, K1 still delayed-released", finding.Trace[1].ToString());
        // With the delayed make contact in its place the short comes when the delay ends; the coil then falls and clears it.
        var late = Timer(5, null).Wire("PS1:+", "K1:21").Wire("K1:24", "K1:18").Wire("K1:15", "PS1:-");
        Assert.Contains(late.FindAll(), f => f.Rule is "supply-shorted" or "relay-chatter" or "relay-flashes");
    }

    [Fact]
    public void Two_delays_that_feed_one_another_flash()
    {
        // The usual flasher of two on-delay relays: K1 is fed past K2, K2 through K1 (common practice).
        var finding = Assert.Single(Flasher().FindAll());
        Assert.Equal(("relay-flashes", Severity.Note), (finding.Rule, finding.Severity));
        Assert.Equal("K2 flashes while nobody touches anything: a round takes 1.2 s.", finding.Message);
        Assert.Contains(finding.Trace, t => t.ToString() == "wait until K1 is delayed-operated");
        Assert.Contains(finding.Trace, t => t.ToString() == "and so on for ever");
    }

    [Fact]
    public void A_relay_that_opens_its_own_feed_after_a_while_lets_go_for_a_moment_again_and_again()
    {
        var builder = new PanelBuilder().Supply("PS1").Actuator("LEVER", "off", "on").Make("S1", "LEVER", "on").TimeDelay("K1", 5)
            .Wire("PS1:+", "S1:1").Wire("S1:2", "K1:15").Wire("K1:16", "K1:A1").Wire("K1:A2", "PS1:-");
        var finding = Assert.Single(builder.FindAll());
        Assert.Equal(("relay-flashes", Severity.Warning), (finding.Rule, finding.Severity));
        Assert.Equal("K1 lets go for a moment each time a delay ends, and operates again at once.", finding.Message);
    }

    [Fact]
    public void A_star_delta_starter_never_closes_both_contactors_if_each_locks_the_other_out()
    {
        // K1 times; K2 star past the delayed break contact, K3 delta through the delayed make contact, each past the other's break
        // contact (common practice).
        var builder = Timer(5, null).Relay("K2").Relay("K3")
            .Wire("PS1:+", "S2:1").Make("S2", "LEVER", "on").Wire("S2:2", "K1:15")
            .Wire("K1:16", "K3:11").Wire("K3:12", "K2:A1").Wire("K1:18", "K2:11").Wire("K2:12", "K3:A1").Wire("K2:A2", "K3:A2", "PS1:-");
        var proof = builder.Proof;
        Assert.True(CanBe(proof, Energised("K2")));
        Assert.True(CanBe(proof, Energised("K3")));
        Assert.False(CanBe(proof, All(Energised("K2"), Energised("K3"))));
        Assert.Empty(proof.States.Recurring());
    }

    private static PanelBuilder Timer(double? on, double? off) => new PanelBuilder().Supply("PS1").Actuator("LEVER", "off", "on")
        .Make("S1", "LEVER", "on").TimeDelay("K1", on, off).Wire("PS1:+", "S1:1").Wire("S1:2", "K1:A1").Wire("K1:A2", "PS1:-");

    private static PanelBuilder Flasher() => new PanelBuilder().Supply("PS1").Actuator("LEVER", "off", "on").Make("S1", "LEVER", "on")
        .TimeDelay("K1", 0.5).TimeDelay("K2", 0.7)
        .Wire("PS1:+", "S1:1").Wire("S1:2", "K2:15", "K1:15").Wire("K2:16", "K1:A1").Wire("K1:18", "K2:A1").Wire("K1:A2", "K2:A2", "PS1:-")
        .Lamp("DS1").Wire("K1:18", "DS1:X1").Wire("DS1:X2", "PS1:-");

    private static AllCondition All(params Condition[] parts) => new AllCondition([.. parts], SourceSpan.None);

    private static bool CanBe(PositionProof proof, Condition when) => proof.States.CanReach(proof.Circuit.Compile(when));

    private static IEnumerable<Diagnostic> Check(Panel panel)
    {
        var context = new AnalysisContext(panel);
        return PanelChecker.AllChecks.Where(c => c.Stage == CheckStage.Positions).SelectMany(c => c.Run(context));
    }

    private static IEnumerable<string> Lines(PositionProof proof, Condition when) =>
        MoveText.Steps(proof.Circuit.Variables, proof.States.Nearest(proof.Circuit.Compile(when))!.Moves).Select(s => s.ToString());
}
