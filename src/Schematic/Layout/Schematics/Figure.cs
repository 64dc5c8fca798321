using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Model;
using Schematic.Symbols;

namespace Schematic.Layout.Schematics;

/// <summary>One end of a figure: a device terminal, the symbol's port for it and the words above its lead.</summary>
internal sealed record FigureEnd(TerminalId Terminal, string Port, bool IsRight, string Label);

/// <summary>
/// A device, or one contact set of a device, as a row of the drawing: its symbol between two leads, its name above the left
/// lead (poles: above the common's), its data above the other.
/// </summary>
internal sealed class Figure(Part part, Symbol symbol, string widestPlace, ImmutableArray<FigureEnd> ends)
{
    private const double LeadBlank = 1.5;

    public Part Part { get; } = part;

    public Symbol Symbol { get; } = symbol;

    public ImmutableArray<FigureEnd> Ends { get; } = ends;

    /// <summary>Ratings and the like, above the lead opposite the name.</summary>
    public string Value { get; init; } = "";

    /// <summary>What stands above the name's lead.</summary>
    public string Name { get; init; } = part.Designator;

    /// <summary>Quiet words below the lead opposite the name.</summary>
    public string Remark { get; init; } = "";

    /// <summary>Texts below the lead opposite the name that name other places: contacts of a coil.</summary>
    public ImmutableArray<(string Words, string PlaceKey)> Contacts { get; init; } = [];

    /// <summary>The place named below the name's lead, or null: the coil of a contact.</summary>
    public (string Words, string PlaceKey)? Coil { get; init; }

    /// <summary>The key under which the figure's own place is noted, or null.</summary>
    public string? PlaceKey { get; init; }

    public bool IsPole => Ends.Length != 2 || Symbol.Kind is SymbolKind.MakeContact or SymbolKind.BreakContact
        or SymbolKind.ChangeoverContact or SymbolKind.RotaryContact;

    /// <summary>The x of the blade's middle within the symbol: where a linkage meets it.</summary>
    public static double LinkageX => 5;

    public double Above()
    {
        var top = Math.Max(-Symbol.Bounds.Top, PortSpan(-1) + Metrics.RowAbove);
        return top;
    }

    public double Below(Facing facing)
    {
        return facing is Facing.HairpinLeft or Facing.HairpinRight ? HairpinDepth + Metrics.RowBelow : OwnBelow;
    }

    private double OwnBelow
    {
        get
        {
            var below = Math.Max(Symbol.Bounds.Bottom + 0.5, PortSpan(1) + Metrics.RowBelow);
            return RemarkLines > 0 ? Math.Max(below, 0.6 + (RemarkLines * LineStep)) : below;
        }
    }

    /// <summary>How far below the row the turned-back end comes out, clear of everything under the symbol.</summary>
    private double HairpinDepth => Metrics.Up(Math.Max(Metrics.RowPitch, OwnBelow + 0.3));

    private static double LineStep => 2.7;

    private int RemarkLines => Math.Max(Contacts.Length + (Remark.Length > 0 ? 1 : 0), Coil is not null ? 1 : 0);

    private double PortSpan(int sign) => Symbol.Ports.Max(p => sign * p.At.Y);

    /// <summary>Height of end <paramref name="end"/> against the figure's row.</summary>
    public double DyOf(FigureEnd end, Facing facing)
    {
        if (facing is Facing.HairpinRight) return end.IsRight ? 0 : HairpinDepth;
        if (facing is Facing.HairpinLeft) return end.IsRight ? HairpinDepth : 0;
        return Symbol.Port(end.Port).At.Y;
    }

    /// <summary>Least length of the left and right leads.</summary>
    public (double Left, double Right) Leads(Facing facing)
    {
        var name = Lettering.WidthMm(Name, Metrics.NameHeight) + LeadBlank;
        if (Coil is { } coil) name = Math.Max(name, Quiet(coil.Words + " " + widestPlace) + LeadBlank);
        var other = Math.Max(Quiet(Value), Quiet(Remark));
        foreach (var end in Ends) other = Math.Max(other, Quiet(end.Label));
        foreach (var contact in Contacts) other = Math.Max(other, Quiet(contact.Words + " " + widestPlace));
        other = Math.Max(2.5, other + LeadBlank);
        return NameIsRight(facing) ? (other, name) : (name, other);
    }

