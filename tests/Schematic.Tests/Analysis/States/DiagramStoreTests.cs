using System.Numerics;
using CsCheck;
using Schematic.Analysis.States;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Analysis.States;

public class DiagramStoreTests
{
    private static readonly int[] Sizes = [2, 3, 2, 4, 2];

    private static readonly Gen<Expression> Expressions = Gen.Recursive<Expression>((depth, more) => depth > 4
        ? Literals
        : Gen.Frequency(
            (1, Literals),
            (1, more.Select(e => (Expression)new Not(e))),
            (2, Gen.Select(more, more, (a, b) => (Expression)new And(a, b))),
            (2, Gen.Select(more, more, (a, b) => (Expression)new Or(a, b)))));

    private static Gen<Expression> Literals =>
        from variable in Gen.Int[0, Sizes.Length - 1]
        from value in Gen.Int[0, Sizes[variable] - 1]
        select (Expression)new Is(variable, value);

    [Fact]
    public void A_diagram_holds_exactly_where_its_expression_does() => Expressions.Holds(expression =>
    {
        var store = new DiagramStore([.. Sizes]);
        var diagram = expression.Build(store);
        var count = BigInteger.Zero;
        foreach (var values in AllValues())
        {
            var expected = expression.Holds(values);
            Assert.Equal(expected, store.Holds(diagram, values));
            if (expected) count++;
        }

        Assert.Equal(count, store.Count(diagram));
        if (count == 0) Assert.True(diagram.IsNever);
        else Assert.True(expression.Holds(store.Pick(diagram, new int[Sizes.Length])));
    });

    [Fact]
    public void Equal_conditions_are_one_node() => Gen.Select(Expressions, Expressions).Holds((left, right) =>
    {
        var store = new DiagramStore([.. Sizes]);
        var same = AllValues().All(v => left.Holds(v) == right.Holds(v));
        Assert.Equal(same, left.Build(store) == right.Build(store));
    });

    [Fact]
    public void Restricting_agrees_with_trying_the_value() => Expressions.Holds(expression =>
    {
        var store = new DiagramStore([.. Sizes]);
        var diagram = expression.Build(store);
        foreach (var values in AllValues())
        {
            for (var variable = 0; variable < Sizes.Length; variable++)
            {
                int[] with2 = [.. values];
                with2[variable] = 1;
                Assert.Equal(expression.Holds(with2), store.Holds(store.Restrict(diagram, variable, 1), values));
            }
        }
    }, count: 30);

    [Fact]
    public void The_support_is_what_the_condition_depends_on() => Expressions.Holds(expression =>
    {
        var store = new DiagramStore([.. Sizes]);
        var support = store.Support(expression.Build(store));
        for (var variable = 0; variable < Sizes.Length; variable++)
        {
            var matters = AllValues().Any(values => Enumerable.Range(0, Sizes[variable]).Any(v =>
            {
                int[] other = [.. values];
                other[variable] = v;
                return expression.Holds(other) != expression.Holds(values);
            }));
            Assert.Equal(matters, support.Contains(variable));
        }
    }, count: 50);

    [Fact]
    public void Parity_of_many_variables_takes_two_nodes_for_each()
    {
        // Bryant 1986: the diagram of a parity function grows linearly in any order of the variables.
        const int count = 200;
        var store = new DiagramStore([.. Enumerable.Repeat(2, count)]);
        var parity = Enumerable.Range(0, count).Aggregate(Diagram.Never, (p, v) => store.Or(store.AndNot(p, store.Literal(v, 1)), store.AndNot(store.Literal(v, 1), p)));
        Assert.Equal(BigInteger.Pow(2, count - 1), store.Count(parity));
        Assert.Equal(2 * count - 1, CountNodes(store, parity));
    }

