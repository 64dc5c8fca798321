using System.Collections.Immutable;

namespace Schematic.Inserts;

/// <summary>One straight row of contacts.</summary>
/// <param name="Count">How many contacts there are.</param>
public sealed record StripInsert(int Count) : InsertBuilder
{
    /// <summary>Distance of neighbours in millimetres.</summary>
    public double PitchMm { get; init; } = 2.54;

    /// <summary>The face on which the numbers run from left to right; null when not stated (then the front of the pins).</summary>
    public FaceView? Face { get; init; }

    /// <inheritdoc/>
    protected override string Family => "strip";

    /// <inheritdoc/>
    protected override InsertOutline UsualOutline => InsertOutline.Rectangular;

    private FaceView OnFace => Face ?? FaceView.FrontOfPins;

    private protected override ImmutableArray<(double X, double Y)> Layout(ImmutableArray<InsertProblem>.Builder problems)
    {
        if (Count is < 1 or > MaxContacts)
            problems.Add(new($"A strip has 1 to {MaxContacts} contacts, not {Count}.", "Count the contacts on the strip."));
        CheckLength(PitchMm, "pitch", problems);
        if (problems.Count > 0) return [];
        return [.. Enumerable.Range(0, Count).Select(i => FromFace(OnFace, (i - ((Count - 1) / 2.0)) * PitchMm, 0))];
    }

    private protected override string ConventionFor(string first)
    {
        var assumed = Face is null ? "; face assumed, not stated" : "";
        return $"{first} at the left, then to the right, on the {OnFace.Words()}, key up{assumed}";
    }
}
