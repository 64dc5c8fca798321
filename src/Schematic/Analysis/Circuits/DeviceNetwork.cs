using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using Schematic.Model;

namespace Schematic.Analysis.Circuits;

/// <summary>
/// The resistances of a device out of what a meter reads between its terminals. Where every two of a group were measured, and
/// each reading is one figure, the readings are those of the whole group: three windings in a star read 30 ohm between any two
/// ends and are 45 ohm each as a triangle. Elsewhere a reading is the resistance itself.
/// </summary>
internal static class DeviceNetwork
{
    /// <summary>Conductances this small against the others are none: what rounding of readings leaves.</summary>
    private const double Negligible = 1e-9;

    /// <summary>The resistances that stand between the terminals.</summary>
    public static ImmutableArray<DeviceOhms> Of(Device device) =>
        [.. GroupsOf(device).SelectMany(g => Solved(g) ?? g)];

    /// <summary>Whether no resistances at all between the terminals give what was read.</summary>
    public static bool IsImpossible(Device device) => GroupsOf(device).Any(g => IsWhole(g) && Solved(g) is null);

    private static IEnumerable<ImmutableArray<DeviceOhms>> GroupsOf(Device device)
    {
        var places = device.Terminals.Select((t, i) => (t.Name, i)).ToDictionary(t => t.Name, t => t.i, StringComparer.Ordinal);
        var sets = new DisjointSets(places.Count);
        foreach (var reading in device.Resistances) sets.Join(places[reading.Ends.From], places[reading.Ends.To]);
        return device.Resistances.GroupBy(r => sets.Find(places[r.Ends.From])).Select(g => g.ToImmutableArray());
    }

    private static ImmutableArray<string> TerminalsOf(ImmutableArray<DeviceOhms> group) =>
        [.. group.SelectMany(r => new[] { r.Ends.From, r.Ends.To }).Distinct()];

    private static bool IsWhole(ImmutableArray<DeviceOhms> group)
    {
        var count = TerminalsOf(group).Length;
        return count > 2 && group.Length == count * (count - 1) / 2 && group.All(r => r.Ohms is not null);
    }

    /// <summary>
    /// From the readings R between n terminals: with the last as reference M = (R_in + R_jn - R_ij) / 2 is the inverse of the matrix
    /// of conductances (the resistance distance of a network; Klein, Randic 1993, from memory). Null where that gives none.
    /// </summary>
    private static ImmutableArray<DeviceOhms>? Solved(ImmutableArray<DeviceOhms> group)
    {
        if (!IsWhole(group)) return null;
        var names = TerminalsOf(group);
        var last = names.Length - 1;
        double Read(int i, int j) => i == j ? 0 : group.First(r => (r.Ends.From == names[i] && r.Ends.To == names[j]) || (r.Ends.From == names[j] && r.Ends.To == names[i])).Ohms!.Value;
        var inverse = Matrix<double>.Build.Dense(last, last, (i, j) => (Read(i, last) + Read(j, last) - Read(i, j)) / 2);
        if (Math.Abs(inverse.Determinant()) < double.Epsilon) return null;
        var siemens = inverse.Inverse();
        var found = ImmutableArray.CreateBuilder<DeviceOhms>();
        foreach (var reading in group)
        {
            var (i, j) = (names.IndexOf(reading.Ends.From), names.IndexOf(reading.Ends.To));
            if (i > j) (i, j) = (j, i);
            var between = j < last ? -siemens[i, j] : Enumerable.Range(0, last).Sum(k => siemens[i, k]);
            if (!double.IsFinite(between) || between < -Negligible * siemens[i, i]) return null;
            if (between > Negligible * siemens[i, i]) found.Add(reading with { Least = 1 / between, Most = 1 / between });
        }

        return found.ToImmutable();
    }
}