    private static int CountNodes(DiagramStore store, Diagram diagram)
    {
        var seen = new HashSet<Diagram>();
        var waiting = new Stack<Diagram>([diagram]);
        while (waiting.TryPop(out var at))
        {
            if (at.IsNever || at.IsAlways || !seen.Add(at)) continue;
            var variable = store.Support(at)[0];
            for (var value = 0; value < 2; value++) waiting.Push(store.Restrict(at, variable, value));
        }

        return seen.Count;
    }

    private static IEnumerable<int[]> AllValues()
    {
        for (var n = 0; n < Sizes.Aggregate(1, (a, b) => a * b); n++)
        {
            var values = new int[Sizes.Length];
            for (int i = 0, rest = n; i < Sizes.Length; rest /= Sizes[i], i++) values[i] = rest % Sizes[i];
            yield return values;
        }
    }

    [Fact]
    public void Exchanging_the_values_of_a_variable_twice_changes_nothing_and_once_turns_its_two_cases()
    {
        var store = new DiagramStore([3, 2, 2]);
        var condition = store.Or(store.And(store.Literal(0, 2), store.Literal(1, 1)), store.And(store.Literal(1, 0), store.Literal(2, 1)));
        var swapped = store.Swap(condition, 1);
        Assert.Equal(store.Restrict(condition, 1, 0), store.Restrict(swapped, 1, 1));
        Assert.Equal(store.Restrict(condition, 1, 1), store.Restrict(swapped, 1, 0));
        Assert.Equal(condition, store.Swap(swapped, 1));
    }

    [Fact]
    public void What_can_hold_for_some_value_of_the_free_variables_is_told_of_the_others()
    {
        var store = new DiagramStore([3, 2, 2]);
        var condition = store.And(store.Literal(0, 2), store.Or(store.Literal(1, 1), store.Literal(2, 1)));
        Assert.Equal(store.Literal(0, 2), store.Exists(condition, v => v > 0));
        Assert.Equal(store.Or(store.Literal(1, 1), store.Literal(2, 1)), store.Exists(condition, v => v == 0));
        Assert.Equal(Diagram.Always, store.Exists(condition, _ => true));
        Assert.Equal(Diagram.Never, store.Exists(Diagram.Never, _ => true));
    }

    [Fact]
    public void Work_ends_when_its_steps_are_spent_and_what_was_found_stays_right()
    {
        var store = new DiagramStore([.. Enumerable.Repeat(2, 40)]);
        static Diagram ParityIn(DiagramStore store, int count) => Enumerable.Range(0, count).Aggregate(Diagram.Never, (f, v) => store.Or(store.AndNot(f, store.Literal(v, 0)), store.AndNot(store.Literal(v, 0), f)));
        Assert.False(store.TryWithin(20, () => ParityIn(store, 40)));
        Assert.True(store.TryWithin(1_000_000, () => ParityIn(store, 40)));
        Assert.Equal(System.Numerics.BigInteger.Pow(2, 39), store.Count(ParityIn(store, 40)));
        // Work inside other work that has run out ends the whole.
        var fresh = new DiagramStore([.. Enumerable.Repeat(2, 40)]);
        Assert.False(fresh.TryWithin(20, () => fresh.TryWithin(1_000_000, () => ParityIn(fresh, 40))));
    }

    [Fact]
    public void The_cheapest_values_are_those_of_all_values_tried_and_the_wished_ones_where_they_cost_no_more() => Gen.Select(Expressions, Gen.Int[1, 9].Array[5]).Holds(
        (expression, weights) =>
        {
            var store = new DiagramStore([.. Sizes]);
            var diagram = expression.Build(store);
            if (diagram.IsNever) return;
            int[] wished = new int[Sizes.Length];
            int CostOf(int variable, int value) => weights[variable] * value;
            int Total(int[] values) => values.Select((v, i) => CostOf(i, v)).Sum();
            var (cost, values) = store.Cheapest(diagram, wished, CostOf);
            Assert.True(expression.Holds(values));
            Assert.Equal(cost, Total(values));
            Assert.Equal(AllValues().Where(expression.Holds).Min(Total), cost);
        },
        count: 60);

