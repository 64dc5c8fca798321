using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Model;
using Schematic.Symbols;

namespace Schematic.Layout.Shapes;

/// <summary>One end of a figure: a device terminal, the symbol's port for it and the words above its lead.</summary>
internal sealed record FigureEnd(TerminalId Terminal, string Port, bool IsRight, string Label);

/// <summary>
/// A device, or one contact set of a device, by its symbol: lying in a row between two leads, or standing with all its ends on one
/// side.
/// </summary>
/// <param name="Part">The device.</param>
/// <param name="Symbol">Its symbol, lying, the common or first end on the left.</param>
/// <param name="Ends">Its terminals; the first one is the port at the symbol's origin.</param>
internal sealed record Figure(Part Part, Symbol Symbol, ImmutableArray<FigureEnd> Ends)
{
    // From the lead to the base line of the words below it, in millimetres.
    private const double RemarkLine = 3.3;

    /// <summary>What it is called: the designator, for a relay's contacts with the common terminal.</summary>
    public string Name { get; init; } = Part.Designator;

    /// <summary>Ratings and the like.</summary>
    public string Value { get; init; } = "";

    /// <summary>The user's words.</summary>
    public string Remark { get; init; } = "";

    /// <summary>Words that have room only where it stands upright: of a device with many leads.</summary>
    public ImmutableArray<string> WordsBelow { get; init; } = [];

    /// <summary>Whether it switches: an actuator or a coil moves it.</summary>
    public bool IsPole => Ends.Length != 2 || Symbol.Kind is SymbolKind.MakeContact or SymbolKind.BreakContact
        or SymbolKind.ChangeoverContact or SymbolKind.RotaryContact;

    /// <summary>The x of the blade's middle within the lying symbol: where a linkage meets it.</summary>
    public static double LinkageX => 5;

    /// <summary>Length of the symbol from its first port to the others.</summary>
    public double Length => Symbol.Ports.Max(p => p.At.X);

    /// <summary>How far an end of the lying symbol stands below its row, in units.</summary>
    public int OffsetOf(FigureEnd end) => (int)Math.Round(Symbol.Port(end.Port).At.Y / Metrics.Unit);

    /// <summary>Room above the row of the lying figure, its lettering included.</summary>
    public double Above => Math.Max(-Symbol.Bounds.Top, Symbol.Ports.Max(p => -p.At.Y) + 4);

    /// <summary>Room below the row of the lying figure.</summary>
    public double Below => Math.Max(
        Math.Max(Symbol.Bounds.Bottom + 0.3, Symbol.Ports.Max(p => p.At.Y) + 0.75), Remark.Length > 0 ? RemarkLine + (Metrics.QuietHeight * Lettering.DescentShare) + 0.2 : 0);

    /// <summary>Least length of the leads of the lying figure, on the left and on the right.</summary>
    public (double Left, double Right) Leads(bool isMirrored)
    {
        const double blank = 1.75;
        var name = Lettering.WidthMm(Name, Metrics.NameHeight) + blank;
        var other = Math.Max(Quiet(Value), Quiet(Remark));
        foreach (var end in Ends) other = Math.Max(other, Quiet(end.Label));
        other = Math.Max(2.5, other + blank);
        return NameIsRight(isMirrored) ? (other, name) : (name, other);
    }

    /// <summary>Whether the end stands on the right.</summary>
    public static bool IsRight(FigureEnd end, bool isMirrored) => end.IsRight != isMirrored;

    /// <summary>Draws it lying between two edges, its symbol beginning at <paramref name="symbolLeft"/>.</summary>
    public void DrawLying(Canvas canvas, double left, double right, double symbolLeft, double y, bool isMirrored)
    {
        var shown = isMirrored ? Symbol.Mirrored() : Symbol;
        var origin = new PointMm(isMirrored ? symbolLeft + Length : symbolLeft, y);
        canvas.Add(shown.PlacedAt(origin, Part.Designator, PoleIn(shown)));
        foreach (var end in Ends)
        {
            var port = shown.Port(end.Port).At.Moved(origin.X, origin.Y);
            canvas.Wire(end.Terminal.ToString(), port, new PointMm(IsRight(end, isMirrored) ? right : left, port.Y));
        }

        var nameRight = NameIsRight(isMirrored);
        var (nameX, nameAlign) = nameRight ? (symbolLeft + Length + 0.75, TextAlign.Start) : (symbolLeft - 0.75, TextAlign.End);
        var (otherX, otherAlign) = nameRight ? (symbolLeft - 0.75, TextAlign.End) : (symbolLeft + Length + 0.75, TextAlign.Start);
        canvas.Text(Part.Designator, Name, nameX, y - Metrics.Rise, align: nameAlign);
        canvas.Text(Part.Designator, Value, otherX, y - Metrics.Rise, Metrics.QuietHeight, otherAlign);
        canvas.Text(Part.Designator, Remark, otherX, y + RemarkLine, Metrics.QuietHeight, otherAlign, quiet: true);
        foreach (var end in Ends)
        {
            var dy = Symbol.Port(end.Port).At.Y;
            canvas.Text(Part.Designator, end.Label, otherX, y + dy - Metrics.Rise, Metrics.QuietHeight, otherAlign);
        }
    }

    /// <summary>The contact set that the symbol shows as it is drawn; null where it is none.</summary>
    public DrawnPole? PoleIn(Symbol shown) => !IsPole || Symbol.Kind is SymbolKind.Device or SymbolKind.Synchro ? null
        : shown.PoleOf(Ends[0].Terminal.ToString(), Ends.Skip(1).Select(e => (e.Terminal.ToString(), e.Port)));

    /// <summary>The box of the lying symbol.</summary>
    public BoxMm LyingBox(double symbolLeft, double y, bool isMirrored) => isMirrored
        ? Symbol.Mirrored().Bounds.Moved(symbolLeft + Length, y)
        : Symbol.Bounds.Moved(symbolLeft, y);

    private bool NameIsRight(bool isMirrored) => IsPole && isMirrored;

    private static double Quiet(string text) => text.Length == 0 ? 0 : Lettering.WidthMm(text, Metrics.QuietHeight);
}
