using Schematic.Analysis.Loads;
using Schematic.Diagnostics;
using Xunit;

namespace Schematic.Tests.Analysis.Loads;

/// <summary>
/// Worst cases cost the sum of the independent parts, and what has too many combinations is bounded and not left out. Counted in
/// cases and in branches solved, not in seconds.
/// </summary>
public sealed class GrowthTests
{
    [Theory]
    [InlineData(8)]
    [InlineData(13)]
    [InlineData(30)]
    public void A_wire_that_is_too_thin_is_an_error_behind_however_many_switches(int count)
    {
        var keys = Enumerable.Range(1, count).ToList();
        var found = LoadPanels.Check(
            "supply PS1 24 V limit 100 A\nlamp DS1 24 V 40 A\nwire C 4 AWG 300 mm DS1:X2 -> PS1:-\n"
            + string.Concat(keys.Select(i => $"actuator K{i}x {{ off rest ; on }}\nswitch S{i} make on K{i}x when on\n"
                + $"wire A{i}x 28 AWG 300 mm PS1:+ -> S{i}:1\nwire B{i}x 28 AWG 300 mm S{i}:2 -> DS1:X1\n")));
        Assert.Equal(2 * count, found.Count(d => d.Rule == "wire-overloaded" && d.Severity == Severity.Error));
    }

    [Fact]
    public void A_bound_is_never_below_what_solving_every_case_finds()
    {
        // Nine switches in two groups feed two lamps; solved whole it has 512 cases and is exact, in regions with a budget of one
        // case it is a bound.
        const int count = 9;
        var context = LoadPanels.Context(
            "supply PS1 24 V source 0.1 ohm\nlamp DS1 24 V 1 A\nlamp DS2 24 V 2 A\nwire C1 20 AWG 2 m DS1:X2 -> PS1:-\nwire C2 20 AWG 2 m DS2:X2 -> PS1:-\n"
            + string.Concat(Enumerable.Range(1, count).Select(i => $"actuator K{i}x {{ off rest ; on }}\nswitch S{i} make on K{i}x when on\n"
                + $"wire A{i}x 20 AWG {i} m PS1:+ -> S{i}:1\nwire B{i}x 20 AWG 1 m S{i}:2 -> DS{(i % 2) + 1}:X1\n")));
        var circuit = context.Positions.Circuit.Circuit;
        var places = circuit.Elements.Select((e, i) => (e, i)).ToDictionary(p => p.e, p => p.i);
        var standing = new LoadStanding(context.Positions.States);
        var network = new WiredNetwork(context, circuit, context.Panel.Wires, _ => 20);
        var (exact, bound) = (new Tally(circuit, places, standing, context.Panel.Wires.Length), new Tally(circuit, places, standing, context.Panel.Wires.Length));
        foreach (var state in SwitchingCases.Find(context.Positions.States, 512, _ => true)!.Value) exact.Add(network.Solve(state));
        var regions = new RegionCases(context.Positions.States, network, 1);
        Assert.Equal(2, regions.LeftOut);
        regions.Add(bound, network, context.Positions.Judge);
        for (var i = 0; i < exact.Wires.Length; i++)
        {
            Assert.InRange(bound.Wires[i].Value, exact.Wires[i].Value - 1e-9, 1.05 * exact.Wires[i].Value);
            Assert.InRange(bound.Wires[i].Shown, 0, exact.Wires[i].Value + 1e-9);
        }

        for (var i = 0; i < exact.Elements.Length; i++)
        {
            Assert.True(bound.Elements[i].Value >= exact.Elements[i].Value - 1e-9);
            Assert.True(bound.LeastVolts[i].Value >= exact.LeastVolts[i].Value - 1e-9); // With their signs turned.
        }
    }

    [Fact]
    public void Independent_circuits_are_solved_each_in_its_own_part()
    {
        const int count = 60;
        var context = LoadPanels.Context("supply PS1 24 V\n" + string.Concat(Enumerable.Range(1, count).Select(i =>
            $"actuator K{i}x {{ off rest ; on }}\nswitch S{i} make on K{i}x when on\nlamp DS{i} 24 V 100 mA\n"
            + $"wire A{i}x 22 AWG 300 mm PS1:+ -> S{i}:1\nwire B{i}x 22 AWG 300 mm S{i}:2 -> DS{i}:X1\nwire C{i}x 22 AWG 300 mm DS{i}:X2 -> PS1:-\n")));
        var network = new WiredNetwork(context, context.Positions.Circuit.Circuit, context.Panel.Wires, _ => 20);
        var regions = new RegionCases(context.Positions.States, network, 1024);
        Assert.Equal(count, regions.Regions.Length);
        Assert.All(regions.Regions, r => Assert.True(r is { Cases.Length: 2, Part.Branches.Length: 6 }));
        var amps = context.Worst.Supplies.Single().Amps;
        // All sixty are on together, and one solution of the whole shows it.
        Assert.InRange(amps.Value, amps.Shown, amps.Shown * 1.001);
        Assert.InRange(amps.Shown, 5.9, 6);
    }

