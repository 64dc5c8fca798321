namespace Schematic.Drawing;

/// <summary>What a mark on the sheet is for. Inspectors and viewers read it; it does not change how the mark looks.</summary>
public enum MarkRole
{
    /// <summary>Sheet frame, zones, centring marks.</summary>
    Frame,

    /// <summary>Title block.</summary>
    TitleBlock,

    /// <summary>Part of a device's or contact's symbol.</summary>
    Symbol,

    /// <summary>Dashed mechanical linkage.</summary>
    Linkage,

    /// <summary>A conductor.</summary>
    Wire,

    /// <summary>A dot where conductors join.</summary>
    Junction,

    /// <summary>Text that names something on the drawing.</summary>
    Label,

    /// <summary>Boundary of a unit.</summary>
    Boundary,

    /// <summary>Lines and bands of a table.</summary>
    Table,

    /// <summary>Connector face: outline, key, contacts.</summary>
    Face,

    /// <summary>The line through the contacts of a face in their order.</summary>
    GuideLine,

    /// <summary>Dimension, scale bar, drilling mark.</summary>
    Dimension,

    /// <summary>Caution box.</summary>
    Caution,

    /// <summary>A stamp across the sheet, such as "NOT CHECKED".</summary>
    Stamp,
}
