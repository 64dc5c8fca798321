using System.Collections.Immutable;

namespace Schematic.Fonts;

/// <summary>
/// The outlines of letters as chains of short straight lines, for lettering that is drawn and not written: large stamps.
/// </summary>
public static class LetterOutlines
{
    private const int StepsPerCurve = 6;

    /// <summary>
    /// The contours of one line of text whose base line begins at (0, 0), in millimetres, y down; capitals are
    /// <paramref name="heightMm"/> high. Characters that the typeface composes of others are left blank.
    /// </summary>
    public static ImmutableArray<ImmutableArray<(double X, double Y)>> Of(string text, double heightMm, bool bold)
    {
        var font = FontFile.Of(bold);
        var scale = Lettering.FontSizeMm(heightMm) / font.UnitsPerEm;
        var contours = ImmutableArray.CreateBuilder<ImmutableArray<(double X, double Y)>>();
        var pen = 0;
        foreach (var rune in text.EnumerateRunes())
        {
            var glyph = font.GlyphOf(rune.Value);
            foreach (var contour in ContoursOf(font.OutlineOf(glyph)))
            {
                contours.Add([.. Flattened(contour).Select(p => ((p.X + pen) * scale, -p.Y * scale))]);
            }

            pen += font.AdvanceOf(glyph);
        }

        return contours.ToImmutable();
    }

    /// <summary>Reads a simple glyph (OpenType specification, glyf table): end points, flags, then x and y as differences.</summary>
    private static List<List<Node>> ContoursOf(ReadOnlySpan<byte> outline)
    {
        var contours = new List<List<Node>>();
        if (outline.Length == 0 || FontFile.I16(outline, 0) <= 0) return contours;
        var count = FontFile.I16(outline, 0);
        var points = FontFile.U16(outline, 10 + (2 * (count - 1))) + 1;
        var at = 12 + (2 * count) + FontFile.U16(outline, 10 + (2 * count));
        var flags = ReadFlags(outline, points, ref at);
        var xs = ReadDifferences(outline, flags, isShort: 0x02, isSameOrPositive: 0x10, ref at);
        var ys = ReadDifferences(outline, flags, isShort: 0x04, isSameOrPositive: 0x20, ref at);
        var first = 0;
        for (var c = 0; c < count; c++)
        {
            var last = FontFile.U16(outline, 10 + (2 * c));
            contours.Add([.. Enumerable.Range(first, last - first + 1).Select(i => new Node(xs[i], ys[i], (flags[i] & 1) != 0))]);
            first = last + 1;
        }

        return contours;
    }

    private static byte[] ReadFlags(ReadOnlySpan<byte> outline, int points, ref int at)
    {
        var flags = new byte[points];
        for (var i = 0; i < points;)
        {
            var flag = outline[at++];
            var repeats = (flag & 0x08) != 0 ? outline[at++] : 0;
            for (var r = 0; r <= repeats; r++) flags[i++] = flag;
        }

        return flags;
    }

    private static int[] ReadDifferences(ReadOnlySpan<byte> outline, byte[] flags, int isShort, int isSameOrPositive, ref int at)
    {
        var values = new int[flags.Length];
        var value = 0;
        for (var i = 0; i < flags.Length; i++)
        {
            var marked = (flags[i] & isSameOrPositive) != 0;
            if ((flags[i] & isShort) != 0)
            {
                value += marked ? outline[at] : -outline[at];
                at++;
            }
            else if (!marked)
            {
                value += FontFile.I16(outline, at);
                at += 2;
            }

            values[i] = value;
        }

        return values;
    }

    /// <summary>Replaces each quadratic curve by straight steps. Two control points in a row have a node midway between them.</summary>
    private static IEnumerable<(double X, double Y)> Flattened(List<Node> contour)
    {
        var start = contour.FindIndex(n => n.IsOnCurve);
        if (start < 0) yield break;
        var from = contour[start];
        for (var i = 1; i <= contour.Count; i++)
        {
            var node = contour[(start + i) % contour.Count];
            if (node.IsOnCurve)
            {
                yield return (node.X, node.Y);
                from = node;
                continue;
            }

            var next = contour[(start + i + 1) % contour.Count];
            var to = next.IsOnCurve ? next : new Node((node.X + next.X) / 2, (node.Y + next.Y) / 2, true);
            for (var s = 1; s <= StepsPerCurve; s++)
            {
                var t = (double)s / StepsPerCurve;
                yield return (Curve(from.X, node.X, to.X, t), Curve(from.Y, node.Y, to.Y, t));
            }

            from = to;
            if (next.IsOnCurve) i++;
        }
    }

    private static double Curve(double a, double control, double b, double t) =>
        ((1 - t) * (1 - t) * a) + (2 * t * (1 - t) * control) + (t * t * b);

    private readonly record struct Node(double X, double Y, bool IsOnCurve);
}
