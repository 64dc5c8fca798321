using System.Collections.Immutable;
using Schematic.Bench.Readings;

namespace Schematic.Bench.Diagnosis;

/// <summary>Explanations that no measurement can tell apart, as one.</summary>
/// <param name="Members">The explanations, the likeliest first.</param>
/// <param name="Share">How likely the group is, all explanations together being one.</param>
/// <param name="For">Readings that a sound unit cannot give and that these explain.</param>
/// <param name="Against">Readings that these cannot explain.</param>
public sealed record ExplanationGroup(
    ImmutableArray<Explanation> Members, double Share, ImmutableArray<NotedReading> For, ImmutableArray<NotedReading> Against)
{
    /// <summary>Whether nothing is wrong and no reading says otherwise.</summary>
    public bool IsPass => Members.Any(m => m.IsSound) && Against.IsEmpty;

    /// <summary>The group in words.</summary>
    public string Words => string.Join(", or ", Members.Select(m => m.Words));
}

/// <summary>The one measurement that tells most.</summary>
/// <param name="Placement">Where the actuators and leads go.</param>
/// <param name="Bits">The information to be expected, in bits.</param>
/// <param name="Moves">The moves from the stand of the last reading.</param>
/// <param name="Outcomes">For each reading that may come, the groups that it speaks for, by their place in the ranking.</param>
public sealed record NextMeasurement(
    Placement Placement, double Bits, int Moves, ImmutableArray<(Reading Reading, ImmutableArray<int> Groups)> Outcomes);

/// <summary>What readings mean.</summary>
/// <param name="Circuit">What lay on the bench.</param>
/// <param name="Ranking">The explanations, the likeliest first.</param>
public sealed record DiagnosisResult(BenchCircuit Circuit, ImmutableArray<ExplanationGroup> Ranking)
{
    /// <summary>Readings that could be used: taken, and at contacts on the bench.</summary>
    public int UsedReadings { get; init; }

    /// <summary>The share of all single faults that the readings exclude.</summary>
    public double ExcludedShare { get; init; }

    /// <summary>What the readings file says that does not belong to this panel, in sentences.</summary>
    public ImmutableArray<string> Doubts { get; init; } = [];

    /// <summary>Readings against the first explanation that would fit if two digits of one contact's name stood the other way round.</summary>
    public ImmutableArray<(NotedReading Noted, Model.TerminalId Written, Model.TerminalId Meant)> Slips { get; init; } = [];

    /// <summary>The measurement to make next, or null when none would tell more.</summary>
    public NextMeasurement? Next { get; init; }

    /// <summary>Whether the readings are those of a sound unit.</summary>
    public bool IsPass => Ranking[0].IsPass;

    /// <summary>Whether one group is as good as sure, or no measurement tells the first ones apart.</summary>
    public bool IsSettled => Next is null;
}
