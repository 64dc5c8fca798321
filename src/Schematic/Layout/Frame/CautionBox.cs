using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Fonts;

namespace Schematic.Layout.Frame;

/// <summary>The box with the cautions: beside the title block where there is room, above it otherwise.</summary>
internal sealed class CautionBox
{
    private const double Padding = 1.5;
    private const double HeadingHeight = 2.5;
    private const string Heading = "CAUTION";
    private const string Bullet = "• ";

    // A caution in smaller letters warns of nothing at the bench (ISO 3098 row): what does not fit stands on another sheet.
    private const double LetterHeight = 2.5;

    private readonly ImmutableArray<(string Text, bool IsFirst)> _lines;
    private readonly double _left;
    private readonly double _width;
    private readonly bool _headingAbove;

    /// <param name="cautions">The texts.</param>
    /// <param name="left">Left edge in millimetres.</param>
    /// <param name="width">Width in millimetres.</param>
    /// <param name="headingAbove">Whether the heading stands above the texts, and not to their left.</param>
    public CautionBox(ImmutableArray<string> cautions, double left, double width, bool headingAbove)
    {
        (_left, _width, _headingAbove) = (left, width, headingAbove);
        _lines = [.. cautions.SelectMany(LinesOf)];
    }

    /// <summary>Height in millimetres that all lines need.</summary>
    public double FullHeight => HeightOf(_lines.Length);

    /// <summary>Height in millimetres of a box of two lines: the first caution and where to find the others.</summary>
    public double CompactHeight => HeightOf(2);

    /// <summary>Height in millimetres for the first so many cautions and, where there are more, a line that says where to find them.</summary>
    public double HeightOfFirst(int cautions)
    {
        var lines = 0;
        while (lines < _lines.Length && (!_lines[lines].IsFirst || cautions-- > 0)) lines++;
        return HeightOf(Math.Max(1, Math.Min(_headingAbove ? lines : lines + 1, _lines.Length)));
    }

    private double TextLeft => _left + Padding + (_headingAbove ? 0 : HeadingMm);

    private static double HeadingMm => Lettering.WidthMm(Heading, HeadingHeight, bold: true) + 3;

    // ISO 3098: lines of upper and lower case stand 15/10 of the lettering height apart.
    private const double Pitch = 1.5 * LetterHeight;

    private static double Indent => Lettering.WidthMm(Bullet, LetterHeight);

    private double HeadRoom => _headingAbove ? Pitch : 0;

    /// <summary>Whether all lines fit into a box of that height.</summary>
    public bool FitsInto(double height) => _lines.Length <= CapacityOf(height);

    /// <summary>How many of the first cautions stand whole in a box of that height.</summary>
    public int CountIn(double height) => Shown(CapacityOf(height)).Count(l => l.IsFirst);

    /// <summary>The box between two heights; lines that do not fit give way to <paramref name="reference"/>.</summary>
    public IEnumerable<Mark> Marks(double top, double bottom, string reference)
    {
        yield return LineMark.Rectangle(MarkRole.Caution, new BoxMm(_left, top, _left + _width, bottom), new Pen(0.35));
        yield return new TextMark(
            MarkRole.Caution, Heading, new PointMm(_left + Padding, top + Padding + HeadingHeight), HeadingHeight) { IsBold = true };
        var y = top + Padding + HeadRoom + (_headingAbove ? LetterHeight : HeadingHeight);
        var shown = Shown(CapacityOf(bottom - top)).ToList();
        if (shown.Count < _lines.Length)
        {
            if (_headingAbove) yield return new TextMark(MarkRole.Caution, reference, new PointMm(_left + Padding + HeadingMm, top + Padding + HeadingHeight), LetterHeight);
            else shown.Add((reference, true));
        }

        foreach (var (text, isFirst) in shown)
        {
            if (isFirst) yield return new TextMark(MarkRole.Caution, Bullet.Trim(), new PointMm(TextLeft, y), LetterHeight);
            yield return new TextMark(MarkRole.Caution, text, new PointMm(TextLeft + Indent, y), LetterHeight);
            y += Pitch;
        }
    }

    /// <summary>Whole cautions only: half a sentence warns of nothing.</summary>
    private IEnumerable<(string Text, bool IsFirst)> Shown(int capacity)
    {
        if (_lines.Length <= capacity) return _lines;
        // Where to find the others stands beside a heading above the texts, else it is the last line.
        var count = _headingAbove ? capacity : capacity - 1;
        while (count > 0 && !_lines[count].IsFirst) count--;
        return _lines.Take(count);
    }

    private double HeightOf(int lines) =>
        Padding + HeadRoom + (_headingAbove ? LetterHeight : HeadingHeight) + ((lines - 1) * Pitch) + Padding;

    private int CapacityOf(double height)
    {
        var lines = 1;
        while (HeightOf(lines + 1) <= height + 1e-9) lines++;
        return lines;
    }

    private IEnumerable<(string Text, bool IsFirst)> LinesOf(string caution)
    {
        var width = _left + _width - Padding - TextLeft - Indent;
        return Lettering.Wrap(caution, LetterHeight, width).Select((line, i) => (Lettering.Fit(line, LetterHeight, width), i == 0));
    }
}
