using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using Schematic.Drawing;
using Schematic.Fonts;

namespace Schematic.Rendering;

/// <summary>
/// Writes a sheet as SVG. One user unit is a millimetre. Text stays text, lettered in a typeface that the file carries itself.
/// Marks that follow one another with the same role and owner form a group with <c>data-role</c> and <c>data-owner</c>.
/// </summary>
public static class SvgWriter
{
    /// <summary>The SVG document of a sheet: the same text for the same sheet on every machine.</summary>
    public static string Write(Sheet sheet)
    {
        var output = new StringBuilder(64 * 1024);
        WriteHead(output, sheet);
        SheetFonts.AppendStyle(output, sheet.Marks.OfType<TextMark>());
        WriteMarks(output, sheet.Marks, namesThings: false);
        return output.Append("</svg>\n").ToString();
    }

    private static void WriteHead(StringBuilder output, Sheet sheet)
    {
        output.Append("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"")
            .AppendMm(sheet.Size.WidthMm).Append("mm\" height=\"").AppendMm(sheet.Size.HeightMm)
            .Append("mm\" viewBox=\"0 0 ").AppendMm(sheet.Size.WidthMm).Append(' ').AppendMm(sheet.Size.HeightMm)
            .Append("\" font-family=\"").Append(SheetFonts.Family)
            .Append("\" font-variant-ligatures=\"none\" fill=\"none\" stroke-linecap=\"round\" stroke-linejoin=\"round\">\n<title>")
            .AppendEscaped(sheet.Title).Append("</title>\n<rect width=\"").AppendMm(sheet.Size.WidthMm)
            .Append("\" height=\"").AppendMm(sheet.Size.HeightMm).Append("\" fill=\"#fff\"/>\n");
    }

    /// <summary>
    /// Marks as an SVG element that stands in a page: without a typeface, which the page has, and without ground. Groups name the
    /// thing that their marks show as well (<c>data-thing</c>, the kind, a blank and the name).
    /// </summary>
    /// <param name="marks">The marks.</param>
    /// <param name="size">Width and height in millimetres.</param>
    /// <param name="name">What the picture is called, for those who do not see it.</param>
    internal static string WritePart(ImmutableArray<Mark> marks, (double WidthMm, double HeightMm) size, string name)
    {
        var output = new StringBuilder(64 * 1024);
        output.Append("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 ").AppendMm(size.WidthMm).Append(' ').AppendMm(size.HeightMm)
            .Append("\" role=\"group\" aria-label=\"").AppendEscaped(name)
            .Append("\" fill=\"none\" stroke-linecap=\"round\" stroke-linejoin=\"round\">\n");
        WriteMarks(output, marks, namesThings: true);
        return output.Append("</svg>\n").ToString();
    }

    private static void WriteMarks(StringBuilder output, ImmutableArray<Mark> marks, bool namesThings)
    {
        (MarkRole Role, string? Owner, Thing? Subject, DrawnPole? Pole)? group = null;
        foreach (var mark in marks)
        {
            var key = (mark.Role, mark.Owner, Subject: namesThings ? mark.Subject : null, Pole: namesThings ? mark.Pole : null);
            if (group != key)
            {
                if (group is not null) output.Append("</g>\n");
                group = key;
                output.Append("<g data-role=\"").Append(RoleName(mark.Role));
                if (mark.Owner is not null) output.Append("\" data-owner=\"").AppendEscaped(mark.Owner);
                if (key.Subject is { } thing) output.Append("\" data-thing=\"").Append(KindName(thing.Kind)).Append(' ').AppendEscaped(thing.Name);
                if (key.Pole is { } pole) AppendPole(output, pole);
                output.Append("\">\n");
            }

            WriteMark(output, mark);
        }

        if (group is not null) output.Append("</g>\n");
    }

    /// <summary>The common, and each throw with its place: <c>S1:2 10 -2.5</c>.</summary>
    private static void AppendPole(StringBuilder output, DrawnPole pole)
    {
        output.Append("\" data-pole=\"").AppendEscaped(pole.Common).Append("\" data-throws=\"");
        foreach (var way in pole.Throws)
            output.AppendEscaped(way.Terminal).Append(' ').AppendMm(way.At.X).Append(' ').AppendMm(way.At.Y).Append(';');
    }

    private static void WriteMark(StringBuilder output, Mark mark)
    {
        _ = mark switch
        {
            LineMark line => WriteLine(output, line),
            CircleMark circle => WriteCircle(output, circle),
            ArcMark arc => WriteArc(output, arc),
            TextMark text => WriteText(output, text),
            _ => throw new ArgumentOutOfRangeException(nameof(mark)),
        };
    }

    private static StringBuilder WriteLine(StringBuilder output, LineMark line)
    {
        output.Append("<path d=\"M");
        for (var i = 0; i < line.Points.Length; i++)
        {
            if (i > 0) output.Append('L');
            output.AppendMm(line.Points[i].X).Append(' ').AppendMm(line.Points[i].Y);
        }

        return output.Append(line.IsClosed ? "Z\"" : "\"").AppendPaint(line.Pen, line.Fill).Append("/>\n");
    }

    private static StringBuilder WriteCircle(StringBuilder output, CircleMark circle) => output
        .Append("<circle cx=\"").AppendMm(circle.Centre.X).Append("\" cy=\"").AppendMm(circle.Centre.Y)
        .Append("\" r=\"").AppendMm(circle.RadiusMm).Append('"').AppendPaint(circle.Pen, circle.Fill).Append("/>\n");

    private static StringBuilder WriteArc(StringBuilder output, ArcMark arc) => output
        .Append("<path d=\"M").AppendMm(arc.Start.X).Append(' ').AppendMm(arc.Start.Y)
        .Append('A').AppendMm(arc.RadiusMm).Append(' ').AppendMm(arc.RadiusMm).Append(" 0 ")
        .Append(Math.Abs(arc.SweepDegrees) > 180 ? '1' : '0').Append(' ').Append(arc.SweepDegrees > 0 ? '1' : '0')
        .Append(' ').AppendMm(arc.End.X).Append(' ').AppendMm(arc.End.Y).Append('"').AppendPaint(arc.Pen, null).Append("/>\n");

    private static StringBuilder WriteText(StringBuilder output, TextMark text)
    {
        output.Append("<text x=\"").AppendMm(text.Anchor.X).Append("\" y=\"").AppendMm(text.Anchor.Y)
            .Append("\" font-size=\"").AppendMm(Lettering.FontSizeMm(text.HeightMm))
            .Append("\" fill=\"").AppendInk(text.Ink).Append('"');
        if (text.IsBold) output.Append(" font-weight=\"600\"");
        if (text.Align == TextAlign.Middle) output.Append(" text-anchor=\"middle\"");
        if (text.Align == TextAlign.End) output.Append(" text-anchor=\"end\"");
        if (text.IsVertical)
        {
            output.Append(" transform=\"rotate(-90 ").AppendMm(text.Anchor.X).Append(' ').AppendMm(text.Anchor.Y).Append(")\"");
        }

        if (!Lettering.Covers(text.Text, text.IsBold))
        {
            // A viewer takes such letters from a face of its own; the line keeps the width that it was laid out with.
            output.Append(" textLength=\"").AppendMm(text.WidthMm).Append("\" lengthAdjust=\"spacingAndGlyphs\"");
        }

        return output.Append('>').AppendEscaped(text.Text).Append("</text>\n");
    }

    private static StringBuilder AppendPaint(this StringBuilder output, Pen? pen, Ink? fill)
    {
        if (fill is { } ink) output.Append(" fill=\"").AppendInk(ink).Append('"');
        if (pen is null) return output;
        output.Append(" stroke=\"").AppendInk(pen.Ink).Append("\" stroke-width=\"").AppendMm(pen.WidthMm).Append('"');
        return DashesOf(pen.Kind) is { } dashes ? output.Append(" stroke-dasharray=\"").Append(dashes).Append('"') : output;
    }

    /// <summary>Lengths in millimetres. With round ends a stroke of nearly nothing is a dot.</summary>
    private static string? DashesOf(LineKind kind) => kind switch
    {
        LineKind.Dashed => "1.6 1.1",
        LineKind.DashDot => "5 1.2 0.01 1.2",
        LineKind.Dotted => "0.01 0.9",
        _ => null,
    };

    private static string RoleName(MarkRole role) => role switch
    {
        MarkRole.TitleBlock => "title-block",
        MarkRole.GuideLine => "guide-line",
        _ => role.ToString().ToLowerInvariant(),
    };

    private static string KindName(ThingKind kind) => kind.ToString().ToLowerInvariant();

    private static StringBuilder AppendInk(this StringBuilder output, Ink ink) =>
        output.Append(CultureInfo.InvariantCulture, $"#{ink.Red:x2}{ink.Green:x2}{ink.Blue:x2}");

    /// <summary>Thousandths of a millimetre, without trailing zeros and without a negative zero.</summary>
    private static StringBuilder AppendMm(this StringBuilder output, double value)
    {
        var rounded = Math.Round(value, 3, MidpointRounding.AwayFromZero);
        return output.Append((rounded == 0 ? 0 : rounded).ToString("0.###", CultureInfo.InvariantCulture));
    }
}
