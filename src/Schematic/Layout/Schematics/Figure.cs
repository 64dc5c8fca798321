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
internal sealed class Figure(Part part, Symbol symbol, ImmutableArray<FigureEnd> ends)
{
    private const double LeadBlank = 2;

    private (double Name, double Other)? _leads;
    private double? _uprightFront;

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
    public ImmutableArray<(string Words, Thing? Target)> Contacts { get; init; } = [];

    /// <summary>The place named below the name's lead, or null: the coil of a contact.</summary>
    public (string Words, Thing? Target)? Coil { get; init; }

    /// <summary>What the symbol is, as other sheets refer to it.</summary>
    public Thing Shows { get; init; } = Thing.Part(part.Designator);

    public bool IsPole => Ends.Length != 2 || Symbol.Kind is SymbolKind.MakeContact or SymbolKind.BreakContact
        or SymbolKind.ChangeoverContact or SymbolKind.RotaryContact;

    /// <summary>The x of the blade's middle within the symbol: where a linkage meets it.</summary>
    public static double LinkageX => 5;

    public double Above(Facing facing) =>
        IsHairpin(facing) ? Metrics.RowAbove : Math.Max(-Symbol.Bounds.Top, PortSpan(-1) + Metrics.RowAbove);

    public double Below(Facing facing) => IsHairpin(facing) ? HairpinDepth + Metrics.RowBelow : OwnBelow;

    /// <summary>Whether the device stands upright, both its ends leaving on one side.</summary>
    public static bool IsHairpin(Facing facing) => facing is Facing.HairpinLeft or Facing.HairpinRight;

    /// <summary>Room for the actuator beside an upright contact.</summary>
    public double ActuatorRoom { get; init; }

    private double OwnBelow
    {
        get
        {
            var below = Math.Max(Symbol.Bounds.Bottom + 0.15, PortSpan(1) + Metrics.RowBelow);
            return RemarkLines > 0 ? Math.Max(below, 0.6 + (RemarkLines * LineStep)) : below;
        }
    }

    /// <summary>How far below the upper end the lower one leaves an upright device.</summary>
    private double HairpinDepth => Metrics.Up(Math.Max(SymbolWidth, 4.5 + (UprightWords.Count() * LineStep)));

    /// <summary>Quiet lines beside an upright device, the last ones naming other places.</summary>
    private IEnumerable<(string Words, Thing? Target)> UprightWords =>
        new (string, Thing?)[] { (Value, null), (Remark, null), (Ends[^1].Label, null) }.Where(w => w.Item1.Length > 0)
            .Concat(Contacts).Concat(Coil is { } coil ? [coil] : []);

    private static double LineStep => 2.7;

    private int RemarkLines => Math.Max(Contacts.Length + (Remark.Length > 0 ? 1 : 0), Coil is not null ? 1 : 0);

    private double PortSpan(int sign) => Symbol.Ports.Max(p => sign * p.At.Y);

    /// <summary>Height of end <paramref name="end"/> against the figure's row.</summary>
    public double DyOf(FigureEnd end, Facing facing)
    {
        if (IsHairpin(facing)) return end.IsRight ? HairpinDepth : 0;
        return Symbol.Port(end.Port).At.Y;
    }

    /// <summary>Least length of the left and right leads.</summary>
    public (double Left, double Right) Leads(Facing facing)
    {
        _leads ??= MeasureLeads();
        var (name, other) = _leads.Value;
        if (IsHairpin(facing)) return facing == Facing.HairpinRight ? (UprightBack, UprightFront) : (UprightFront, UprightBack);
        return NameIsRight(facing) ? (other, name) : (name, other);
    }

    /// <summary>Room behind an upright device: its actuator.</summary>
    private double UprightBack => Symbol.Turned().Mirrored().Bounds.Right + 0.5 + ActuatorRoom;

    /// <summary>Room in front of an upright device: its name and data, between its leads.</summary>
    private double UprightFront => _uprightFront ??= Symbol.Turned().Bounds.Right + 1 + LeadBlank + Math.Max(
        Lettering.WidthMm(Name, Metrics.NameHeight),
        UprightWords.Select(w => Quiet(w.Target is null ? w.Words : w.Words + " " + PlaceReference.Widest)).DefaultIfEmpty(0).Max());

    /// <summary>Length between the leads.</summary>
    public double Span(Facing facing) => IsHairpin(facing) ? 0 : SymbolWidth;

