namespace Schematic.Reports;

/// <summary>How a column of a table stands.</summary>
public enum ColumnAlign
{
    /// <summary>Text: flush left.</summary>
    Left,

    /// <summary>Figures: flush right.</summary>
    Right,

    /// <summary>Marks and boxes: centred.</summary>
    Centre,
}
