using Schematic.Drawing;
using Schematic.Layout.Shapes;

namespace Schematic.Layout.Wirings;

/// <summary>Stands for a thing that is larger than the sheet: a finding says so too.</summary>
internal sealed record PlaceHolderShape(Piece Piece, int Units, double WidthMm, Heading Heading)
    : Shape(Piece, Units, WidthMm, [])
{
    public static PlaceHolderShape Measure(Piece piece)
    {
        var heading = Heading.Of(piece.Equipment.Name, ["larger than the sheet:", "not drawn"], 0);
        return new PlaceHolderShape(piece, Metrics.Units(heading.HeightMm) + 1, heading.WidthMm, heading);
    }

    public override bool Stretches => false;

    protected override void DrawBody(Canvas canvas, BoxMm box)
    {
        canvas.Box(Piece.Equipment.Name, box, Pen.Wide);
        Heading.Draw(canvas, Piece.Equipment.Name, box.Left, box.Top);
    }
}
