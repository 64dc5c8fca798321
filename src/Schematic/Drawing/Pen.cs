namespace Schematic.Drawing;

/// <summary>How a line is drawn. Widths are from the ISO 128 row, in millimetres.</summary>
public sealed record Pen(double WidthMm, LineKind Kind = LineKind.Solid)
{
    /// <summary>Colour of the line.</summary>
    public Ink Ink { get; init; } = Ink.Black;

    /// <summary>The narrow line: symbols' details, tables, leaders (0.18 mm).</summary>
    public static Pen Narrow { get; } = new(0.18);

    /// <summary>The usual line: symbols and wires (0.35 mm).</summary>
    public static Pen Wide { get; } = new(0.35);

    /// <summary>The frame's line (0.7 mm).</summary>
    public static Pen Frame { get; } = new(0.7);

    /// <summary>Mechanical linkage: narrow and dashed.</summary>
    public static Pen Linkage { get; } = new(0.18, LineKind.Dashed);

    /// <summary>The boundary of a unit: narrow, dash and dot.</summary>
    public static Pen Boundary { get; } = new(0.25, LineKind.DashDot);
}
