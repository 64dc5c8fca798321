namespace Schematic.Reports;

/// <summary>One column of a table.</summary>
/// <param name="Key">The column's name in CSV and JSON: lower case, words joined by underscores, unit last (<c>length_mm</c>).</param>
/// <param name="Header">What people read at its head.</param>
/// <param name="Align">How it stands.</param>
public sealed record ReportColumn(string Key, string Header, ColumnAlign Align = ColumnAlign.Left)
{
    /// <summary>What the cells name: printed sheets say beside each where it is drawn.</summary>
    public PlacedNames Names { get; init; }

    /// <summary>Of what that it names the printed cell is sheet and zone. Such columns are added when a list is printed.</summary>
    public PlacedNames PlacesOf { get; init; }

    /// <summary>Whether the printed cell is sheet and zone of what it names.</summary>
    public bool IsPlace => PlacesOf != PlacedNames.None;

    /// <summary>Whether the printed cells are never broken: what is read in one look.</summary>
    public bool IsWhole { get; init; }

    /// <summary>Whether the cells say what is to be typed into a file: units are printed as they can be typed.</summary>
    public bool IsTyped { get; init; }
}

/// <summary>What cells name that is drawn somewhere.</summary>
public enum PlacedNames
{
    /// <summary>Nothing that is drawn.</summary>
    None,

    /// <summary>Terminals: drawn on a wiring sheet.</summary>
    Terminals,

    /// <summary>Wires: drawn on a circuit sheet.</summary>
    Wires,
}
