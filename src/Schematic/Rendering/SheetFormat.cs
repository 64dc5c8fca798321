namespace Schematic.Rendering;

/// <summary>What a pack is written as.</summary>
public enum SheetFormat
{
    /// <summary>One SVG file a sheet.</summary>
    Svg,

    /// <summary>One PNG picture a sheet.</summary>
    Png,

    /// <summary>One PDF document of all sheets.</summary>
    Pdf,

    /// <summary>One HTML page that can be operated. It is no picture of the sheets; the room <c>Page</c> makes it.</summary>
    Html,
}
