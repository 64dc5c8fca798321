using System.Collections.Immutable;
using Schematic.Bench.Faults;

namespace Schematic.Bench.Diagnosis;

/// <summary>Something that may be behind the readings: nothing, faults, a mistake of the person, or both.</summary>
/// <param name="Faults">What is wrong with what lies on the bench.</param>
/// <param name="Mistake">What the person did wrong, or null.</param>
public sealed record Explanation(ImmutableArray<Fault> Faults, Mistake? Mistake)
{
    /// <summary>Nothing is wrong.</summary>
    public static Explanation Sound { get; } = new([], null);

    /// <summary>How likely it is beforehand, as a logarithm against a sound unit measured well.</summary>
    public double LogChance => Faults.Sum(f => Math.Log(f.Chance)) + (Mistake is null ? 0 : Math.Log(Mistake.Chance));

    /// <summary>How many things are wrong.</summary>
    public int Size => Faults.Length + (Mistake is null ? 0 : 1);

    /// <summary>Whether nothing is wrong.</summary>
    public bool IsSound => Size == 0;

    /// <summary>The explanation in words.</summary>
    public string Words => IsSound ? "nothing is wrong" : string.Join("; and ", Faults.Select(f => f.Words).Prepend(Mistake?.Words ?? "").Where(w => w.Length > 0));
}
