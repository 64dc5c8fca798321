using System.Collections.Immutable;
using System.Numerics;

namespace Schematic.Analysis.States;

/// <summary>
/// Reduced ordered decision diagrams (Bryant 1986) with many-valued nodes: a node asks one variable and has a branch for
/// each of its values. Nodes are shared: every condition exists once. The variables are asked in the order of their numbers.
/// </summary>
public sealed class DiagramStore
{
    private const int Leaf = int.MaxValue;
    private const int Impossible = int.MaxValue;
    private const int FirstRoom = 1 << 10;

    private const int StepsBetweenLooks = 1 << 12;

    private readonly ImmutableArray<int> _sizes;
    private readonly CancellationToken _cancelled;
    private int[] _variable = new int[FirstRoom];
    private int[] _firstBranch = new int[FirstRoom];
    private int[] _nextInBucket = new int[FirstRoom];
    private int[] _branches = new int[2 * FirstRoom];
    private int _count = 2;
    private int _branchCount;
    private int[] _buckets = NewBuckets(1 << 10);
    private Remembered[] _remembered = new Remembered[1 << 10];
    private long _limit = long.MaxValue;

    /// <summary>
    /// Makes a store for variables with these numbers of values, each at least one. Work in it stops with an
    /// <see cref="OperationCanceledException"/> when <paramref name="cancelled"/> is set.
    /// </summary>
    public DiagramStore(ImmutableArray<int> sizes, CancellationToken cancelled = default)
    {
        _cancelled = cancelled;
        _sizes = sizes;
        _variable[0] = _variable[1] = Leaf;
    }

    /// <summary>How many nodes exist, the two ends included: a measure of the work.</summary>
    public int NodeCount => _count;

    /// <summary>How many steps were taken so far: what the work is counted in, the same on every machine.</summary>
    public long Steps { get; private set; }

    /// <summary>How many variables there are.</summary>
    public int VariableCount => _sizes.Length;

    /// <summary>
    /// Does some work within a number of steps. False when it takes more: what was found until then stays in the store and
    /// is right, but the work is not done.
    /// </summary>
    public bool TryWithin(long steps, Action work)
    {
        var outer = _limit;
        _limit = Math.Min(outer, Steps + steps);
        try
        {
            work();
            return true;
        }
        catch (StepsSpentException) when (Steps < outer)
        {
            return false;
        }
        finally
        {
            _limit = outer;
        }
    }

    /// <summary>The variable that a condition asks first and what becomes of it at each value: what an export of diagrams writes. Not for the two ends.</summary>
    internal (int Variable, ImmutableArray<Diagram> Branches) Ask(Diagram condition) =>
        (_variable[condition.Id], [.. BranchesOf(condition.Id).Select(b => new Diagram(b))]);

    /// <summary>The condition that <paramref name="variable"/> has <paramref name="value"/>.</summary>
    public Diagram Literal(int variable, int value) => Literal(variable, v => v == value);

    /// <summary>The condition that <paramref name="variable"/> has one of the values that <paramref name="isIn"/> takes.</summary>
    public Diagram Literal(int variable, Func<int, bool> isIn)
    {
        Span<int> branches = stackalloc int[_sizes[variable]];
        for (var i = 0; i < branches.Length; i++) branches[i] = isIn(i) ? 1 : 0;
        return new Diagram(Node(variable, branches));
    }

    /// <summary>Both hold.</summary>
    public Diagram And(Diagram left, Diagram right) => left.Id <= right.Id
        ? new Diagram(Choose(left.Id, right.Id, 0))
        : new Diagram(Choose(right.Id, left.Id, 0));

    /// <summary>At least one holds.</summary>
    public Diagram Or(Diagram left, Diagram right) => left.Id <= right.Id
        ? new Diagram(Choose(left.Id, 1, right.Id))
        : new Diagram(Choose(right.Id, 1, left.Id));

    /// <summary>It does not hold.</summary>
    public Diagram Not(Diagram condition) => new(Choose(condition.Id, 0, 1));

    /// <summary>The first holds and the second does not.</summary>
    public Diagram AndNot(Diagram left, Diagram right) => new(Choose(right.Id, 0, left.Id));

    /// <summary>All hold.</summary>
    public Diagram All(IEnumerable<Diagram> conditions) => conditions.Aggregate(Diagram.Always, And);

    /// <summary>At least one holds.</summary>
    public Diagram Any(IEnumerable<Diagram> conditions) => conditions.Aggregate(Diagram.Never, Or);

    /// <summary>What becomes of a condition when <paramref name="variable"/> has <paramref name="value"/>.</summary>
    public Diagram Restrict(Diagram condition, int variable, int value) =>
        new(Restrict(condition.Id, variable, value));

    /// <summary>The condition with the two values of <paramref name="variable"/> exchanged.</summary>
    public Diagram Swap(Diagram condition, int variable) => new(Swap(condition.Id, variable));

