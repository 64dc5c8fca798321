using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Reports;

namespace Schematic.Layout.Faces;

/// <summary>The circle that stands for one contact on an enlarged face, with its number and colour letters inside.</summary>
internal static class ContactBubble
{
    /// <summary>White room between lettering and circle.</summary>
    private const double PaddingMm = 0.25;

    /// <summary>Short strokes outside the rim tell the second colour's half on a black and white print; this share of the radius long.</summary>
    private const double TickShare = 0.1;

    /// <summary>The smallest radius that holds the lettering of one contact.</summary>
    public static double NeededRadiusMm(ContactUse use, FaceLettering lettering)
    {
        if (lettering.NumberMm == 0) return 0.9;
        var code = CodeOf(use, lettering);
        var (top, bottom) = Reach(use, lettering);
        var number = Math.Sqrt(Square(NumberWidth(use, lettering) / 2) + Square(top));
        var letters = code.Length == 0 ? 0 : Math.Sqrt(Square(Lettering.WidthMm(code, lettering.CodeMm) / 2) + Square(bottom));
        var inner = Math.Max(number, letters) + PaddingMm;
        return Math.Max(inner, lettering.NumberMm * 1.15);
    }

    /// <summary>The marks of one contact around <paramref name="centre"/>.</summary>
    public static IEnumerable<Mark> Draw(
        ContactUse use, PointMm centre, double radius, FaceLettering lettering, bool emphasised, string owner)
    {
        var colour = use.Wires.Select(w => w.Colour).FirstOrDefault(c => c is not null);
        var ground = colour is null ? Ink.White : WireInk.Of(colour.Main);
        var tracer = colour is null ? null : WireInk.TracerOf(colour);
        // What is not traced is never to be taken for a contact without use: its rim is broken.
        var rim = new Pen(emphasised ? 0.5 : 0.25, use.IsNotTraced ? LineKind.Dashed : LineKind.Solid);
        yield return new CircleMark(MarkRole.Face, centre, radius, tracer is null ? rim : null) { Fill = ground, Owner = owner };
        var inner = radius - PaddingMm;
        if (tracer is { } second)
        {
            foreach (var mark in Split(centre, radius, SplitBelow(use, lettering, inner), second, owner)) yield return mark;
            yield return new CircleMark(MarkRole.Face, centre, radius, rim) { Owner = owner };
        }

        if (use.IsSpare)
        {
            foreach (var tick in SpareTicks(centre, radius, owner)) yield return tick;
        }

        foreach (var text in Letters(use, centre, inner, lettering, emphasised, (WireInk.LettersOn(ground), WireInk.LettersOn(tracer ?? ground)), owner)) yield return text;
    }

    /// <summary>How far below the middle the second colour begins: between the number and the colour's letters.</summary>
    private static double SplitBelow(ContactUse use, FaceLettering lettering, double inner)
    {
        if (lettering.NumberMm == 0) return 0;
        if (CodeOf(use, lettering).Length == 0) return (lettering.NumberMm / 2) + 0.35;
        var (top, bottom) = Placed(use, lettering, inner);
        return (lettering.NumberMm - top + bottom - lettering.CodeMm) / 2;
    }

    /// <summary>The lower part of the circle in the second colour, with a line across and short strokes around it.</summary>
    private static IEnumerable<Mark> Split(PointMm centre, double radius, double below, Ink ink, string owner)
    {
        var y = Math.Clamp(below, -0.8 * radius, 0.8 * radius);
        var from = Math.Asin(y / radius);
        const int steps = 24;
        var arc = Enumerable.Range(0, steps + 1).Select(i => from + ((Math.PI - (2 * from)) * i / steps))
            .Select(t => centre.Moved(radius * Math.Cos(t), radius * Math.Sin(t)));
        yield return new LineMark(MarkRole.Face, [.. arc], new Pen(0.25)) { IsClosed = true, Fill = ink, Owner = owner };
        const int strokes = 5;
        for (var i = 1; i <= strokes; i++)
        {
            var t = from + ((Math.PI - (2 * from)) * i / (strokes + 1));
            var outer = radius * (1 + TickShare);
            yield return LineMark.Between(
                MarkRole.Face, centre.Moved(radius * Math.Cos(t), radius * Math.Sin(t)), centre.Moved(outer * Math.Cos(t), outer * Math.Sin(t)), new Pen(0.35)) with
            {
                Owner = owner,
            };
        }
    }

