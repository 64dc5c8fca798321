using System.Collections.Immutable;

namespace Schematic.Inserts;

/// <summary>
/// Rows of contacts, each numbered from the same side, row after row from the top: D-subminiature and its like.
/// </summary>
/// <param name="Rows">Contacts of each row, from the top.</param>
public sealed record RowsInsert(ImmutableArray<int> Rows) : InsertBuilder
{
    /// <summary>Distance of neighbours in a row, in millimetres.</summary>
    public double PitchMm { get; init; } = 2.77;

    /// <summary>Distance of neighbouring rows, in millimetres.</summary>
    public double GapMm { get; init; } = 2.84;

    /// <summary>
    /// Whether each row stands half a pitch beside the row above: rows are centred, and a row that would stand straight below
    /// the one above is shifted half a pitch, right and left in turn. Otherwise all rows begin flush with the first.
    /// </summary>
    public bool IsStaggered { get; init; }

    /// <summary>The face on which the numbers run from left to right; null when not stated (then the front of the pins).</summary>
    public FaceView? Face { get; init; }

    /// <inheritdoc/>
    protected override string Family => "rows";

    /// <inheritdoc/>
    protected override InsertOutline UsualOutline => InsertOutline.DShape;

    private FaceView OnFace => Face ?? FaceView.FrontOfPins;

    private protected override ImmutableArray<(double X, double Y)> Layout(ImmutableArray<InsertProblem>.Builder problems)
    {
        if (Rows.IsEmpty || Rows.Any(r => r < 1) || Rows.Sum(r => (long)r) > MaxContacts)
            problems.Add(new($"Rows hold 1 to {MaxContacts} contacts, each row at least one.", "Count the contacts of each row."));
        CheckLength(PitchMm, "pitch", problems);
        CheckLength(GapMm, "gap", problems);
        if (problems.Count > 0) return [];
        var places = ImmutableArray.CreateBuilder<(double X, double Y)>();
        var starts = RowStarts();
        for (var r = 0; r < Rows.Length; r++)
        {
            var y = (((Rows.Length - 1) / 2.0) - r) * GapMm;
            for (var i = 0; i < Rows[r]; i++) places.Add(FromFace(OnFace, (i + starts[r]) * PitchMm, y));
        }

        return places.ToImmutable();
    }

    private protected override string ConventionFor(string first)
    {
        var assumed = Face is null ? "; face assumed, not stated" : "";
        return $"{first} at the upper left, every row from left to right, on the {OnFace.Words()} with row 1 up{assumed}";
    }

    /// <summary>Where each row begins, in pitches from the middle of the whole.</summary>
    private double[] RowStarts()
    {
        var starts = new double[Rows.Length];
        var shift = 0.5;
        for (var r = 0; IsStaggered && r < Rows.Length; r++)
        {
            starts[r] = -(Rows[r] - 1) / 2.0;
            if (r == 0 || (starts[r] - starts[r - 1]) % 1 != 0) continue;
            starts[r] += shift;
            shift = -shift;
        }

        var middle = (starts.Min() + Rows.Zip(starts, (n, s) => s + n - 1).Max()) / 2;
        return [.. starts.Select(s => s - middle)];
    }
}
