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

/// <summary>A track with a wiper found: what is read from the wiper to one end goes up as that to the other goes down.</summary>
/// <param name="First">One end of the track.</param>
/// <param name="Wiper">The wiper; of a rheostat the other end of it, and <paramref name="Last"/> is -1.</param>
/// <param name="Last">The other end.</param>
/// <param name="Ohms">The whole track.</param>
internal sealed record LearnedTrack(int First, int Wiper, int Last, double Ohms);

/// <summary>What readings make of an unknown unit.</summary>
internal sealed record LearnedUnit(
    ImmutableArray<ImmutableArray<int>> Joined, ImmutableArray<LearnedPole> Poles, ImmutableArray<LearnedDevice> Devices)
{
    /// <summary>Tracks with a wiper.</summary>
    public ImmutableArray<LearnedTrack> Tracks { get; init; } = [];

    /// <summary>Contacts on which nothing was found though everything was measured.</summary>
    public ImmutableArray<int> Unused { get; init; } = [];

    /// <summary>Contacts of which too little is known.</summary>
    public ImmutableArray<int> NotTraced { get; init; } = [];

    /// <summary>Sentences on what is not settled, each naming the measurement that settles it.</summary>
    public ImmutableArray<string> Open { get; init; } = [];
}
