using System.Collections.Immutable;

namespace Schematic.Bench.Learning;

/// <summary>A switching contact found: two contacts that an actuator joins in some of its positions.</summary>
internal sealed record LearnedContact(int One, int Other, int Actuator, ImmutableArray<int> Positions);

/// <summary>A pole found: a common and its throws, each with the positions that close it.</summary>
internal sealed record LearnedPole(int Actuator, int Common, ImmutableArray<(int Contact, ImmutableArray<int> Positions)> Throws)
{
    /// <summary>Whether it joins both throws on the way between them.</summary>
    public bool MakesBeforeBreak { get; init; }
}

/// <summary>A device found between two contacts.</summary>
/// <param name="From">One contact; of a diode its anode.</param>
/// <param name="To">The other.</param>
/// <param name="Ohms">Its resistance cold, or of a diode the volts of the test.</param>
/// <param name="IsDiode">Whether current passes one way only.</param>
/// <param name="Seen">What the eye told of it, or empty.</param>
internal sealed record LearnedDevice(int From, int To, double Ohms, bool IsDiode, string Seen);

/// <summary>What readings make of an unknown unit.</summary>
internal sealed record LearnedUnit(
    ImmutableArray<ImmutableArray<int>> Joined, ImmutableArray<LearnedPole> Poles, ImmutableArray<LearnedDevice> Devices)
{
    /// <summary>Contacts on which nothing was found though everything was measured.</summary>
    public ImmutableArray<int> Unused { get; init; } = [];

    /// <summary>Contacts of which too little is known.</summary>
    public ImmutableArray<int> NotTraced { get; init; } = [];

    /// <summary>Sentences on what is not settled, each naming the measurement that settles it.</summary>
    public ImmutableArray<string> Open { get; init; } = [];
}