    /// <summary>
    /// For which values of the other variables the condition can hold, the variables that <paramref name="isFree"/> takes
    /// being chosen as one likes.
    /// </summary>
    public Diagram Exists(Diagram condition, Func<int, bool> isFree)
    {
        var known = new Dictionary<int, int>();
        int Free(int id)
        {
            if (id <= 1) return id;
            if (known.TryGetValue(id, out var result)) return result;
            var branches = BranchesOf(id);
            for (var i = 0; i < branches.Length; i++) branches[i] = Free(branches[i]);
            result = isFree(_variable[id]) ? branches.Aggregate((a, b) => Choose(a, 1, b)) : Node(_variable[id], branches);
            return known[id] = result;
        }

        return new Diagram(Free(condition.Id));
    }

    /// <summary>The variables that the condition depends on, in their order.</summary>
    public ImmutableSortedSet<int> Support(Diagram condition)
    {
        var variables = new HashSet<int>();
        var seen = new HashSet<int>();
        var waiting = new Stack<int>([condition.Id]);
        while (waiting.TryPop(out var id))
        {
            if (id <= 1 || !seen.Add(id)) continue;
            variables.Add(_variable[id]);
            foreach (var branch in BranchesOf(id)) waiting.Push(branch);
        }

        return [.. variables];
    }

    /// <summary>Whether the condition holds for these values of all variables.</summary>
    public bool Holds(Diagram condition, IReadOnlyList<int> values)
    {
        var id = condition.Id;
        while (id > 1) id = _branches[_firstBranch[id] + values[_variable[id]]];
        return id == 1;
    }

    /// <summary>
    /// Values for which the condition holds: at each variable in turn the wished value where it can stay, else the first
    /// that works. The condition must not be <see cref="Diagram.Never"/>.
    /// </summary>
    public int[] Pick(Diagram condition, IReadOnlyList<int> wished)
    {
        if (condition.IsNever) throw new ArgumentException("Nothing fulfils it.", nameof(condition));
        int[] values = [.. wished];
        for (var id = condition.Id; id > 1;)
        {
            var (variable, first) = (_variable[id], _firstBranch[id]);
            if (_branches[first + values[variable]] == 0)
                values[variable] = Enumerable.Range(0, _sizes[variable]).First(v => _branches[first + v] != 0);
            id = _branches[first + values[variable]];
        }

        return values;
    }

    /// <summary>
    /// Of all values that fulfil the condition those of the lowest total cost; where several cost the same, the wished value
    /// of each variable in turn. The wished values must cost nothing.
    /// </summary>
    public (int Cost, int[] Values) Cheapest(Diagram condition, IReadOnlyList<int> wished, Func<int, int, int> costOf)
    {
        if (condition.IsNever) throw new ArgumentException("Nothing fulfils it.", nameof(condition));
        var known = new Dictionary<int, int> { [0] = Impossible, [1] = 0 };
        int Cost(int id)
        {
            if (known.TryGetValue(id, out var cost)) return cost;
            cost = Impossible;
            for (var value = 0; value < _sizes[_variable[id]]; value++) cost = Math.Min(cost, CostBy(id, value));
            return known[id] = cost;
        }

        int CostBy(int id, int value) => Cost(_branches[_firstBranch[id] + value]) is var below && below == Impossible
            ? Impossible
            : below + costOf(_variable[id], value);

        int[] values = [.. wished];
        for (var id = condition.Id; id > 1; id = _branches[_firstBranch[id] + values[_variable[id]]])
        {
            var (variable, cost) = (_variable[id], Cost(id));
            if (CostBy(id, values[variable]) != cost)
                values[variable] = Enumerable.Range(0, _sizes[variable]).First(v => CostBy(id, v) == cost);
        }

        return (Cost(condition.Id), values);
    }

    /// <summary>How many of all combinations of values fulfil the condition.</summary>
    public BigInteger Count(Diagram condition)
    {
        var below = new Dictionary<int, BigInteger>();
        return Combinations(0, LevelOf(condition.Id)) * CountBelow(condition.Id, below);
    }

    private BigInteger CountBelow(int id, Dictionary<int, BigInteger> known)
    {
        if (id <= 1) return id;
        if (known.TryGetValue(id, out var count)) return count;
        foreach (var branch in BranchesOf(id))
            count += Combinations(_variable[id] + 1, LevelOf(branch)) * CountBelow(branch, known);
        return known[id] = count;
    }

    private int LevelOf(int id) => id <= 1 ? _sizes.Length : _variable[id];

    private BigInteger Combinations(int from, int to)
    {
        var product = BigInteger.One;
        for (var i = from; i < to; i++) product *= _sizes[i];
        return product;
    }

    /// <summary>If-then-else: the one operation that all others are made of.</summary>
    private int Choose(int test, int then, int otherwise)
    {
        if (test == 1 || then == otherwise) return then;
        if (test == 0) return otherwise;
        if (then == 1 && otherwise == 0) return test;
        if (then == test) then = 1;
        if (otherwise == test) otherwise = 0;

        if (Recall(test, then, otherwise, out var known)) return known;
        if (++Steps > _limit) throw new StepsSpentException();
        if (Steps % StepsBetweenLooks == 0) _cancelled.ThrowIfCancellationRequested();
        var variable = Math.Min(_variable[test], Math.Min(_variable[then], _variable[otherwise]));
        Span<int> branches = stackalloc int[_sizes[variable]];
        for (var i = 0; i < branches.Length; i++)
            branches[i] = Choose(Branch(test, variable, i), Branch(then, variable, i), Branch(otherwise, variable, i));
        return Remember(test, then, otherwise, Node(variable, branches));
    }

