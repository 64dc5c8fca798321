using MathNet.Numerics.LinearAlgebra;
using Schematic.Bench;

namespace Schematic.Tests.Bench;

/// <summary>
/// A second, plain meter as the oracle: every terminal is a node, every joint a resistor, and the whole network is one dense
/// system. It knows no places, no groups and no cache of networks that look alike.
/// </summary>
internal sealed class DenseMeter(BenchCircuit circuit)
{
    private const double Leak = 1e-9;
    private const double OpenOhms = 4e6;
    private const double TestVolts = 2.8;
    private const double TestAmps = 0.001;
    private const double ClipOhms = 0.001;

    private readonly Dictionary<(Stand, int, int, bool), double> _read = [];
    private readonly Dictionary<Stand, double[,]> _inverse = [];
    private readonly int[] _diodes = [.. Enumerable.Range(0, circuit.Elements.Length)
        .Where(i => circuit.Elements[i] is { IsMissing: false } e && e.Value.IsOneWay && e.From != e.To)];

    /// <summary>Ohms at 0.1 V, which opens no diode; infinite when open.</summary>
    public double Ohms(Stand stand, IReadOnlyList<int> red, IReadOnlyList<int> black) => Kept(stand, red, black, isDiode: false);

    /// <summary>Volts at a milliampere from red to black; infinite when the meter's own voltage does not drive it.</summary>
    public double DiodeVolts(Stand stand, IReadOnlyList<int> red, IReadOnlyList<int> black) => Kept(stand, red, black, isDiode: true);

    private double Kept(Stand stand, IReadOnlyList<int> red, IReadOnlyList<int> black, bool isDiode)
    {
        double Read() => isDiode ? ReadDiode(stand, red, black) : ReadOhms(stand, red, black);
        if (red.Count + black.Count > 2) return Read();
        var key = (stand, red[0], black[0], isDiode);
        if (!_read.TryGetValue(key, out var value)) _read[key] = value = Read();
        return value;
    }

    private double ReadOhms(Stand stand, IReadOnlyList<int> red, IReadOnlyList<int> black)
    {
        if (red.Intersect(black).Any()) return 0;
        var ohms = Solve(stand, red, black, [], 1, out _);
        return ohms >= OpenOhms ? double.PositiveInfinity : Math.Max(0, ohms);
    }

    private double ReadDiode(Stand stand, IReadOnlyList<int> red, IReadOnlyList<int> black)
    {
        if (red.Intersect(black).Any()) return 0;
        var volts = SolveDiodes(stand, red, black);
        return volts > TestVolts * 0.98 ? double.PositiveInfinity : volts;
    }

    /// <summary>Which diodes conduct is guessed anew from the voltages until it agrees with them.</summary>
    private double SolveDiodes(Stand stand, IReadOnlyList<int> red, IReadOnlyList<int> black)
    {
        var on = new HashSet<int>();
        for (var round = 0; ; round++)
        {
            var volts = Solve(stand, red, black, on, TestAmps, out var across);
            var changed = false;
            foreach (var diode in _diodes)
            {
                var forward = across(circuit.Elements[diode].From, circuit.Elements[diode].To) > circuit.Elements[diode].Value.Volts + 1e-9;
                if (forward == on.Contains(diode)) continue;
                if (forward) on.Add(diode);
                else on.Remove(diode);
                changed = true;
                if (round > 50) break; // one by one, so that it comes to rest
            }

            if (!changed || round > 500) return volts;
        }
    }

    /// <summary>
    /// The voltage between the leads at a current. The inverse of the whole matrix is made once for a stand; clips, the meter itself and
    /// diodes that conduct are added to it by the identity of Woodbury 1950 (Golub, Van Loan: Matrix Computations, from memory).
    /// </summary>
    private double Solve(Stand stand, IReadOnlyList<int> red, IReadOnlyList<int> black, IReadOnlyCollection<int> on, double amps, out Func<int, int, double> across)
    {
        if (!_inverse.TryGetValue(stand, out var z)) _inverse[stand] = z = MatrixAt(stand).Inverse().ToArray();
        List<(int From, int To, double Ohms, double Volts)> added =
        [
            .. red.Skip(1).Select(clip => (red[0], clip, ClipOhms, 0.0)),
            .. black.Skip(1).Select(clip => (black[0], clip, ClipOhms, 0.0)),
            .. on.Select(d => circuit.Elements[d]).Select(d => (d.From, d.To, d.Value.Ohms, d.Value.Volts)),
        ];
        var currents = new double[added.Count];
        if (added.Count > 0)
        {
            var matrix = Matrix<double>.Build.Dense(added.Count, added.Count, (i, j) =>
                Coupled(z, added[i].From, added[i].To, added[j].From, added[j].To) + (i == j ? added[i].Ohms : 0));
            var right = Vector<double>.Build.Dense(added.Count, i => (amps * Coupled(z, added[i].From, added[i].To, red[0], black[0])) - added[i].Volts);
            currents = [.. matrix.LU().Solve(right)];
        }

        across = (one, other) =>
        {
            var volts = amps * Coupled(z, one, other, red[0], black[0]);
            for (var i = 0; i < currents.Length; i++) volts -= currents[i] * Coupled(z, one, other, added[i].From, added[i].To);
            return volts;
        };
        return across(red[0], black[0]);
    }

    /// <summary>Volts between two nodes for each ampere that goes in at a third and out at a fourth.</summary>
    private static double Coupled(double[,] z, int one, int other, int into, int outOf) => z[one, into] - z[one, outOf] - z[other, into] + z[other, outOf];

    private Matrix<double> MatrixAt(Stand stand)
    {
        var n = circuit.Terminals.Length;
        var matrix = Matrix<double>.Build.Dense(n, n);
        for (var i = 0; i < n; i++) matrix[i, i] += 1e-11;
        foreach (var joint in circuit.Joints.Where(j => !j.IsOpen && j.From != j.To)) Add(matrix, joint.From, joint.To, 1 / joint.Ohms);
        var closed = circuit.ClosedAt(stand);
        for (var i = 0; i < circuit.Contacts.Length; i++)
            if (circuit.Contacts[i].Stuck ?? closed[i]) Add(matrix, circuit.Contacts[i].From, circuit.Contacts[i].To, 100);
        foreach (var element in circuit.Elements.Where(e => !e.IsMissing && e.From != e.To))
            Add(matrix, element.From, element.To, element.Value.IsOneWay ? Leak : 1 / element.Value.Ohms);
        return matrix;
    }

    private static void Add(Matrix<double> matrix, int one, int other, double siemens)
    {
        matrix[one, one] += siemens;
        matrix[other, other] += siemens;
        matrix[one, other] -= siemens;
        matrix[other, one] -= siemens;
    }
}
