using CsCheck;
using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Text;
using Schematic.Tests.Generators;
using Xunit;
using static Schematic.Tests.Analysis.PanelBuilder;

namespace Schematic.Tests.Analysis.Positions;

/// <summary>What is not known is taken either way: proved whatever it is, refuted whatever it is, or undecided.</summary>
public class UnknownTests
{
    [Fact]
    public void A_claim_that_hangs_on_what_is_not_traced_is_undecided_and_names_the_measurement()
    {
        // The lamp hangs on contact 2; the supply on 1. Whether 1 and 2 meet inside nobody knows.
        var finding = Assert.Single(Unit().Wire("PS1:+", "J1:1").Wire("J1:2", "DS1:X1").Wire("DS1:X2", "PS1:-")
            .Expect(new EnergisedExpectation("DS1", false, Always, SourceSpan.None)).FindAll());
        Assert.Equal(("claim-undecided", Severity.Warning, "DS1 released is neither proved nor refuted."), (finding.Rule, finding.Severity, finding.Message));
        Assert.Equal("Measure which of J1:1 and J1:2 are joined inside the unit.", finding.Help);
        Assert.Equal("if J1:1 and J1:2 are joined inside", finding.Trace[0].ToString());
        Assert.Contains("PS1:+ - W1 - J1:1 - perhaps inside J1 - J1:2 - W2 - DS1:X1", finding.Trace.Select(t => t.ToString()));
    }

    [Fact]
    public void A_claim_that_holds_whatever_is_inside_is_proved_and_one_that_never_does_refuted()
    {
        PanelBuilder Build(bool energised) => Unit().Wire("PS1:+", "J1:1", "DS1:X1").Wire("J1:2", "DS2:X1").Lamp("DS2").Wire("DS1:X2", "DS2:X2", "PS1:-")
            .Expect(new EnergisedExpectation("DS1", energised, Always, SourceSpan.None));
        Assert.Empty(Build(true).FindAll());
        var finding = Assert.Single(Build(false).FindAll());
        Assert.Equal(("expectation-fails", Severity.Error), (finding.Rule, finding.Severity));
    }

    [Fact]
    public void A_claim_that_fails_one_way_or_the_other_is_refuted_whatever_is_inside()
    {
        // Joined or not, one of the two positions shows it.
        var finding = Assert.Single(Unit().Actuator("A", "one", "two").Make("S1", "A", "two").Wire("PS1:+", "J1:1", "S1:1").Wire("J1:2", "DS1:X1", "S1:2")
            .Wire("DS1:X2", "PS1:-").Expect(new EnergisedExpectation("DS1", false, Always, SourceSpan.None)).FindAll(), f => f.Rule != "contact-never-opens");
        Assert.Equal("expectation-fails", finding.Rule);
    }

    [Fact]
    public void A_short_that_hangs_on_it_is_a_warning_and_one_that_does_not_an_error()
    {
        var possible = Assert.Single(Unit().Wire("PS1:+", "J1:1").Wire("J1:2", "PS1:-").FindAll(), f => f.Rule == "supply-shorted");
        Assert.Equal(Severity.Warning, possible.Severity);
        Assert.Equal("Possible: PS1 is shorted: PS1:+ meets PS1:- with no load between.", possible.Message);
        Assert.StartsWith("Measure which of J1:1 and J1:2 are joined inside the unit.", possible.Help, StringComparison.Ordinal);
        var sure = Assert.Single(Unit().Wire("PS1:+", "J1:1", "PS1:-").Wire("J1:2", "DS1:X1").FindAll(), f => f.Rule == "supply-shorted");
        Assert.Equal(Severity.Error, sure.Severity);
    }

    [Fact]
    public void Never_is_undecided_too()
    {
        var finding = Assert.Single(Unit().Board("B1", Input("IN1", max: null)).Wire("PS1:+", "J1:1").Wire("J1:2", "B1:IN1").Wire("B1:GND", "PS1:-")
            .Expect(new NeverExpectation([Id("PS1:+")], [Id("B1:IN1")], Always, SourceSpan.None)).FindAll(), f => f.Rule is "claim-undecided" or "never-violated");
        Assert.Equal(("claim-undecided", "never PS1:+ reaches B1:IN1 is neither proved nor refuted."), (finding.Rule, finding.Message));
    }

    [Fact]
    public void A_contact_on_which_nothing_hangs_is_no_unknown() => Assert.Empty(
        new PanelBuilder().Supply("PS1").Connector("J1", "1", "2", "3").NotTraced("J1", "2", "3").Lamp("DS1").Wire("PS1:+", "J1:1", "DS1:X1").Wire("DS1:X2", "PS1:-")
            .Proof.Circuit.Circuit.Untraced);

