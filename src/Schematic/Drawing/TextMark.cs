using Schematic.Fonts;

namespace Schematic.Drawing;

/// <summary>
/// One line of text. The anchor lies on the base line; <paramref name="HeightMm"/> is the height of capitals, as ISO 3098
/// counts lettering.
/// </summary>
public sealed record TextMark(MarkRole Role, string Text, PointMm Anchor, double HeightMm) : Mark(Role)
{
    /// <summary>Which part of the line stands at the anchor.</summary>
    public TextAlign Align { get; init; }

    /// <summary>Whether the heavier face is used.</summary>
    public bool IsBold { get; init; }

    /// <summary>Whether the line runs upwards (turned a quarter counter-clockwise), read from the right.</summary>
    public bool IsVertical { get; init; }

    /// <summary>Colour of the letters.</summary>
    public Ink Ink { get; init; } = Ink.Black;

    /// <summary>The thing whose sheet and zone the text names, or null. It stays when the place is written.</summary>
    public PlaceReference? Reference { get; init; }

    /// <summary>A text that names the place of a thing, still open: as wide as it can get.</summary>
    public static TextMark Referring(MarkRole role, PlaceReference reference, PointMm anchor, double heightMm) =>
        new(role, reference.WidestText, anchor, heightMm) { Reference = reference };

    /// <summary>Width of the line in millimetres.</summary>
    public double WidthMm => Lettering.WidthMm(Text, HeightMm, IsBold);

    /// <inheritdoc/>
    public override BoxMm Bounds
    {
        get
        {
            var width = WidthMm;
            var before = Align switch { TextAlign.Start => 0, TextAlign.Middle => width / 2, _ => width };
            var descent = HeightMm * Lettering.DescentShare;
            return IsVertical
                ? new BoxMm(Anchor.X - HeightMm, Anchor.Y + before - width, Anchor.X + descent, Anchor.Y + before)
                : new BoxMm(Anchor.X - before, Anchor.Y - HeightMm, Anchor.X - before + width, Anchor.Y + descent);
        }
    }

    /// <inheritdoc/>
    public override Mark Moved(double dx, double dy) => this with { Anchor = Anchor.Moved(dx, dy) };
}
