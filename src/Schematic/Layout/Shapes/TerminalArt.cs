using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Model;

namespace Schematic.Layout.Shapes;

/// <summary>
/// Terminals as they are met with an iron: a cell with the terminal's name, as high as the wires on it need. Two wires on one
/// terminal both end on its cell.
/// </summary>
internal static class TerminalArt
{
    /// <summary>Half the height of one row of a cell.</summary>
    public const double HalfRow = Metrics.Row * Metrics.Unit / 2;

    /// <summary>Width of the bar that several wires on one contact end on.</summary>
    public const double SlotWidth = 1.6;

    private const double Blank = 1.2;

    /// <summary>Least width of a cell that holds the name.</summary>
    public static double CellWidth(string name) => Math.Max(5, Lettering.WidthMm(name, Metrics.NameHeight) + (2 * Blank));

    /// <summary>Draws a cell whose name stands at <paramref name="nameAlign"/>.</summary>
    public static void DrawCell(Canvas canvas, TerminalId terminal, string name, BoxMm box, TextAlign nameAlign = TextAlign.Middle)
    {
        var owner = terminal.ToString();
        canvas.Box(owner, box, Pen.Narrow);
        var x = nameAlign switch { TextAlign.Start => box.Left + Blank, TextAlign.Middle => box.Centre.X, _ => box.Right - Blank };
        canvas.Text(owner, name, x, box.Centre.Y + (Metrics.NameHeight / 2), align: nameAlign);
        canvas.Place(Thing.Terminal(owner), box);
    }

    /// <summary>Draws the bar at the outer end of a contact's lead; <paramref name="rows"/> wires end on it.</summary>
    public static void DrawSlot(Canvas canvas, string owner, double x, Side side, double firstY, int rows)
    {
        var far = x - (side.Way() * SlotWidth);
        canvas.Box(
            owner,
            new BoxMm(Math.Min(x, far), firstY - 0.9, Math.Max(x, far), firstY + ((rows - 1) * Metrics.Row * Metrics.Unit) + 0.9),
            Pen.Wide);
    }
}