    [Fact]
    public void A_lamp_whose_contacts_are_not_known_may_be_anywhere_in_its_unit()
    {
        var findings = Unit().NotTraced("DS1", "X1", "X2").Wire("PS1:+", "J1:1").Wire("J1:2", "PS1:-")
            .Expect(new EnergisedExpectation("DS1", true, Always, SourceSpan.None)).FindAll();
        var finding = Assert.Single(findings, f => f.Rule == "claim-undecided");
        Assert.Equal("Measure which of J1:1, J1:2, DS1:X1 and DS1:X2 are joined inside the unit.", finding.Help);
    }

    [Theory]
    [InlineData("A", "off", true, null)]
    [InlineData("A", "on", true, "claim-undecided")]
    [InlineData("A", "on", false, "claim-undecided")]
    public void A_load_without_a_rating_works_or_not_when_it_gets_something(string actuator, string position, bool released, string? rule)
    {
        var findings = new PanelBuilder().Supply("PS1").Actuator("A", "off", "on").Make("S1", "A", "on").Lamp("DS1").Unrated()
            .Wire("PS1:+", "S1:1").Wire("S1:2", "DS1:X1").Wire("DS1:X2", "PS1:-")
            .Expect(new EnergisedExpectation("DS1", !released, At(actuator, position), SourceSpan.None)).FindAll();
        Assert.Equal(rule is null ? [] : [rule], findings.Select(f => f.Rule));
        if (rule is not null) Assert.Equal("Measure at what voltage DS1 works.", findings[0].Help);
    }

    [Fact]
    public void A_relay_without_a_rating_is_one_relay_in_all_positions()
    {
        // Whether it operates or not: two contacts of one relay never stand differently.
        PanelBuilder Build() => new PanelBuilder().Supply("PS1").Actuator("A", "off", "on").Make("S1", "A", "on").Relay("K1", sets: 2).Unrated()
            .Wire("PS1:+", "S1:1").Wire("S1:2", "K1:A1").Wire("K1:A2", "PS1:-").Wire("PS1:+", "K1:11").Wire("K1:14", "K1:21").Wire("K1:22", "PS1:-");
        Assert.DoesNotContain(Build().FindAll(), f => f.Rule == "supply-shorted");
        Assert.Contains(Build().Wire("K1:14", "PS1:-").FindAll(), f => f.Rule == "supply-shorted" && f.Severity == Severity.Warning);
    }

    [Fact]
    public void What_is_told_with_unknowns_is_what_trying_every_way_to_join_them_tells() => RandomPanels.All.Select(Gen.Int[0, 1000]).Holds(
        (builder, seed) =>
        {
            var random = new Random(seed);
            var panel = builder.Panel;
            if (panel.Actuators.Length > 4 || panel.Expectations.Any(e => e.IsInPassing)) return;
            var joints = panel.Parts.OfType<Splice>().OrderBy(_ => random.Next()).Take(3).Select(s => s.At("1")).ToList();
            var contacts = Enumerable.Range(1, joints.Count).Select(i => $"{i}").ToArray();
            builder.Connector("J1", contacts).NotTraced("J1", contacts);
            for (var i = 0; i < joints.Count; i++) builder.Wire($"J1:{contacts[i]}", joints[i].ToString());

            var worlds = Ways().Select(w => new Simulator(Joined(builder.Panel, w))).ToList();
            if (worlds.Exists(w => w.IsBorderline || w.Chatters)) return;
            var circuit = builder.Proof.Circuit.Circuit;
            var told = worlds.Select(w => new RuleOracle(builder.Panel, w, circuit)).Select(o => (o.IsStuck, Found: o.Expected().ToHashSet())).ToList();
            if (told.Exists(t => t.IsStuck)) return;
            var found = builder.FindAll();
            foreach (var rule in new[] { "supply-shorted", "over-limit-input", "expectation-fails", "never-violated" })
            {
                var subjects = told.SelectMany(t => t.Found).Where(f => f.StartsWith(rule, StringComparison.Ordinal)).Distinct().ToList();
                var always = subjects.Where(s => told.TrueForAll(t => t.Found.Contains(s))).Order();
                Assert.Equal(always, found.Where(f => f.Rule == rule && !f.Message.StartsWith("Possible", StringComparison.Ordinal)).Select(ProofAgreementTests.Subject).Distinct().Order());
                var maybe = subjects.Count(s => !told.TrueForAll(t => t.Found.Contains(s)));
                if (rule is "supply-shorted" or "over-limit-input")
                    Assert.Equal(maybe, found.Count(f => f.Rule == rule && f.Message.StartsWith("Possible", StringComparison.Ordinal)));
            }

            var open = told.SelectMany(t => t.Found).Where(f => f.StartsWith("expectation-fails", StringComparison.Ordinal) || f.StartsWith("never-violated", StringComparison.Ordinal))
                .Distinct().Count(s => !told.TrueForAll(t => t.Found.Contains(s)));
            Assert.Equal(open, found.Count(f => f.Rule == "claim-undecided"));
        },
        count: 250, print: p => ProofAgreementTests.Print(p.Item1));

