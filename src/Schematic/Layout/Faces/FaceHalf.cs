using System.Collections.Immutable;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Layout.Faces;

/// <summary>A connector and what its contacts are for.</summary>
/// <param name="Connector">The connector.</param>
/// <param name="Uses">What each contact is for, in the insert's order.</param>
internal sealed record FaceHalf(Connector Connector, ImmutableArray<ContactUse> Uses)
{
    /// <summary>How many of its contacts have wires.</summary>
    public int Wired => Uses.Count(u => !u.Wires.IsEmpty);

    /// <summary>Its name.</summary>
    public string Name => Connector.Designator;

    /// <summary>
    /// Connectors as they stand on sheets: two halves that mate and lie one on the other together, the one with more wires first; every
    /// other alone.
    /// </summary>
    public static IEnumerable<(FaceHalf Main, FaceHalf? Mate)> Paired(IEnumerable<FaceHalf> halves)
    {
        var left = halves.ToList();
        while (left.Count > 0)
        {
            var half = left[0];
            var mate = left.Skip(1).FirstOrDefault(h => TrueSizeView.LieOneOnTheOther(half.Connector, h.Connector));
            left.Remove(half);
            if (mate is not null) left.Remove(mate);
            yield return mate is { } other && other.Wired > half.Wired ? (other, half) : (half, mate);
        }
    }
}
