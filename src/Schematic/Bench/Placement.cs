using System.Collections.Immutable;

namespace Schematic.Bench;

/// <summary>One placement of the leads: terminals clipped together count as one lead.</summary>
/// <param name="Stand">Where the actuators are held.</param>
/// <param name="Test">How the meter is set.</param>
/// <param name="Red">Numbers of the terminals under the red lead.</param>
/// <param name="Black">Numbers of the terminals under the black lead.</param>
public sealed record Placement(Stand Stand, MeterTest Test, ImmutableArray<int> Red, ImmutableArray<int> Black)
{
    /// <inheritdoc/>
    public bool Equals(Placement? other) => other is not null && Test == other.Test && Stand == other.Stand
        && Red.AsSpan().SequenceEqual(other.Red.AsSpan()) && Black.AsSpan().SequenceEqual(other.Black.AsSpan());

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = new HashCode();
        hash.Add(Stand);
        hash.Add(Test);
        foreach (var red in Red) hash.Add(red);
        hash.Add(-1);
        foreach (var black in Black) hash.Add(black);
        return hash.ToHashCode();
    }
}
