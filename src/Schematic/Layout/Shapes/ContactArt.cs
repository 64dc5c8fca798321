using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Model;
using Schematic.Symbols;

namespace Schematic.Layout.Shapes;

/// <summary>Draws one half of a connector's contact on the line where two halves meet, with its name above its lead.</summary>
internal sealed class ContactArt(SymbolLibrary symbols)
{
    /// <summary>Length of a contact's symbol without a name.</summary>
    public const double BareWidth = 5.5;

    private const double LabelBlank = 1.2;
    private const double SlimHalf = 0.6;

    /// <summary>Length of lead that the symbol and the name need.</summary>
    public double Width(Connector connector, string name) => Math.Max(BareWidth,
        Lettering.WidthMm(name, Metrics.NameHeight) + LabelBlank + LabelStart(connector));

    /// <summary>How far from the mating line the name begins: clear of a symbol's wide mouth.</summary>
    public double LabelStart(Connector connector) => SymbolOf(connector).Bounds.Top < -SlimHalf ? 2.2 : 1;

    /// <summary>
    /// Draws a half from the mating line <paramref name="line"/> to <paramref name="end"/>; its name above it where
    /// <paramref name="name"/> is not empty.
    /// </summary>
    public void Draw(Canvas canvas, Connector connector, TerminalId contact, double line, double end, double y, string name)
    {
        var way = Math.Sign(end - line);
        var symbol = SymbolOf(connector);
        var reach = symbol.Bounds.Right;
        var owner = contact.ToString();
        canvas.Add((way > 0 ? symbol.Mirrored() : symbol).PlacedAt(new PointMm(line + (way * reach), y), owner));
        canvas.Wire(owner, new(line + (way * reach), y), new PointMm(end, y));
        canvas.Text(
            owner, name, line + (way * LabelStart(connector)), y - Metrics.Rise, align: way > 0 ? TextAlign.Start : TextAlign.End);
    }

    private Symbol SymbolOf(Connector connector) =>
        symbols.Get(connector.Gender == Gender.Sockets ? SymbolKind.Socket : SymbolKind.Pin);
}