    private (double Name, double Other) MeasureLeads()
    {
        var name = Lettering.WidthMm(Name, Metrics.NameHeight) + LeadBlank;
        if (Coil is { } coil) name = Math.Max(name, Quiet(coil.Words + " " + PlaceReference.Widest) + LeadBlank);
        var other = Math.Max(Quiet(Value), Quiet(Remark));
        foreach (var end in Ends) other = Math.Max(other, Quiet(end.Label));
        foreach (var contact in Contacts) other = Math.Max(other, Quiet(contact.Words + " " + PlaceReference.Widest));
        return (name, Math.Max(2.5, other + LeadBlank));
    }

    /// <summary>Length of the symbol from port to port.</summary>
    public double SymbolWidth => Symbol.Ports.Max(p => p.At.X);

    public double Width(Facing facing)
    {
        var (left, right) = Leads(facing);
        return left + Span(facing) + right;
    }

    /// <summary>Draws the figure between two column edges, its symbol <paramref name="leftLead"/> from the left.</summary>
    public void Draw(Canvas canvas, double left, double right, double leftLead, double y, Facing facing)
    {
        if (IsHairpin(facing))
        {
            DrawUpright(canvas, facing == Facing.HairpinRight ? right : left, left + leftLead, y, facing);
            return;
        }

        var mirrored = IsDrawnMirrored(facing);
        var shown = mirrored ? Symbol.Mirrored() : Symbol;
        var origin = new PointMm(mirrored ? left + leftLead + SymbolWidth : left + leftLead, y);
        canvas.Add(shown.PlacedAt(origin, Part.Designator));
        canvas.Place(Shows, shown.Bounds.Moved(origin.X, origin.Y));
        foreach (var end in Ends) DrawLead(canvas, end, shown.Port(end.Port).At.Moved(origin.X, origin.Y), left, right, facing);
        DrawTexts(canvas, left, right, left + leftLead, y, facing);
    }

    private static bool IsDrawnMirrored(Facing facing) => facing is Facing.Mirrored;

    private bool NameIsRight(Facing facing) => IsPole && facing == Facing.Mirrored;

    private static void DrawLead(Canvas canvas, FigureEnd end, PointMm port, double left, double right, Facing facing)
    {
        var owner = end.Terminal.ToString();
        var isRight = end.IsRight != IsDrawnMirrored(facing);
        canvas.Wire(owner, port, new(isRight ? right : left, port.Y));
    }

    /// <summary>The symbol turned a quarter, its leads to one side, the words between them.</summary>
    private void DrawUpright(Canvas canvas, double outer, double x, double y, Facing facing)
    {
        var way = facing == Facing.HairpinRight ? 1 : -1;
        var turned = way > 0 ? Symbol.Turned() : Symbol.Turned().Mirrored();
        canvas.Add(turned.PlacedAt(new PointMm(x, y), Part.Designator));
        canvas.Place(Shows, turned.Bounds.Moved(x, y));
        foreach (var end in Ends)
        {
            var port = turned.Port(end.Port).At.Moved(x, y);
            canvas.Wire(end.Terminal.ToString(), port, new(port.X, y + DyOf(end, facing)), new(outer, y + DyOf(end, facing)));
        }

        var textX = x + (way * (Symbol.Turned().Bounds.Right + 1));
        var align = way > 0 ? TextAlign.Start : TextAlign.End;
        canvas.Text(Part.Designator, Name, textX, y + 3.6, align: align);
        var line = 0;
        foreach (var (words, target) in UprightWords)
        {
            var at = y + 3.6 + (++line * LineStep);
            if (target is null) canvas.Text(Part.Designator, words, textX, at, Metrics.QuietHeight, align);
            else canvas.Reference(Part.Designator, Referring(words, target), textX, at, Metrics.QuietHeight, align);
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
            canvas.Reference(owner, Referring(coil.Words, coil.Target!), nameX, y + LineStep - 0.1, Metrics.QuietHeight, nameAlign);
        for (var i = 0; i < Contacts.Length; i++)
        {
            var contact = Contacts[i];
            canvas.Reference(
                owner, Referring(contact.Words, contact.Target!), otherX, y + ((i + 1 + (Remark.Length > 0 ? 1 : 0)) * LineStep) - 0.1,
                Metrics.QuietHeight, otherAlign);
        }
    }

    private static PlaceReference Referring(string words, Thing target) => new(target) { Before = words + " " };

    private static double Quiet(string text) => text.Length == 0 ? 0 : Lettering.WidthMm(text, Metrics.QuietHeight);
}
