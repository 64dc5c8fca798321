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

    /// <summary>
    /// The pairs of faults as two lists, each of the one with each of the other, where that is what they are: contact and joint in series
    /// read alike, and so does whatever else is wrong with them. Null where they are not, or where it is no longer to say.
    /// </summary>
    public (ImmutableArray<Faults.Fault> Ones, ImmutableArray<Faults.Fault> Others)? Both
    {
        get
        {
            if (Members.Length < 3 || !Members.All(m => m is { Faults.Length: 2, Mistake: null })) return null;
            var pairs = Members.SelectMany(m => new[] { (m.Faults[0], m.Faults[1]), (m.Faults[1], m.Faults[0]) }).ToHashSet();
            var (one, other) = (Members[0].Faults[0], Members[0].Faults[1]);
            var ones = Members.SelectMany(m => m.Faults).Distinct().Where(f => pairs.Contains((f, other))).ToImmutableArray();
            var others = Members.SelectMany(m => m.Faults).Distinct().Where(f => pairs.Contains((one, f))).ToImmutableArray();
            var isProduct = ones.Length * others.Length == Members.Length && ones.All(o => others.All(p => pairs.Contains((o, p))));
            return isProduct ? (ones, others) : null;
        }
    }
}

/// <summary>The one measurement that tells most.</summary>
/// <param name="Placement">Where the actuators and leads go.</param>
/// <param name="Bits">The information to be expected, in bits.</param>
/// <param name="Moves">The moves from the stand of the last reading.</param>
/// <param name="Outcomes">For each reading that may come, the groups that it speaks for, by their place in the ranking.</param>
public sealed record NextMeasurement(
    Placement Placement, double Bits, int Moves, ImmutableArray<(Reading Reading, ImmutableArray<int> Groups)> Outcomes)
{
    /// <summary>Whether it is to tell what the person may have done wrong, before any fault is looked for.</summary>
    public bool IsOfPerson { get; init; }
}

/// <summary>What readings mean.</summary>
/// <param name="Circuit">What lay on the bench.</param>
/// <param name="Ranking">The explanations, the likeliest first.</param>
public sealed record DiagnosisResult(BenchCircuit Circuit, ImmutableArray<ExplanationGroup> Ranking)
{
    /// <summary>The readings that were used.</summary>
    public ImmutableArray<NotedReading> Readings { get; init; } = [];

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

    /// <summary>Whether there were too many positions and explanations to look for that measurement to the end.</summary>
    public bool IsNextCutShort { get; init; }

    /// <summary>Whether the readings are those of a sound unit.</summary>
    public bool IsPass => Ranking[0].IsPass;

    /// <summary>Whether one group is as good as sure, or no measurement tells the first ones apart.</summary>
    public bool IsSettled => Next is null && !IsNextCutShort;
}
