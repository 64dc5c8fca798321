using System.Collections.Immutable;

namespace Schematic.Inserts;

/// <summary>An insert whose contacts are all given by hand (<see cref="InsertBuilder.Positions"/>), in the order of numbering.</summary>
public sealed record PositionsInsert : InsertBuilder
{
    /// <summary>Whether the contacts follow each other closely enough for a guide line: spirals measured by hand.</summary>
    public bool WithGuideLine { get; init; }

    /// <inheritdoc/>
    protected override string Family => "positions";

    /// <inheritdoc/>
    protected override InsertOutline UsualOutline => InsertOutline.Round;

    /// <inheritdoc/>
    protected override bool HasGuideLine => WithGuideLine;

    private protected override ImmutableArray<(double X, double Y)> Layout(ImmutableArray<InsertProblem>.Builder problems)
    {
        if (Positions.IsEmpty)
            problems.Add(new("The insert has no contacts.", "Give each contact a line: 1 0 mm 3.5 mm, x to the right, y up."));
        return [];
    }

    private protected override string ConventionFor(string first) => "";
}