    /// <summary>The arms of a cross that stick out of the circle: the middle is left to the number.</summary>
    public static IEnumerable<Mark> SpareTicks(PointMm centre, double radius, string? owner)
    {
        foreach (var (sx, sy) in new[] { (1, 1), (1, -1), (-1, 1), (-1, -1) })
        {
            var (inner, outer) = (radius * 0.84 * Math.Sqrt(0.5), radius * 1.16 * Math.Sqrt(0.5));
            yield return LineMark.Between(
                MarkRole.Face,
                centre.Moved(sx * inner, sy * inner),
                centre.Moved(sx * outer, sy * outer),
                new Pen(0.35)) with { Owner = owner };
        }
    }

    private static IEnumerable<Mark> Letters(
        ContactUse use, PointMm centre, double inner, FaceLettering lettering, bool emphasised, (Ink Number, Ink Code) inks, string owner)
    {
        if (lettering.NumberMm == 0) yield break;
        var code = CodeOf(use, lettering);
        var (top, bottom) = Placed(use, lettering, inner);
        yield return new TextMark(
            MarkRole.Label, use.Contact, centre.Moved(0, lettering.NumberMm - top), lettering.NumberMm)
        {
            Align = TextAlign.Middle, IsBold = emphasised, Ink = inks.Number, Owner = owner,
        };
        if (code.Length == 0) yield break;
        yield return new TextMark(MarkRole.Label, code, centre.Moved(0, bottom), lettering.CodeMm)
        {
            Align = TextAlign.Middle, Ink = inks.Code, Owner = owner,
        };
    }

    /// <summary>
    /// How far the lettering reaches above and below the circle's middle: two lines are shifted so that the wider one comes
    /// nearer to the middle, where the circle is widest.
    /// </summary>
    private static (double Top, double Bottom) Reach(ContactUse use, FaceLettering lettering)
    {
        var code = CodeOf(use, lettering);
        if (code.Length == 0) return (lettering.NumberMm / 2, lettering.NumberMm / 2);
        var height = lettering.NumberMm + lettering.GapBelow(use.Contact) + lettering.CodeMm;
        var (upper, lower) = (NumberWidth(use, lettering) / 2, Lettering.WidthMm(code, lettering.CodeMm) / 2);
        // The radius is least where both outer corners lie equally far out.
        var top = ((Square(lower) - Square(upper)) / (2 * height)) + (height / 2);
        top = Math.Clamp(top, lettering.NumberMm / 2, height - (lettering.CodeMm / 2));
        return (top, height - top);
    }

    /// <summary>The two lines around the middle, shifted up no more than the wider lower line asks for.</summary>
    private static (double Top, double Bottom) Placed(ContactUse use, FaceLettering lettering, double inner)
    {
        var (top, bottom) = Reach(use, lettering);
        var code = CodeOf(use, lettering);
        if (code.Length == 0) return (top, bottom);
        var room = Math.Sqrt(Math.Max(0, Square(inner) - Square(Lettering.WidthMm(code, lettering.CodeMm) / 2)));
        var lowest = Math.Clamp((top + bottom) / 2, bottom, Math.Max(bottom, room));
        return (top + bottom - lowest, lowest);
    }

    private static string CodeOf(ContactUse use, FaceLettering lettering) => lettering.CodeMm == 0 ? "" : use.ColourCodes;

    private static double NumberWidth(ContactUse use, FaceLettering lettering) =>
        Lettering.WidthMm(use.Contact, lettering.NumberMm, bold: true);

    private static double Square(double value) => value * value;
}
