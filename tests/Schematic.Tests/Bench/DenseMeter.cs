using MathNet.Numerics.LinearAlgebra;
using Schematic.Bench;

namespace Schematic.Tests.Bench;

/// <summary>
/// A second, plain meter as the oracle: every terminal is a node, every joint a resistor, and the whole network is solved as
/// one dense system for each reading. It knows no places, no groups and no cache.
/// </summary>
internal sealed class DenseMeter(BenchCircuit circuit)
{
    private const double Leak = 1e-9;
    private const double OpenOhms = 4e6;
    private const double TestVolts = 2.8;
    private const double TestAmps = 0.001;

    private readonly Dictionary<(Stand, int, int, bool), double> _read = [];
    private readonly Dictionary<Stand, Matrix<double>> _inverse = [];

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
        if (red.Count + black.Count == 2) return Between(stand, red[0], black[0]);
        var volts = Solve(stand, red, black, amps: null, volts: 0.1, out var amps);
        return amps * OpenOhms <= volts ? double.PositiveInfinity : volts / amps;
    }

    /// <summary>The resistance between two nodes from the inverse of the whole matrix: Zaa + Zbb - 2 Zab. Diodes leak.</summary>
    private double Between(Stand stand, int one, int other)
    {
        if (!_inverse.TryGetValue(stand, out var z)) _inverse[stand] = z = MatrixAt(stand).Inverse();
        var ohms = z[one, one] + z[other, other] - (2 * z[one, other]);
        return ohms >= OpenOhms ? double.PositiveInfinity : Math.Max(0, ohms);
    }

    private Matrix<double> MatrixAt(Stand stand)
    {
        var n = circuit.Terminals.Length;
        var matrix = Matrix<double>.Build.Dense(n, n);
        for (var i = 0; i < n; i++) matrix[i, i] += 1e-11;
        foreach (var joint in circuit.Joints.Where(j => !j.IsOpen && j.From != j.To)) Add(matrix, joint.From, joint.To, 1 / joint.Ohms);
        foreach (var contact in circuit.Contacts)
            if (contact.Stuck ?? Closes(contact, stand)) Add(matrix, contact.From, contact.To, 100);
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

    private double ReadDiode(Stand stand, IReadOnlyList<int> red, IReadOnlyList<int> black)
    {
        if (red.Intersect(black).Any()) return 0;
        if (red.Count + black.Count == 2 && !circuit.Elements.Any(e => e.Value.IsOneWay && !e.IsMissing))
        {
            var linear = Between(stand, red[0], black[0]) * TestAmps;
            return linear > TestVolts * 0.98 ? double.PositiveInfinity : linear;
        }

        var volts = Solve(stand, red, black, TestAmps, 0, out _);
        return volts > TestVolts * 0.98 ? double.PositiveInfinity : volts;
    }

    private double Solve(Stand stand, IReadOnlyList<int> red, IReadOnlyList<int> black, double? amps, double volts, out double flowing)
    {
        var on = new bool[circuit.Elements.Length];
        for (var round = 0; ; round++)
        {
            var potential = SolveOnce(stand, red, black, amps, volts, on, out flowing);
            var changed = false;
            for (var i = 0; i < on.Length; i++)
            {
                var element = circuit.Elements[i];
                if (!element.Value.IsOneWay) continue;
                var forward = potential[element.From] - potential[element.To] > element.Value.Volts + 1e-9;
                if (forward == on[i]) continue;
                on[i] = forward;
                changed = true;
                if (round > 50) break; // one by one, so that it comes to rest
            }

            if (!changed || round > 500) return potential[red[0]] - potential[black[0]];
        }
    }

    /// <summary>The black lead is the ground; a voltage is given as a very good source beside it.</summary>
    private Vector<double> SolveOnce(
        Stand stand, IReadOnlyList<int> red, IReadOnlyList<int> black, double? amps, double volts, bool[] on, out double flowing)
    {
        var n = circuit.Terminals.Length;
        var matrix = Matrix<double>.Build.Dense(n, n);
        var right = Vector<double>.Build.Dense(n);
        for (var i = 0; i < n; i++) matrix[i, i] += Leak * 1e-3;
        foreach (var joint in circuit.Joints.Where(j => !j.IsOpen && j.From != j.To)) Add(matrix, joint.From, joint.To, 1 / joint.Ohms);
        foreach (var contact in circuit.Contacts)
            if (contact.Stuck ?? Closes(contact, stand)) Add(matrix, contact.From, contact.To, 100);
        for (var i = 0; i < circuit.Elements.Length; i++)
        {
            var element = circuit.Elements[i];
            if (element.IsMissing || element.From == element.To) continue;
            if (!element.Value.IsOneWay) Add(matrix, element.From, element.To, 1 / element.Value.Ohms);
            else if (!on[i]) Add(matrix, element.From, element.To, Leak);
            else
            {
                Add(matrix, element.From, element.To, 1 / element.Value.Ohms);
                right[element.From] += element.Value.Volts / element.Value.Ohms;
                right[element.To] -= element.Value.Volts / element.Value.Ohms;
            }
        }

        foreach (var clip in red.Skip(1)) Add(matrix, red[0], clip, 1e4);
        foreach (var clip in black.Skip(1)) Add(matrix, black[0], clip, 1e4);
        matrix[black[0], black[0]] += 1e6;
        const double source = 1e3;
        if (amps is { } forced)
        {
            right[red[0]] += forced;
            // What the meter cannot drive ends at its own voltage.
            matrix[red[0], red[0]] += 1e-7;
        }
        else
        {
            matrix[red[0], red[0]] += source;
            right[red[0]] += source * volts;
        }

        var potential = matrix.LU().Solve(right);
        flowing = amps ?? (volts - potential[red[0]]) * source;
        return potential;
    }

    private bool Closes(BenchContact contact, Stand stand) => circuit.ClosedAt(stand)[circuit.Contacts.IndexOf(contact)];
}
