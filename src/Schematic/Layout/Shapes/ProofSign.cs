using Schematic.Bench.Record;
using Schematic.Drawing;

namespace Schematic.Layout.Shapes;

/// <summary>
/// The sign beside a contact that tells how far it was proved with the meter. It is told by form and not by colour: a tick, a cross,
/// an empty box.
/// </summary>
internal static class ProofSign
{
    /// <summary>Half the height of a sign in a circuit, in millimetres: as high as lettering.</summary>
    public const double UsualMm = 1.25;

    /// <summary>Half the height of a sign on a face, in millimetres: as high as lettering.</summary>
    public const double FaceMm = 1.25;

    // The white ground is that much larger than the sign; on a face, where a number stands below, less.
    private const double Ground = 1.25;
    private const double FaceGround = 1.08;

    /// <summary>What the signs say, for the notes of a sheet that shows some.</summary>
    public const string Legend = "Beside contacts, from the bench record: tick, proved with the meter; cross, contradicted by a reading; empty box, not yet measured.";

    private static readonly Pen Stroke = new(0.35);

    /// <summary>The marks of one sign, on white ground.</summary>
    public static IEnumerable<Mark> Draw(ContactProof proof, PointMm centre, double half, MarkRole role, string? owner)
    {
        yield return new CircleMark(role, centre, half * (role == MarkRole.Face ? FaceGround : Ground), null) { Fill = Ink.White, Owner = owner };
        foreach (var mark in Strokes(proof, centre, half, role)) yield return mark with { Owner = owner };
    }

    /// <summary>Whether a mark of a circuit is the white ground of a sign: nothing else there is a white disc without a rim.</summary>
    public static bool IsGround(Mark mark) => mark is CircleMark { Pen: null } disc && disc.Fill == Ink.White;

    private static IEnumerable<Mark> Strokes(ContactProof proof, PointMm centre, double half, MarkRole role) => proof switch
    {
        ContactProof.Proved => [new LineMark(role, [centre.Moved(-half, 0), centre.Moved(-half / 3, half * 0.8), centre.Moved(half, -half)], Stroke)],
        ContactProof.Contradicted =>
        [
            LineMark.Between(role, centre.Moved(-half, -half), centre.Moved(half, half), Stroke),
            LineMark.Between(role, centre.Moved(-half, half), centre.Moved(half, -half), Stroke),
        ],
        ContactProof.NotMeasured =>
            [LineMark.Rectangle(role, new BoxMm(centre.X - (half * 0.8), centre.Y - (half * 0.8), centre.X + (half * 0.8), centre.Y + (half * 0.8)), Pen.Narrow)],
        _ => throw new InvalidOperationException("A proof without a sign."),
    };
}
