using System.Collections.Immutable;
using Schematic.Analysis.States;

namespace Schematic.Page.Data;

/// <summary>
/// Decision diagrams as a page carries them: one row of numbers. A node is the number of its variable, followed by a reference for
/// each of the variable's values. References 0 and 1 are never and always; any other reference less two is the place in the row where
/// that node begins. Nodes are shared by all conditions, and each stands behind those that it leads to.
/// </summary>
/// <param name="store">Where the conditions are kept.</param>
/// <param name="most">How many nodes the table takes.</param>
internal sealed class DiagramTable(DiagramStore store, int most)
{
    private const int Ends = 2;

    private readonly Dictionary<Diagram, int> _references = new() { [Diagram.Never] = 0, [Diagram.Always] = 1 };
    private readonly List<int> _row = [];

    /// <summary>The row.</summary>
    public IReadOnlyList<int> Row => _row;

    /// <summary>How many nodes it holds.</summary>
    public int NodeCount => _references.Count - Ends;

    /// <summary>Takes some conditions, all or none: false when there is no room for all of them.</summary>
    public bool TryAdd(params IEnumerable<Diagram> conditions)
    {
        var fresh = new List<Diagram>();
        var seen = new HashSet<Diagram>();
        foreach (var condition in conditions)
        {
            if (!Collect(condition, fresh, seen)) return false;
        }

        foreach (var node in fresh) Append(node);
        return true;
    }

    /// <summary>The reference of a condition that was taken.</summary>
    public int this[Diagram condition] => _references[condition];

    /// <summary>Lists nodes that are not in the table yet, each behind those that it leads to.</summary>
    private bool Collect(Diagram condition, List<Diagram> fresh, HashSet<Diagram> seen)
    {
        var waiting = new Stack<(Diagram Node, bool IsOpened)>([(condition, false)]);
        while (waiting.TryPop(out var next))
        {
            if (next.IsOpened)
            {
                fresh.Add(next.Node);
                continue;
            }

            if (_references.ContainsKey(next.Node) || !seen.Add(next.Node)) continue;
            if (NodeCount + seen.Count > most) return false;
            waiting.Push((next.Node, true));
            foreach (var branch in store.Ask(next.Node).Branches) waiting.Push((branch, false));
        }

        return true;
    }

    private void Append(Diagram node)
    {
        var (variable, branches) = store.Ask(node);
        ImmutableArray<int> references = [.. branches.Select(b => _references[b])];
        _references[node] = _row.Count + Ends;
        _row.Add(variable);
        _row.AddRange(references);
    }
}
