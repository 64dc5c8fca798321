namespace Schematic.Model;

/// <summary>A drawing sheet, trimmed, in the orientation it is used in.</summary>
/// <param name="Name">A4, A3, A2, A1, A0, Letter, Tabloid.</param>
/// <param name="WidthMm">Width in millimetres.</param>
/// <param name="HeightMm">Height in millimetres.</param>
public sealed record SheetSize(string Name, double WidthMm, double HeightMm)
{
    /// <summary>Whether it is wider than high.</summary>
    public bool IsLandscape => WidthMm > HeightMm;

    /// <summary>
    /// The sheet of that name, or null when unknown. ISO sizes: ISO 5457:1999; Letter and Tabloid: ANSI A and B, 8.5 x 11
    /// and 11 x 17 inch (common practice, no source).
    /// </summary>
    public static SheetSize? Find(string name, bool landscape)
    {
        (double Short, double Long)? size = name.ToUpperInvariant() switch
        {
            "A4" => (210, 297),
            "A3" => (297, 420),
            "A2" => (420, 594),
            "A1" => (594, 841),
            "A0" => (841, 1189),
            "LETTER" => (215.9, 279.4),
            "TABLOID" => (279.4, 431.8),
            _ => null,
        };
        if (size is not { } s) return null;
        var shown = char.ToUpperInvariant(name[0]) + name[1..].ToLowerInvariant();
        return landscape ? new SheetSize(shown, s.Long, s.Short) : new SheetSize(shown, s.Short, s.Long);
    }
}
