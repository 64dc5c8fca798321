namespace Schematic.Inserts;

/// <summary>How a grid is numbered from its first contact.</summary>
public enum GridNumbering
{
    /// <summary>Row after row, every row from the same side.</summary>
    ByRows,

    /// <summary>Column after column, every column from the same side.</summary>
    ByColumns,

    /// <summary>Two rows, 1 facing 2 and 3 facing 4: ribbon headers.</summary>
    Zigzag,

    /// <summary>Two rows, along one and back along the other: numbered like a chip.</summary>
    Around,
}