    [Fact]
    public void What_is_proved_of_a_unit_with_very_many_open_contacts_holds_however_they_are_joined() => RandomPanels.All.Select(Gen.Int[0, 1000]).Holds(
        (builder, seed) =>
        {
            var random = new Random(seed);
            if (builder.Panel.Actuators.Length > 4 || builder.Panel.Expectations.Any(e => e.IsInPassing)) return;
            // Every terminal that is free or not: more than are told apart each way.
            var terminals = builder.Panel.Parts.SelectMany(p => p.Terminals.Select(t => p.At(t.Name))).OrderBy(_ => random.Next()).Take(9).ToList();
            if (terminals.Count < 9) return;
            var contacts = Enumerable.Range(1, terminals.Count).Select(i => $"{i}").ToArray();
            builder.Connector("J1", contacts).NotTraced("J1", contacts);
            for (var i = 0; i < terminals.Count; i++) builder.Wire($"J1:{contacts[i]}", terminals[i].ToString());
            ProofAgreementTests.HoldsInEvery(builder, Enumerable.Range(0, 5).Select(_ => Joined(builder.Panel, RandomWay(random, contacts))));
        },
        count: 60, print: p => ProofAgreementTests.Print(p.Item1));

    [Fact]
    public void What_is_proved_with_a_resistance_that_nobody_knows_holds_for_every_resistance() => RandomPanels.All.Select(Gen.Int[0, 1000]).Holds(
        (builder, seed) =>
        {
            var random = new Random(seed);
            var panel = builder.Panel;
            if (panel.Actuators.Length > 4 || panel.Expectations.Any(e => e.IsInPassing)) return;
            var open = panel.Parts.Where(p => p is Resistor or Lamp or Relay or Solenoid).OrderBy(_ => random.Next()).Take(2).Select(p => p.Designator).ToHashSet(StringComparer.Ordinal);
            if (open.Count == 0) return;
            builder.Change(p => open.Contains(p.Designator) ? WithOhms(p, null) : p);
            double[] some = [0.02, 3, 50, 400, 1500, 20_000, 5e6];
            ProofAgreementTests.HoldsInEvery(builder, Enumerable.Range(0, 6).Select(_ => panel with
            {
                Parts = [.. panel.Parts.Select(p => open.Contains(p.Designator) ? WithOhms(p, some[random.Next(some.Length)]) : p)],
            }));
        },
        count: 150, print: p => ProofAgreementTests.Print(p.Item1));

    private static Part WithOhms(Part part, double? ohms) => part switch
    {
        Resistor resistor => resistor with { Ohms = ohms },
        Lamp lamp => lamp with { RatedAmps = lamp.RatedVolts / ohms },
        Relay relay => relay with { Coil = relay.Coil with { Ohms = ohms } },
        Solenoid solenoid => solenoid with { Coil = solenoid.Coil with { Ohms = ohms } },
        var other => other,
    };

    /// <summary>Some contacts joined to one of those before them, the others not.</summary>
    private static (string, string)[] RandomWay(Random random, string[] contacts) =>
        [.. Enumerable.Range(1, contacts.Length - 1).Where(_ => random.Next(2) == 0).Select(i => (contacts[i], contacts[random.Next(i)]))];

    /// <summary>The ways to join three terminals: none, each pair, all.</summary>
    private static (string, string)[][] Ways() => [[], [("1", "2")], [("1", "3")], [("2", "3")], [("1", "2"), ("2", "3")]];

    private static Panel Joined(Panel panel, (string One, string Other)[] pairs) => panel with
    {
        Wires = [.. panel.Wires, .. pairs.Select((p, i) => new Wire($"Z{i}", new TerminalId("J1", p.One), new TerminalId("J1", p.Other), SourceSpan.None))],
    };

    private static PanelBuilder Unit() =>
        new PanelBuilder().Supply("PS1").Connector("J1", "1", "2").NotTraced("J1", "1", "2").Lamp("DS1");
}
