using Schematic.Bench;
using Schematic.Bench.Faults;
using Schematic.Bench.RingOut;
using Schematic.Binding;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Bench.RingOut;

public class RingOutPlanTests
{
    [Fact]
    public void The_lever_unit_is_rung_out_in_few_placements_and_moves()
    {
        var plan = PlanOf("lever-frame/lever.panel", BenchSide.Unit);
        Assert.InRange(plan.Steps.Length, plan.LowerBound, 45);
        Assert.InRange(plan.Moves, 1, 8);
        Assert.All(plan.Hidden, f => Assert.Equal(FaultKind.Exchange, f.Kind));
        Assert.Equal(5, plan.Hidden.Length); // the two ends of two lamps, of the coil and of two make contacts
    }

    [Fact]
    public void A_spring_is_held_and_a_lever_is_moved()
    {
        var plan = PlanOf("lever-frame/lever.panel", BenchSide.Unit);
        var moves = plan.Steps.Select(s => s.Move).Where(m => m.Length > 0).ToList();
        Assert.Equal("everything at rest", moves[0]);
        Assert.Contains("move LEVER to reverse", moves);
        Assert.Contains("hold GRIP at left-stop, against its spring", moves);
    }

    [Fact]
    public void The_coil_is_expected_at_its_ohms_and_a_lamp_cold()
    {
        var plan = PlanOf("lever-frame/lever.panel", BenchSide.Unit);
        Assert.Equal("40 ohm", ExpectedAt(plan, "J1:24", "J1:25"));
        Assert.Equal("70 ohm", ExpectedAt(plan, "J1:2", "J1:3")); // 700 ohm hot
    }

    /// <summary>Of a knob that is turned while the leads stay on each step tells something that a reading at rest there does not.</summary>
    [Fact]
    public void A_knob_is_turned_only_where_turning_tells_more()
    {
        var circuit = BenchCircuit.Read(PanelLoader.LoadFile(Repository.PathOf("examples/signal-lamp/signal-lamp.panel")).Panel, BenchSide.Harness);
        var plan = RingOutPlanner.Plan(circuit);
        var cache = new ReadingCache(new Meter());
        var faults = FaultCatalogue.ForRingOut(circuit);
        var turned = plan.Steps.Select(s => s.Placement).Where(p => p.Test == MeterTest.Turned).ToList();
        Assert.NotEmpty(turned);
        foreach (var placement in turned)
        {
            var sound = new ProbedCircuit(circuit, placement.Stand, cache);
            bool Shows(Fault fault, MeterTest test) => sound.With(fault).Read(test, placement.Red, placement.Black).DiffersFrom(sound.Read(test, placement.Red, placement.Black));
            Assert.Contains(faults, f => Shows(f, MeterTest.Turned) && !Shows(f, MeterTest.Ohms));
        }

        Assert.All(plan.Steps.Where(s => s.Expected.IsSteady), s => Assert.EndsWith(" throughout", s.Expected.Text, StringComparison.Ordinal));
    }

    /// <summary>k conductors against each other in k - 1 placements (Kautz 1974).</summary>
    [Theory]
    [InlineData(7)]
    [InlineData(19)]
    public void Isolation_of_an_empty_connector_needs_no_more_than_one_placement_a_conductor_less_one(int contacts)
    {
        var panel = TestPanels.Load($"connector J1 {{ pins ; spiral {contacts} }} lamp DS1 28 V 40 mA {{ J1:1 J1:2 }}".Replace("} lamp", "}\nlamp", StringComparison.Ordinal));
        var plan = RingOutPlanner.Plan(BenchCircuit.Read(panel, BenchSide.Unit));
        var conductors = contacts - 1 + 1; // the lamp's two contacts are one conductor, the frame is one more
        Assert.InRange(plan.Steps.Count(s => s.Expected.Kind == ReadingKind.Open), 1, conductors - 1);
    }

    /// <summary>All single faults, all pairs, all positions by a plain dense solver: what it can tell, the plan finds.</summary>
    [Theory]
    [InlineData(1, 8)]
    [InlineData(2, 9)]
    [InlineData(3, 7)]
    [InlineData(4, 8)]
    public void A_plan_finds_every_fault_that_a_brute_force_search_finds(int seed, int contacts)
    {
        var circuit = BenchCircuit.Read(TestPanels.Load(UnitGenerator.Generate(seed, contacts)), BenchSide.Unit);
        var plan = RingOutPlanner.Plan(circuit);
        var sound = new DenseMeter(circuit);
        var stands = AllStands(circuit).ToList();
        foreach (var fault in FaultCatalogue.ForRingOut(circuit))
        {
            var faulty = new DenseMeter(fault.ApplyTo(circuit));
            var canBeTold = stands.Any(s => Pairs(circuit).Any(p => Differs(sound, faulty, s, p.One, p.Other)));
            var isFound = plan.Steps.Any(s => Differs(sound, faulty, s.Placement));
            Assert.True(isFound || !canBeTold, fault.Words);
            Assert.True(canBeTold || plan.Hidden.Contains(fault), fault.Words);
        }
    }

    private static IEnumerable<Stand> AllStands(BenchCircuit circuit)
    {
        IEnumerable<Stand> all = [Stand.Rest(circuit.Actuators)];
        for (var i = 0; i < circuit.Actuators.Length; i++)
        {
            var actuator = i;
            all = all.SelectMany(s => Enumerable.Range(0, circuit.Actuators[actuator].Positions.Length).Select(p => s.With(actuator, 2 * p))).ToList();
        }

        return all;
    }

    private static IEnumerable<(int One, int Other)> Pairs(BenchCircuit circuit) =>
        from one in circuit.Accessible from other in circuit.Accessible where one != other select (one, other);

    private static bool Differs(DenseMeter sound, DenseMeter faulty, Placement at) => at.Test == MeterTest.Ohms
        ? DifferOhms(sound.Ohms(at.Stand, at.Red, at.Black), faulty.Ohms(at.Stand, at.Red, at.Black))
        : DifferVolts(sound.DiodeVolts(at.Stand, at.Red, at.Black), faulty.DiodeVolts(at.Stand, at.Red, at.Black));

    private static bool Differs(DenseMeter sound, DenseMeter faulty, Stand stand, int one, int other) =>
        (one < other && DifferOhms(sound.Ohms(stand, [one], [other]), faulty.Ohms(stand, [one], [other])))
        || DifferVolts(sound.DiodeVolts(stand, [one], [other]), faulty.DiodeVolts(stand, [one], [other]));

    /// <summary>What no tolerance of lamps and coils explains: more than six times as much, or open against not open.</summary>
    private static bool DifferOhms(double one, double other) =>
        double.IsInfinity(one) != double.IsInfinity(other)
        || (!double.IsInfinity(one) && (one + 5) / (other + 5) is < 1.0 / 6 or > 6);

    private static bool DifferVolts(double one, double other) =>
        double.IsInfinity(one) != double.IsInfinity(other) || (!double.IsInfinity(one) && Math.Abs(one - other) > 0.5);

    private static string ExpectedAt(RingOutPlan plan, string red, string black) => plan.Steps
        .First(s => TerminalText.Of(plan.Circuit, s.Placement.Red) == red && TerminalText.Of(plan.Circuit, s.Placement.Black) == black).Expected.Text;

    private static RingOutPlan PlanOf(string example, BenchSide side) => RingOutPlanner.Plan(
        BenchCircuit.Read(PanelLoader.LoadFile(Repository.PathOf($"examples/{example}")).Panel, side));
}
