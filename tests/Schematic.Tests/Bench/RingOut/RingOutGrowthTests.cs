using System.Globalization;
using Schematic.Bench;
using Schematic.Bench.Faults;
using Schematic.Bench.RingOut;
using Xunit;

namespace Schematic.Tests.Bench.RingOut;

/// <summary>Panels with one thing in plenty: the plan grows with what there is, not with the combinations of positions.</summary>
public class RingOutGrowthTests
{
    [Fact]
    public void Lamps_behind_one_resistor_a_switch_each_are_rung_out_to_the_end()
    {
        const int count = 24;
        var numbers = Enumerable.Range(1, count).Select(Text).ToList();
        var panel = TestPanels.Load($$"""
            supply PS1 24 V limit 100 A { + - }
            resistor R1 1 ohm 5 W
            {{Lines(numbers.Select(i => $"actuator A{i} {{ off rest ; on }}\nswitch S{i} make on A{i} when on\nlamp DS{i} 24 V 40 mA\nnet N{i} S{i}:2 DS{i}:X1"))}}
            net FEED PS1:+ R1:1
            net BUS R1:2 {{string.Join(' ', numbers.Select(i => $"S{i}:1"))}}
            net RTN PS1:- {{string.Join(' ', numbers.Select(i => $"DS{i}:X2"))}}
            """);
        var plan = RingOutPlanner.Plan(BenchCircuit.Read(panel, BenchSide.Harness));
        Assert.Empty(plan.Undecided);
        Assert.Equal(count, plan.Moves); // each switch has to be closed once
        Assert.DoesNotContain(plan.Hidden, f => f.Kind is FaultKind.Open or FaultKind.Dead or FaultKind.Stuck or FaultKind.Missing);
        // One ohm in a bridge's place reads like the bridge: R1 and what is beside it is all that hides.
        Assert.All(plan.Hidden.Where(f => f.Kind == FaultKind.Bridge), f => Assert.True(Joins(plan, f, "PS1", "R1"), f.Words));
        Assert.InRange(plan.Steps.Length, count, 6 * count);
    }

    [Fact]
    public void A_rotary_switch_is_turned_once_along_from_end_to_end()
    {
        const int throws = 24;
        var names = Enumerable.Range(1, throws).Select(i => $"p{Text(i)}").ToList();
        var panel = TestPanels.Load($$"""
            connector J1 { pins ; strip {{Text(throws + 1)}} pitch 5 mm }
            actuator KNOB { {{string.Join(" ; ", names)}} }
            pole S1 rotary on KNOB { common J1:{{Text(throws + 1)}} ; {{string.Join(" ; ", names.Select((n, i) => $"{n} J1:{Text(i + 1)}"))}} }
            """);
        var plan = RingOutPlanner.Plan(BenchCircuit.Read(panel, BenchSide.Unit));
        Assert.Empty(plan.Undecided);
        Assert.Equal(throws - 1, plan.Moves);
    }

    [Fact]
    public void Switches_on_one_net_need_a_move_each_way_and_no_combination()
    {
        const int count = 16;
        var plan = RingOutPlanner.Plan(Unit(33, i => $"J1:{i} J1:33"));
        Assert.Empty(plan.Undecided);
        Assert.Equal(plan.FaultCount, plan.FoundCount + plan.Hidden.Length);
        Assert.InRange(plan.Moves, count, 2 * count);
    }

    [Fact]
    public void A_keypad_is_rung_out_key_by_key()
    {
        var plan = RingOutPlanner.Plan(Unit(8, i => $"J1:{1 + ((i - 1) / 4)} J1:{5 + ((i - 1) % 4)}"));
        Assert.Empty(plan.Undecided);
        Assert.Empty(plan.Hidden);
        Assert.All(plan.Circuit.Contacts, c => Assert.Contains(plan.Steps, s => s.Expected.Text == "closed" && plan.Circuit.ClosedAt(s.Placement.Stand)[plan.Circuit.Contacts.IndexOf(c)]));
    }

    [Fact]
    public void Switches_in_series_between_two_contacts_are_all_closed_and_then_each_is_opened()
    {
        const int count = 10;
        var panel = TestPanels.Load($$"""
            connector J1 { pins ; strip 3 pitch 5 mm }
            {{Lines(Enumerable.Range(1, count).Select(i => $"actuator A{i} {{ off rest ; on }}\nswitch S{i} make on A{i} when on"))}}
            {{Lines(Enumerable.Range(1, count - 1).Select(i => $"net N{i} S{i}:2 S{i + 1}:1"))}}
            net IN J1:1 S1:1
            net OUT S{{count}}:2 J1:2
            """);
        var plan = RingOutPlanner.Plan(BenchCircuit.Read(panel, BenchSide.Mated, "J1"));
        Assert.DoesNotContain(plan.Hidden.Concat(plan.Undecided), f => f.Kind is FaultKind.Dead or FaultKind.Stuck or FaultKind.Open);
    }

    [Fact]
    public void An_order_that_was_not_compared_to_the_end_is_given_and_said_to_be_so()
    {
        var plan = RingOutPlanner.Plan(Unit(8, i => $"J1:{1 + ((i - 1) / 4)} J1:{5 + ((i - 1) % 4)}"));
        var required = plan.Steps.Select(s => s.Placement.Stand.Places).DistinctBy(p => string.Join(' ', p)).ToList();
        var (stands, isCutShort) = StandRoute.Find(plan.Circuit, required, mostCompared: 1);
        Assert.True(isCutShort);
        Assert.All(required, r => Assert.Contains(new Stand(r), stands));
        Assert.Contains(RingOutList.Steps(plan with { IsRouteCutShort = true }).Notes, n => n.StartsWith("Too many orders", StringComparison.Ordinal));
    }

    [Fact]
    public void What_was_not_looked_at_to_the_end_stands_on_the_list()
    {
        var plan = RingOutPlanner.Plan(Unit(8, i => $"J1:{1 + ((i - 1) / 4)} J1:{5 + ((i - 1) % 4)}"));
        var fault = FaultCatalogue.ForRingOut(plan.Circuit)[0];
        var limited = plan with { Undecided = [fault] };
        Assert.Contains(RingOutList.NotTold(limited).Single().Rows, r => r[0] == "not found" && r[1] == fault.Words);
        Assert.Contains(RingOutList.Steps(limited).Notes, n => n.StartsWith("Too many combinations of positions", StringComparison.Ordinal));
        Assert.DoesNotContain(RingOutList.Steps(plan).Notes, n => n.StartsWith("Too many combinations of positions", StringComparison.Ordinal));
    }

    private static BenchCircuit Unit(int contacts, Func<int, string> ends) => BenchCircuit.Read(
        TestPanels.Load($"connector J1 {{ pins ; strip {Text(contacts)} pitch 5 mm }}\n"
            + Lines(Enumerable.Range(1, 16).Select(i => $"actuator A{i} {{ off rest ; on springs-to off }}\nswitch S{i} make on A{i} when on {{ {ends(i)} }}"))),
        BenchSide.Unit);

    private static bool Joins(RingOutPlan plan, Fault fault, params string[] parts) =>
        parts.Contains(plan.Circuit.Terminals[fault.First].Part) || parts.Contains(plan.Circuit.Terminals[fault.Second].Part);

    private static string Lines(IEnumerable<string> lines) => string.Join('\n', lines);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
