using System.Collections.Immutable;

namespace Schematic.Analysis.States;

/// <summary>One state: a value for each state variable, in their order.</summary>
public sealed record PanelState(ImmutableArray<int> Values)
{
    /// <inheritdoc/>
    public bool Equals(PanelState? other) => other is not null && Values.AsSpan().SequenceEqual(other.Values.AsSpan());

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var value in Values) hash.Add(value);
        return hash.ToHashCode();
    }
}
