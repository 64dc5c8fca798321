using System.Collections.Immutable;

namespace Schematic.Inserts;

/// <summary>A rectangular grid of contacts: headers, card connectors.</summary>
/// <param name="Columns">Contacts along.</param>
/// <param name="Rows">Contacts across.</param>
public sealed record GridInsert(int Columns, int Rows) : InsertBuilder
{
    /// <summary>Distance of neighbours along, in millimetres.</summary>
    public double PitchMm { get; init; } = 2.54;

    /// <summary>Distance of neighbouring rows in millimetres; null: the pitch.</summary>
    public double? GapMm { get; init; }

    /// <summary>How the numbers run.</summary>
    public GridNumbering Numbering { get; init; }

    /// <summary>Where the first contact stands on <see cref="Face"/>, key up.</summary>
    public GridCorner From { get; init; }

    /// <summary>The face that the corner is meant for; null when not stated (then the front of the pins).</summary>
    public FaceView? Face { get; init; }

    /// <inheritdoc/>
    protected override string Family => "grid";

    /// <inheritdoc/>
    protected override InsertOutline UsualOutline => InsertOutline.Rectangular;

    private FaceView OnFace => Face ?? FaceView.FrontOfPins;

    private protected override ImmutableArray<(double X, double Y)> Layout(ImmutableArray<InsertProblem>.Builder problems)
    {
        if (Columns < 1 || Rows < 1 || (long)Columns * Rows > MaxContacts)
            problems.Add(new($"A grid holds 1 to {MaxContacts} contacts.", "Write the columns, then the rows: grid 5 by 2."));
        CheckLength(PitchMm, "pitch", problems);
        CheckLength(GapMm, "gap", problems);
        if (Rows != 2 && Numbering is GridNumbering.Zigzag or GridNumbering.Around)
        {
            problems.Add(new(
                $"Numbering {Words(Numbering)} needs two rows, and the grid has {Rows}.", "Use by-rows or by-columns."));
        }

        return problems.Count > 0 ? [] : [.. Cells().Select(c => Place(c.Column, c.Row))];
    }

    private protected override string ConventionFor(string first)
    {
        var corner = From switch
        {
            GridCorner.UpperLeft => "upper left",
            GridCorner.UpperRight => "upper right",
            GridCorner.LowerLeft => "lower left",
            _ => "lower right",
        };
        var assumed = Face is null ? "; face assumed, not stated" : "";
        return $"{first} at the {corner}, {Words(Numbering)}, on the {OnFace.Words()}, key up{assumed}";
    }

    private static string Words(GridNumbering numbering) => numbering switch
    {
        GridNumbering.ByRows => "by rows",
        GridNumbering.ByColumns => "by columns",
        GridNumbering.Zigzag => "zigzag",
        _ => "around",
    };

    /// <summary>The cells in the order of numbering, counted from the first contact's corner.</summary>
    private IEnumerable<(int Column, int Row)> Cells()
    {
        var columns = Enumerable.Range(0, Columns);
        var rows = Enumerable.Range(0, Rows);
        return Numbering switch
        {
            GridNumbering.ByRows => rows.SelectMany(r => columns.Select(c => (c, r))),
            GridNumbering.Around => columns.Select(c => (c, 0)).Concat(columns.Reverse().Select(c => (c, 1))),
            _ => columns.SelectMany(c => rows.Select(r => (c, r))),
        };
    }

    private (double X, double Y) Place(int column, int row)
    {
        var x = (column - ((Columns - 1) / 2.0)) * PitchMm;
        var y = (((Rows - 1) / 2.0) - row) * (GapMm ?? PitchMm);
        if (From is GridCorner.UpperRight or GridCorner.LowerRight) x = 0 - x;
        if (From is GridCorner.LowerLeft or GridCorner.LowerRight) y = 0 - y;
        return FromFace(OnFace, x, y);
    }
}
