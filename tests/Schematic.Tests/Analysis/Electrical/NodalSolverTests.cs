using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using Schematic.Analysis.Electrical;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Analysis.Electrical;

/// <summary>Textbook circuits are from memory: they stand in every introduction to networks.</summary>
public class NodalSolverTests
{
    [Fact]
    public void A_divider_divides()
    {
        var result = NodalSolver.Solve(3, [Source(1, 0, 12), Ohms(1, 2, 3000), Ohms(2, 0, 1000)]);
        Assert.Equal(3.0, result.Volts[2] - result.Volts[0], 6);
        Assert.Equal(-0.003, result.Amps[0], 9); // It delivers: current leaves its plus.
    }

    [Fact]
    public void A_balanced_bridge_carries_nothing_across()
    {
        // Wheatstone: 100/200 against 150/300, 50 ohm across.
        var result = NodalSolver.Solve(4,
            [Source(1, 0, 10), Ohms(1, 2, 100), Ohms(2, 0, 200), Ohms(1, 3, 150), Ohms(3, 0, 300), Ohms(2, 3, 50)]);
        Assert.Equal(0, result.Amps[5], 9);
    }

    [Fact]
    public void An_unbalanced_bridge_follows_Thevenin()
    {
        // 100/200 against 100/100: open voltage 10 (2/3 - 1/2) = 1.6667 V behind 66.667 + 50 ohm, into 50 ohm: 10 mA.
        var result = NodalSolver.Solve(4,
            [Source(1, 0, 10), Ohms(1, 2, 100), Ohms(2, 0, 200), Ohms(1, 3, 100), Ohms(3, 0, 100), Ohms(2, 3, 50)]);
        Assert.Equal(0.010, result.Amps[5], 7);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(8)]
    [InlineData(10)]
    [InlineData(15)]
    public void A_ladder_of_R_and_2R_turns_four_bits_into_a_voltage(int code)
    {
        // R-2R ladder with 2R to ground at its far end: the open output stands at code/16 of the reference.
        const double r = 10_000;
        var branches = new List<Branch> { Source(1, 0, 16), Ohms(2, 0, 2 * r) };
        for (var bit = 0; bit < 4; bit++)
        {
            branches.Add(Ohms(2 + bit, (code >> bit & 1) == 1 ? 1 : 0, 2 * r));
            if (bit < 3) branches.Add(Ohms(2 + bit, 3 + bit, r));
        }

        var result = NodalSolver.Solve(6, branches);
        Assert.Equal(code, result.Volts[5] - result.Volts[0], 5);
    }

    [Fact]
    public void Two_sources_superpose()
    {
        // 10 V behind 100 ohm and 4 V behind 50 ohm on 200 ohm: (10/100 + 4/50) / (1/100 + 1/50 + 1/200) = 0.18 / 0.035.
        Assert.Equal(0.18 / 0.035, At(10, 4), 5);
        Assert.Equal(At(10, 0) + At(0, 4), At(10, 4), 5);

        static double At(double first, double second)
        {
            var result = NodalSolver.Solve(4,
                [Source(1, 0, first), Source(2, 0, second), Ohms(1, 3, 100), Ohms(2, 3, 50), Ohms(3, 0, 200)]);
            return result.Volts[3] - result.Volts[0];
        }
    }

    [Fact]
    public void A_diode_carries_forward_current_behind_its_knee_and_blocks_the_other_way()
    {
        var forward = NodalSolver.Solve(3, [Source(1, 0, 5), Diode(1, 2), Ohms(2, 0, 1000)]);
        Assert.Equal(4.3, forward.Volts[2] - forward.Volts[0], 5);
        var reverse = NodalSolver.Solve(3, [Source(1, 0, 5), Diode(2, 1), Ohms(2, 0, 1000)]);
        Assert.Equal(0, reverse.Volts[2] - reverse.Volts[0], 4);
    }

    [Fact]
    public void Of_two_diodes_that_feed_a_load_that_of_the_higher_supply_conducts()
    {
        var result = NodalSolver.Solve(4, [Source(1, 0, 24), Source(2, 0, 12), Diode(1, 3), Diode(2, 3), Ohms(3, 0, 500)]);
        Assert.Equal(23.3, result.Volts[3] - result.Volts[0], 5);
        Assert.Equal(0.0466, result.Amps[2], 6);
        Assert.Equal(0, result.Amps[3], 6);
    }

    [Theory]
    [InlineData(12)]
    [InlineData(-12)]
    public void A_bridge_of_four_diodes_feeds_its_load_one_way_whichever_way_it_is_supplied(double volts)
    {
        var result = NodalSolver.Solve(4,
            [Source(1, 0, volts), Diode(1, 2), Diode(0, 2), Diode(3, 1), Diode(3, 0), Ohms(2, 3, 1060)]);
        Assert.Equal(0.010, result.Amps[5], 7);
    }