    [Fact]
    public void A_pick_keeps_what_is_wished_wherever_it_can_stay()
    {
        var store = new DiagramStore([3, 3, 2]);
        var condition = store.And(store.Literal(0, v => v > 0), store.Literal(1, v => v != 1));
        Assert.Equal([2, 2, 1], store.Pick(condition, [2, 2, 1]));
        Assert.Equal([1, 0, 1], store.Pick(condition, [0, 1, 1])); // The first that works.
        Assert.Equal([0, 1, 0], store.Pick(Diagram.Always, [0, 1, 0]));
        Assert.Throws<ArgumentException>(() => store.Pick(Diagram.Never, [0, 0, 0]));
        Assert.Throws<ArgumentException>(() => store.Cheapest(Diagram.Never, [0, 0, 0], (_, _) => 0));
    }

    // What work is counted in is the same on every machine: these are the steps and nodes of Bryant's operation with a memory of this size.
    [Fact]
    public void Steps_and_nodes_are_counted_exactly()
    {
        var store = new DiagramStore([.. Enumerable.Repeat(2, 60)]);
        var parity = Enumerable.Range(0, 60).Aggregate(Diagram.Never, (p, v) => store.Or(store.AndNot(p, store.Literal(v, 1)), store.AndNot(store.Literal(v, 1), p)));
        Assert.Equal((10_677L, 10_564), (store.Steps, store.NodeCount));
        Assert.False(parity.IsNever);
    }

    [Fact]
    public void Many_nodes_stay_apart_and_each_is_found_again()
    {
        // 12 bits, every number by itself: 4,096 conditions of 12 nodes each, shared from below; the store grows several times over.
        var store = new DiagramStore([.. Enumerable.Repeat(2, 12)]);
        Diagram Exactly(int number) => store.All(Enumerable.Range(0, 12).Reverse().Select(v => store.Literal(v, number >> v & 1)));
        var all = Enumerable.Range(0, 4096).Select(Exactly).ToList();
        Assert.Equal(4096, all.Distinct().Count());
        Assert.Equal(all, Enumerable.Range(0, 4096).Select(Exactly));
        Assert.Equal(Diagram.Always, store.Any(all));
        Assert.All(all, a => Assert.Equal(BigInteger.One, store.Count(a)));
        Assert.True(store.Holds(all[0b101010101010], [.. Enumerable.Range(0, 12).Select(v => 0b101010101010 >> v & 1)]));
    }

    [Fact]
    public void Work_stops_when_nobody_waits_for_it()
    {
        using var stop = new CancellationTokenSource();
        var store = new DiagramStore([.. Enumerable.Repeat(2, 200)], stop.Token);
        Diagram Parity() => Enumerable.Range(0, 200).Aggregate(Diagram.Never, (p, v) => store.Or(store.AndNot(p, store.Literal(v, 0)), store.AndNot(store.Literal(v, 0), p)));
        Parity();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => { Parity(); });
    }

    private abstract record Expression
    {
        public abstract bool Holds(int[] values);

        public abstract Diagram Build(DiagramStore store);
    }

    private sealed record Is(int Variable, int Value) : Expression
    {
        public override bool Holds(int[] values) => values[Variable] == Value;

        public override Diagram Build(DiagramStore store) => store.Literal(Variable, Value);
    }

    private sealed record Not(Expression Part) : Expression
    {
        public override bool Holds(int[] values) => !Part.Holds(values);

        public override Diagram Build(DiagramStore store) => store.Not(Part.Build(store));
    }

    private sealed record And(Expression Left, Expression Right) : Expression
    {
        public override bool Holds(int[] values) => Left.Holds(values) && Right.Holds(values);

        public override Diagram Build(DiagramStore store) => store.And(Left.Build(store), Right.Build(store));
    }

    private sealed record Or(Expression Left, Expression Right) : Expression
    {
        public override bool Holds(int[] values) => Left.Holds(values) || Right.Holds(values);

        public override Diagram Build(DiagramStore store) => store.Or(Left.Build(store), Right.Build(store));
    }
}