    [Fact]
    public void Feeds_of_two_circuits_add_up_in_what_they_share()
    {
        // Fourteen lamps of 0.1 A behind one fuse of 1 A: only together they are too many for it.
        var found = LoadPanels.Check("supply PS1 24 V\nfuse F1 1 A\nterminals X1 { 1..15 ; jumper 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 }\n"
            + "wire W1 20 AWG 300 mm PS1:+ -> F1:1\nwire W2 20 AWG 300 mm F1:2 -> X1:15\n" + string.Concat(Enumerable.Range(1, 14).Select(i =>
            $"actuator K{i}x {{ off rest ; on }}\nswitch S{i} make on K{i}x when on\nlamp DS{i} 24 V 100 mA\n"
            + $"wire A{i}x 22 AWG 300 mm X1:{i} -> S{i}:1\nwire B{i}x 22 AWG 300 mm S{i}:2 -> DS{i}:X1\nwire C{i}x 22 AWG 300 mm DS{i}:X2 -> PS1:-\n")));
        var fuse = Assert.Single(found, d => d.Rule == "fuse-overloaded");
        Assert.Equal(Severity.Error, fuse.Severity);
        Assert.StartsWith("F1 carries 1.4 A", fuse.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// By hand: each lamp has 480 ohm, its own wires and those that all share; the lamps together are one of 480 / n behind the shared ones.
    /// What a lamp stands and needs is crossed on one line, however many lamps ask.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(60)]
    public void The_lowest_setting_of_many_lamps_on_one_terminal_is_that_by_hand(int count)
    {
        const double gauge22 = 16.20 / 304.8; // ohm a metre at 20 degrees (FAA AC 43.13-1B table 11-9)
        const double gauge10 = 1.26 / 304.8; // as above
        var worst = LoadPanels.Context("supply PS1 24 V adjustable 18..30 V\nterminals X1 { 1 2 ; wires 100 }\n"
            + "wire A 10 AWG 2 m PS1:+ -> X1:1\nwire B 10 AWG 2 m X1:2 -> PS1:-\nlimits { ambient 20 degC }\n"
            + string.Concat(Enumerable.Range(1, count).Select(i => $"lamp DS{i} 24 V 50 mA\n"
                + $"wire P{i}x 22 AWG 1 m X1:1 -> DS{i}:X1\nwire M{i}x 22 AWG 1 m DS{i}:X2 -> X1:2\n"))).Worst;
        var lamp = worst.Loads[0];
        var setting = worst.Supplies.Single().Setting;
        var shared = 2 * 2 * gauge10 * count;
        var whole = (480 + (2 * gauge22) + shared) / 480;
        var cold = lamp.Need.HotVolts!.Value * whole;
        Assert.InRange(setting.Lowest.Volts, cold, cold + 0.01); // The copper is warmer than 20 degrees: at 3 A in 10 AWG the 44 mV are 52.
        Assert.Equal(count, worst.Loads.Length);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(40)]
    public void A_rotary_switch_costs_its_throws(int throws)
    {
        var text = $"supply PS1 24 V\nactuator SEL {{ {string.Join(" ; ", Enumerable.Range(1, throws).Select(i => $"p{i}"))} }}\n"
            + $"pole S1 rotary on SEL {{ common ; {string.Join(" ; ", Enumerable.Range(1, throws).Select(i => $"p{i}"))} }}\nnet FEED PS1:+ S1:common\n"
            + string.Concat(Enumerable.Range(1, throws).Select(i => $"lamp DS{i} 24 V 100 mA\nnet B{i} S1:p{i} DS{i}:X1\n"))
            + $"net RTN PS1:- {string.Join(' ', Enumerable.Range(1, throws).Select(i => $"DS{i}:X2"))}\n";
        var worst = LoadPanels.Context(text).Worst;
        Assert.Equal(throws, worst.CaseCount);
        Assert.Equal(0.1, worst.Supplies.Single().Amps.Value, 1e-3);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(200)]
    public void Switches_in_series_are_two_cases_however_many_they_are(int count)
    {
        var text = "supply PS1 24 V\nlamp DS1 24 V 100 mA\nnet RTN DS1:X2 PS1:-\n"
            + string.Concat(Enumerable.Range(1, count).Select(i => $"actuator K{i}x {{ off rest ; on }}\nswitch S{i} make on K{i}x when on\n"
                + $"wire W{i} 20 AWG 100 mm {(i == 1 ? "PS1:+" : $"S{i - 1}:2")} -> S{i}:1\n"))
            + $"net LAST S{count}:2 DS1:X1\n";
        var worst = LoadPanels.Context(text).Worst;
        Assert.Equal(2, worst.CaseCount);
        Assert.False(worst.IsBound);
        Assert.All(worst.Contacts, c => Assert.InRange(c.Amps.Value, 0.09, 0.1));
        Assert.Equal(count, worst.Contacts.Length);
    }
}