    private int Restrict(int id, int variable, int value)
    {
        if (_variable[id] > variable) return id;
        if (_variable[id] == variable) return _branches[_firstBranch[id] + value];
        if (Recall(id, -1 - variable, -1 - value, out var result)) return result;
        Span<int> branches = stackalloc int[_sizes[_variable[id]]];
        for (var i = 0; i < branches.Length; i++) branches[i] = Restrict(_branches[_firstBranch[id] + i], variable, value);
        return Remember(id, -1 - variable, -1 - value, Node(_variable[id], branches));
    }

    private int Swap(int id, int variable)
    {
        if (_variable[id] > variable) return id;
        var first = _firstBranch[id];
        if (_variable[id] == variable) return Node(variable, [_branches[first + 1], _branches[first]]);
        if (Recall(id, -1 - variable, int.MinValue, out var result)) return result;
        Span<int> branches = stackalloc int[_sizes[_variable[id]]];
        for (var i = 0; i < branches.Length; i++) branches[i] = Swap(_branches[first + i], variable);
        return Remember(id, -1 - variable, int.MinValue, Node(_variable[id], branches));
    }

    private bool Recall(int test, int then, int otherwise, out int result)
    {
        ref var old = ref _remembered[SlotOf(test, then, otherwise)];
        result = old.Result;
        return old.Test == test && old.Then == then && old.Otherwise == otherwise;
    }

    private int Remember(int test, int then, int otherwise, int result)
    {
        _remembered[SlotOf(test, then, otherwise)] = new Remembered(test, then, otherwise, result);
        return result;
    }

    private int Branch(int id, int variable, int value) =>
        _variable[id] == variable ? _branches[_firstBranch[id] + value] : id;

    private int[] BranchesOf(int id)
    {
        return _branches.AsSpan(_firstBranch[id], _sizes[_variable[id]]).ToArray();
    }

    /// <summary>The one node with these branches; no node where all branches agree.</summary>
    private int Node(int variable, ReadOnlySpan<int> branches)
    {
        if (branches.IndexOfAnyExcept(branches[0]) < 0) return branches[0];
        var hash = HashOf(variable, branches);
        for (var id = _buckets[hash & (_buckets.Length - 1)]; id >= 0; id = _nextInBucket[id])
            if (_variable[id] == variable && IsSame(_firstBranch[id], branches)) return id;

        var added = _count++;
        MakeRoom(branches.Length);
        _variable[added] = variable;
        _firstBranch[added] = _branchCount;
        branches.CopyTo(_branches.AsSpan(_branchCount));
        _branchCount += branches.Length;
        if (added > _buckets.Length) Grow();
        else Link(added, hash);
        return added;
    }

    private void MakeRoom(int branches)
    {
        if (_count > _variable.Length)
        {
            Array.Resize(ref _variable, 2 * _variable.Length);
            Array.Resize(ref _firstBranch, _variable.Length);
            Array.Resize(ref _nextInBucket, _variable.Length);
        }

        if (_branchCount + branches > _branches.Length) Array.Resize(ref _branches, Math.Max(2 * _branches.Length, _branchCount + branches));
    }

    private void Grow()
    {
        _buckets = NewBuckets(_buckets.Length * 2);
        _remembered = new Remembered[_buckets.Length];
        for (var id = 2; id < _count; id++) Link(id, HashOf(_variable[id], BranchesOf(id)));
    }

    private void Link(int id, int hash)
    {
        ref var head = ref _buckets[hash & (_buckets.Length - 1)];
        _nextInBucket[id] = head;
        head = id;
    }

    private bool IsSame(int first, ReadOnlySpan<int> branches)
    {
        for (var i = 0; i < branches.Length; i++)
            if (_branches[first + i] != branches[i]) return false;
        return true;
    }

    private static int HashOf(int variable, ReadOnlySpan<int> branches)
    {
        var hash = (uint)variable + 1;
        foreach (var branch in branches) hash = (hash ^ (uint)branch) * 0x9E3779B1u ^ (hash >> 15);
        return (int)(hash >> 1);
    }

    private int SlotOf(int test, int then, int otherwise)
    {
        var hash = ((uint)test * 0x9E3779B1u) ^ ((uint)then * 0x85EBCA77u) ^ ((uint)otherwise * 0xC2B2AE3Du);
        return (int)((hash ^ (hash >> 15)) & (uint)(_remembered.Length - 1));
    }

    private static int[] NewBuckets(int size)
    {
        var buckets = new int[size];
        Array.Fill(buckets, -1);
        return buckets;
    }

    /// <summary>Ends work that takes more steps than it was given.</summary>
    private sealed class StepsSpentException : Exception;

    private readonly record struct Remembered(int Test, int Then, int Otherwise, int Result);
}