    [Fact]
    public void A_source_gives_no_more_than_its_limit()
    {
        var limited = Source(1, 0, 24, 0.05) with { LimitAmps = 3 };
        var over = NodalSolver.Solve(2, [limited, Ohms(1, 0, 2)]);
        Assert.True(over.IsLimited[0]);
        Assert.Equal(6, over.Volts[1] - over.Volts[0], 6);
        var under = NodalSolver.Solve(2, [limited, Ohms(1, 0, 24)]);
        Assert.False(under.IsLimited[0]);
        Assert.Equal(24 * 24 / 24.05, under.Volts[1] - under.Volts[0], 6);
    }

    [Fact]
    public void Nodes_that_nothing_joins_are_islands()
    {
        var result = NodalSolver.Solve(5, [Source(1, 0, 5), Ohms(2, 3, 10), Diode(4, 2)]);
        Assert.Equal(result.Island[0], result.Island[1]);
        Assert.Equal(result.Island[2], result.Island[3]);
        Assert.NotEqual(result.Island[0], result.Island[2]);
        Assert.NotEqual(result.Island[4], result.Island[2]);
    }

    [Fact]
    public void Random_networks_agree_with_a_dense_solution_of_the_full_equations() => (
        from nodes in Gen.Int[2, 30]
        from branches in Gen.Select(Gen.Int[0, nodes - 1], Gen.Int[0, nodes - 1], Gen.Double[0.01, 10_000], Gen.Int[0, 4]).Array[1, 60]
        select (nodes, branches)).Holds(
        sample =>
        {
            var branches = sample.branches.Where(b => b.Item1 != b.Item2)
                .Select(b => b.Item4 == 0 ? Source(b.Item1, b.Item2, b.Item3 / 500, 0.05) : Ohms(b.Item1, b.Item2, b.Item3)).ToList();
            var result = NodalSolver.Solve(sample.nodes, branches);
            var expected = DenseSolution(sample.nodes, branches, result.Island);
            for (var i = 0; i < sample.nodes; i++)
            {
                var reference = result.Island.IndexOf(result.Island[i]);
                Assert.Equal(expected[i] - expected[reference], result.Volts[i] - result.Volts[reference], 1e-6);
            }
        },
        count: 1000);

    [Fact]
    public void Currents_sum_to_nothing_at_every_node() => Gen.Select(Gen.Int[0, 9], Gen.Int[0, 9], Gen.Int[0, 5]).Array[1, 40].Holds(
        sample =>
        {
            var branches = sample.Where(b => b.Item1 != b.Item2).Select((b, i) => b.Item3 switch
            {
                0 => Source(b.Item1, b.Item2, 10 + i, 1),
                1 => Diode(b.Item1, b.Item2) with { Ohms = 0.01 },
                _ => Ohms(b.Item1, b.Item2, 10 + 7 * i),
            }).ToList();
            var result = NodalSolver.Solve(10, branches);
            Assert.True(result.IsSettled);
            for (var node = 0; node < 10; node++)
            {
                var sum = branches.Select((b, i) => b.From == node ? result.Amps[i] : b.To == node ? -result.Amps[i] : 0).Sum();
                Assert.Equal(0, sum, 1e-6);
            }
        },
        count: 1000);

    private static Branch Ohms(int from, int to, double ohms) => new(BranchKind.Linear, from, to, ohms);

    private static Branch Source(int plus, int minus, double volts, double ohms = 1e-6) =>
        new(BranchKind.Source, plus, minus, ohms, volts);

    private static Branch Diode(int anode, int cathode) => new(BranchKind.OneWay, anode, cathode, 1e-5, 0.7);

    /// <summary>Modified nodal analysis as in the books: a row for each node and one for the current of each source.</summary>
    private static double[] DenseSolution(int nodes, List<Branch> branches, IReadOnlyList<int> islands)
    {
        var sources = branches.Where(b => b.Kind == BranchKind.Source).ToList();
        var matrix = Matrix<double>.Build.Dense(nodes + sources.Count, nodes + sources.Count);
        var right = Vector<double>.Build.Dense(nodes + sources.Count);
        foreach (var b in branches.Where(b => b.Kind == BranchKind.Linear))
        {
            matrix[b.From, b.From] += 1 / b.Ohms;
            matrix[b.To, b.To] += 1 / b.Ohms;
            matrix[b.From, b.To] -= 1 / b.Ohms;
            matrix[b.To, b.From] -= 1 / b.Ohms;
        }

        for (var s = 0; s < sources.Count; s++)
        {
            var row = nodes + s;
            matrix[sources[s].From, row] += 1;
            matrix[sources[s].To, row] -= 1;
            matrix[row, sources[s].From] += 1;
            matrix[row, sources[s].To] -= 1;
            matrix[row, row] -= sources[s].Ohms;
            right[row] = sources[s].Volts;
        }

        foreach (var first in islands.Select((island, node) => (island, node)).GroupBy(p => p.island).Select(g => g.First().node))
            matrix[first, first] += 1;
        return [.. matrix.LU().Solve(right)];
    }
}
