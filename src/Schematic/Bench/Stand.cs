using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Bench;

/// <summary>
/// Where every actuator is held. A place is an even number, twice the position's number; the odd number after it is the way
/// to the next position, where a contact that makes before it breaks joins both.
/// </summary>
public sealed record Stand(ImmutableArray<int> Places)
{
    /// <summary>Every actuator where it stands before anybody touches it.</summary>
    public static Stand Rest(ImmutableArray<Actuator> actuators) => new([.. actuators.Select(a => 2 * a.Positions.IndexOf(a.Rest))]);

    /// <summary>The same with one actuator held elsewhere.</summary>
    public Stand With(int actuator, int place) => new(Places.SetItem(actuator, place));

    /// <inheritdoc/>
    public bool Equals(Stand? other) => other is not null && Places.AsSpan().SequenceEqual(other.Places.AsSpan());

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var place in Places) hash.Add(place);
        return hash.ToHashCode();
    }

    /// <summary>Moves of a hand from here to there, counted from position to neighbouring position.</summary>
    public int MovesTo(Stand other, ImmutableArray<Actuator> actuators)
    {
        var moves = 0;
        for (var i = 0; i < Places.Length; i++) moves += Moves(actuators[i], Places[i], other.Places[i]);
        return moves;
    }

    private static int Moves(Actuator actuator, int from, int to)
    {
        var direct = (Math.Abs(from - to) + 1) / 2;
        return actuator.IsEndless ? Math.Min(direct, ((2 * actuator.Positions.Length) - Math.Abs(from - to) + 1) / 2) : direct;
    }
}
