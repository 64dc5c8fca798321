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

    private const double UsualHeight = 2.5;
    private const double SmallHeight = 1.8;

    private readonly ImmutableArray<(string Text, bool IsFirst)> _lines;
    private readonly double _height;
    private readonly double _left;
    private readonly double _width;
    private readonly bool _headingAbove;

    /// <param name="cautions">The texts.</param>
    /// <param name="left">Left edge in millimetres.</param>
    /// <param name="width">Width in millimetres.</param>
    /// <param name="headingAbove">Whether the heading stands above the texts, and not to their left.</param>
    /// <param name="roomy">Height in millimetres that there is in any case: small letters are taken only when it is not enough.</param>
    public CautionBox(ImmutableArray<string> cautions, double left, double width, bool headingAbove, double roomy)
    {
        (_left, _width, _headingAbove) = (left, width, headingAbove);
        _height = UsualHeight;
        _lines = [.. cautions.SelectMany(LinesOf)];
        if (FullHeight <= roomy) return;
        _height = SmallHeight;
        _lines = [.. cautions.SelectMany(LinesOf)];
    }

    /// <summary>Height in millimetres that all lines need.</summary>
    public double FullHeight => HeightOf(_lines.Length);

    /// <summary>Height in millimetres of a box of two lines: the first caution and where to find the others.</summary>
    public double CompactHeight => HeightOf(2);

    private double TextLeft => _left + Padding + (_headingAbove ? 0 : Lettering.WidthMm(Heading, HeadingHeight, bold: true) + 3);

    // ISO 3098: lines of upper and lower case stand 15/10 of the lettering height apart.
    private double Pitch => 1.5 * _height;

    private double Indent => Lettering.WidthMm(Bullet, _height);

    private double HeadRoom => _headingAbove ? HeadingHeight + 1.5 : 0;

    /// <summary>Whether all lines fit into a box of that height.</summary>
    public bool FitsInto(double height) => _lines.Length <= CapacityOf(height);

    /// <summary>The box between two heights; lines that do not fit give way to <paramref name="reference"/>.</summary>
    public IEnumerable<Mark> Marks(double top, double bottom, string reference)
    {
        yield return LineMark.Rectangle(MarkRole.Caution, new BoxMm(_left, top, _left + _width, bottom), new Pen(0.35));
        yield return new TextMark(
            MarkRole.Caution, Heading, new PointMm(_left + Padding, top + Padding + HeadingHeight), HeadingHeight) { IsBold = true };
        var y = top + Padding + HeadRoom + (_headingAbove ? _height : HeadingHeight);
        foreach (var (text, isFirst) in Shown(CapacityOf(bottom - top), reference))
        {
            if (isFirst) yield return new TextMark(MarkRole.Caution, Bullet.Trim(), new PointMm(TextLeft, y), _height);
            yield return new TextMark(MarkRole.Caution, text, new PointMm(TextLeft + Indent, y), _height);
            y += Pitch;
        }
    }

    /// <summary>Whole cautions only: half a sentence warns of nothing.</summary>
    private IEnumerable<(string Text, bool IsFirst)> Shown(int capacity, string reference)
    {
        if (_lines.Length <= capacity) return _lines;
        var count = capacity - 1;
        while (count > 0 && !_lines[count].IsFirst) count--;
        return _lines.Take(count).Append((reference, true));
    }

    private double HeightOf(int lines) =>
        Padding + HeadRoom + (_headingAbove ? _height : HeadingHeight) + ((lines - 1) * Pitch) + Padding;

    private int CapacityOf(double height)
    {
        var lines = 1;
        while (HeightOf(lines + 1) <= height + 1e-9) lines++;
        return lines;
    }

    private IEnumerable<(string Text, bool IsFirst)> LinesOf(string caution)
    {
        var width = _left + _width - Padding - TextLeft - Indent;
        return Lettering.Wrap(caution, _height, width).Select((line, i) => (Lettering.Fit(line, _height, width), i == 0));
    }
}
