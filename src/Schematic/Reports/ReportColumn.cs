namespace Schematic.Reports;

/// <summary>One column of a table.</summary>
/// <param name="Key">The column's name in CSV and JSON: lower case, words joined by underscores, unit last (<c>length_mm</c>).</param>
/// <param name="Header">What people read at its head.</param>
/// <param name="Align">How it stands.</param>
public sealed record ReportColumn(string Key, string Header, ColumnAlign Align = ColumnAlign.Left)
{
    /// <summary>Whether the cells name terminals and printed sheets say beside each where it is drawn.</summary>
    public bool IsPlaced { get; init; }

    /// <summary>Whether the printed cell is sheet and zone of the terminal that it names. Such columns are added when a list is printed.</summary>
    public bool IsPlace { get; init; }

    /// <summary>Whether the printed cells are never broken: what is read in one look.</summary>
    public bool IsWhole { get; init; }
}
