using MathNet.Numerics.LinearAlgebra;

namespace Schematic.Analysis.Electrical;

/// <summary>
/// The equations of a resistive network. Nodes with at most two neighbours - ends of wires and joints in series, nearly all
/// of a wiring diagram - are eliminated first; what remains is small and is solved as a dense system.
/// </summary>
internal sealed class ConductanceSystem
{
    private readonly SortedDictionary<int, double>[] _siemens;
    private readonly double[] _amps;
    private readonly List<(int Node, (int Neighbour, double Siemens)[] Row, double Amps)> _eliminated = [];
    private readonly bool[] _gone;

    public ConductanceSystem(int nodeCount)
    {
        _siemens = [.. Enumerable.Range(0, nodeCount).Select(_ => new SortedDictionary<int, double>())];
        _amps = new double[nodeCount];
        _gone = new bool[nodeCount];
    }

    /// <summary>Adds a conductance, and a current that flows out of it into <paramref name="from"/>.</summary>
    public void Add(int from, int to, double siemens, double amps)
    {
        Join(from, to, siemens);
        _amps[from] += amps;
        _amps[to] -= amps;
    }

    /// <summary>The potentials; the first node of each connected component is at zero.</summary>
    public double[] Solve()
    {
        var volts = new double[_amps.Length];
        foreach (var component in Components()) SolveComponent(component, volts);
        return volts;
    }

    private void Join(int one, int other, double siemens)
    {
        if (siemens == 0) return;
        _siemens[one][other] = _siemens[one].GetValueOrDefault(other) + siemens;
        _siemens[other][one] = _siemens[other].GetValueOrDefault(one) + siemens;
    }

    private void SolveComponent(List<int> nodes, double[] volts)
    {
        if (nodes.Count == 1) return;
        var reference = nodes[0];
        Eliminate(nodes, reference);
        SolveDense([.. nodes.Where(n => n != reference && !_gone[n])], volts);
        for (var i = _eliminated.Count - 1; i >= 0; i--)
        {
            var (node, row, amps) = _eliminated[i];
            volts[node] = (amps + row.Sum(r => r.Siemens * volts[r.Neighbour])) / row.Sum(r => r.Siemens);
        }

        _eliminated.Clear();
    }

    /// <summary>Removes nodes with one or two neighbours; their current is shared out and a pair of neighbours is joined.</summary>
    private void Eliminate(List<int> nodes, int reference)
    {
        var waiting = new Queue<int>(nodes);
        while (waiting.TryDequeue(out var node))
        {
            if (node == reference || _gone[node] || _siemens[node].Count > 2) continue;
            _gone[node] = true;
            (int Neighbour, double Siemens)[] row = [.. _siemens[node].Select(p => (p.Key, p.Value))];
            _eliminated.Add((node, row, _amps[node]));
            var total = row.Sum(r => r.Siemens);
            foreach (var (neighbour, siemens) in row)
            {
                _siemens[neighbour].Remove(node);
                _amps[neighbour] += _amps[node] * siemens / total;
                waiting.Enqueue(neighbour);
            }

            if (row.Length == 2) Join(row[0].Neighbour, row[1].Neighbour, row[0].Siemens * row[1].Siemens / total);
        }
    }

    private void SolveDense(int[] nodes, double[] volts)
    {
        if (nodes.Length == 0) return;
        var place = new Dictionary<int, int>();
        foreach (var node in nodes) place[node] = place.Count;
        var matrix = Matrix<double>.Build.Dense(nodes.Length, nodes.Length);
        var right = Vector<double>.Build.Dense(nodes.Length, i => _amps[nodes[i]]);
        foreach (var node in nodes)
        {
            foreach (var (neighbour, siemens) in _siemens[node])
            {
                matrix[place[node], place[node]] += siemens;
                if (place.TryGetValue(neighbour, out var column)) matrix[place[node], column] -= siemens;
            }
        }

        var solved = matrix.LU().Solve(right);
        foreach (var node in nodes) volts[node] = solved[place[node]];
    }

    private IEnumerable<List<int>> Components()
    {
        var seen = new bool[_amps.Length];
        for (var start = 0; start < seen.Length; start++)
        {
            if (seen[start]) continue;
            seen[start] = true;
            var nodes = new List<int> { start };
            for (var i = 0; i < nodes.Count; i++)
            {
                foreach (var next in _siemens[nodes[i]].Keys)
                {
                    if (seen[next]) continue;
                    seen[next] = true;
                    nodes.Add(next);
                }
            }

            yield return nodes;
        }
    }
}