    /// <summary>Length of the symbol from port to port.</summary>
    public double SymbolWidth => Symbol.Ports.Max(p => p.At.X);

    public double Width(Facing facing)
    {
        var (left, right) = Leads(facing);
        return left + SymbolWidth + right;
    }

    /// <summary>Draws the figure between two column edges, its symbol <paramref name="leftLead"/> from the left.</summary>
    public void Draw(Canvas canvas, double left, double right, double leftLead, double y, Facing facing)
    {
        var mirrored = IsDrawnMirrored(facing);
        var shown = mirrored ? Symbol.Mirrored() : Symbol;
        var origin = new PointMm(mirrored ? left + leftLead + SymbolWidth : left + leftLead, y);
        canvas.Add(shown.PlacedAt(origin, Part.Designator));
        foreach (var end in Ends) DrawLead(canvas, end, shown.Port(end.Port).At.Moved(origin.X, origin.Y), left, right, facing);
        DrawTexts(canvas, left, right, left + leftLead, y, facing);
    }

    private static bool IsDrawnMirrored(Facing facing) => facing is Facing.Mirrored;

    private bool NameIsRight(Facing facing) => IsPole && facing == Facing.Mirrored;

    private void DrawLead(Canvas canvas, FigureEnd end, PointMm port, double left, double right, Facing facing)
    {
        var owner = end.Terminal.ToString();
        var isRight = end.IsRight != IsDrawnMirrored(facing);
        if (facing == Facing.HairpinRight && !isRight)
        {
            var low = port.Y + HairpinDepth;
            canvas.Wire(owner, port, new(left, port.Y), new(left, low), new(right, low));
        }
        else if (facing == Facing.HairpinLeft && isRight)
        {
            var low = port.Y + HairpinDepth;
            canvas.Wire(owner, port, new(right, port.Y), new(right, low), new(left, low));
        }
        else
        {
            canvas.Wire(owner, port, new(isRight ? right : left, port.Y));
        }
    }

    private void DrawTexts(Canvas canvas, double left, double right, double symbolLeft, double y, Facing facing)
    {
        var nameRight = NameIsRight(facing);
        var symbolRight = symbolLeft + SymbolWidth;
        var nameX = nameRight ? symbolRight + 0.75 : symbolLeft - 0.75;
        var nameAlign = nameRight ? TextAlign.Start : TextAlign.End;
        var otherX = nameRight ? symbolLeft - 0.75 : symbolRight + 0.75;
        var otherAlign = nameRight ? TextAlign.End : TextAlign.Start;
        var owner = Part.Designator;
        canvas.Text(owner, Name, nameX, y - Metrics.Rise, align: nameAlign);
        canvas.Text(owner, Value, otherX, y - Metrics.Rise, Metrics.QuietHeight, otherAlign);
        canvas.Text(owner, Remark, otherX, y + LineStep - 0.1, Metrics.QuietHeight, otherAlign);
        foreach (var end in Ends)
        {
            canvas.Text(owner, end.Label, otherX, y + DyOf(end, Facing.Normal) - Metrics.Rise, Metrics.QuietHeight, otherAlign);
        }

        if (Coil is { } coil)
            canvas.LateText(owner, p => $"{coil.Words} {p.Of(coil.PlaceKey)}", nameX, y + LineStep - 0.1, Metrics.QuietHeight, nameAlign);
        for (var i = 0; i < Contacts.Length; i++)
        {
            var contact = Contacts[i];
            canvas.LateText(
                owner, p => $"{contact.Words} {p.Of(contact.PlaceKey)}", otherX, y + ((i + 1 + (Remark.Length > 0 ? 1 : 0)) * LineStep) - 0.1,
                Metrics.QuietHeight, otherAlign);
        }
    }

    private static double Quiet(string text) => text.Length == 0 ? 0 : Lettering.WidthMm(text, Metrics.QuietHeight);
}
