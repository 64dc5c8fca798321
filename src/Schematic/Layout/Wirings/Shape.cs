using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Layout.Shapes;
using Schematic.Model;

namespace Schematic.Layout.Wirings;

/// <summary>A piece of equipment, measured: how large it is and where links meet it.</summary>
/// <param name="Piece">What it shows.</param>
/// <param name="Units">Its height in units.</param>
/// <param name="WidthMm">Its least width.</param>
/// <param name="Ports">Where links meet it, at its left and right edges.</param>
internal abstract record Shape(Piece Piece, int Units, double WidthMm, ImmutableArray<Port> Ports)
{
    /// <summary>Whether it grows with a wider column; else leads run from its edges to those of the column.</summary>
    public virtual bool Stretches => false;

    /// <summary>Draws it into a box that is at least as wide as it needs.</summary>
    public void Draw(Canvas canvas, BoxMm box)
    {
        if (Piece.Continuation is { } continuation)
        {
            canvas.Text(Piece.Equipment.Name, Piece.Words, box.Left, box.Top + 2.6);
            canvas.Reference(Piece.Equipment.Name, continuation, box.Left, box.Top + 6.2);
            canvas.Place(Piece.AsThing, box);
        }

        if (Piece.Number == 1)
        {
            // A device inside a unit stands where its own figure does.
            foreach (var part in Piece.Equipment.Parts.Where(p => Piece.Equipment is not UnitEquipment || p is Connector)) canvas.Place(Thing.Part(part.Designator), box);
        }

        DrawBody(canvas, box with { Top = box.Top + (Piece.HeadUnits * Metrics.Unit) });
    }

    /// <summary>Draws everything below the words of a continuation.</summary>
    protected abstract void DrawBody(Canvas canvas, BoxMm box);

    /// <summary>Width of the words above a piece.</summary>
    protected static double ContinuationWidth(Piece piece) =>
        piece.Continuation is { } words
            ? Math.Max(Lettering.WidthMm(piece.Words, Metrics.NameHeight), Lettering.WidthMm(words.WidestText, Metrics.NameHeight))
            : 0;
}
