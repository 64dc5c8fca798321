using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Model;
using Schematic.Symbols;

namespace Schematic.Layout.Schematics;

/// <summary>Draws one half of a connector's contact on the line where two halves meet, with its name above its lead.</summary>
internal static class ContactArt
{
    private const double LabelBlank = 1.2;
    private const double SlimHalf = 0.6;

    /// <summary>Length of lead that the symbol and the name need.</summary>
    public static double Width(CircuitMap map, TerminalId contact) =>
        Lettering.WidthMm(contact.ToString(), Metrics.NameHeight) + LabelBlank + LabelStart(map, contact);

    /// <summary>How far from the mating line the name begins: clear of a symbol's wide mouth.</summary>
    public static double LabelStart(CircuitMap map, TerminalId contact) => SymbolOf(map, contact).Bounds.Top < -SlimHalf ? 2.2 : 1;

    /// <summary>Draws a half from the mating line <paramref name="line"/> to <paramref name="end"/>; <paramref name="way"/> is the sign of x.</summary>
    public static void Draw(Canvas canvas, CircuitMap map, TerminalId contact, double line, double end, double y, int way)
    {
        var symbol = SymbolOf(map, contact);
        var reach = symbol.Bounds.Right;
        var owner = contact.ToString();
        canvas.Add((way > 0 ? symbol.Mirrored() : symbol).PlacedAt(new PointMm(line + (way * reach), y), owner));
        canvas.Wire(owner, new(line + (way * reach), y), new PointMm(end, y));
        canvas.Text(
            owner, owner, line + (way * LabelStart(map, contact)), y - Metrics.Rise, align: way > 0 ? TextAlign.Start : TextAlign.End);
    }

    private static Symbol SymbolOf(CircuitMap map, TerminalId contact) =>
        map.Symbols.Get(map.Find(contact.Part) is Connector { Gender: Gender.Sockets } ? SymbolKind.Socket : SymbolKind.Pin);
}
