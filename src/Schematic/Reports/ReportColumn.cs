namespace Schematic.Reports;

/// <summary>One column of a table.</summary>
/// <param name="Key">The column's name in CSV and JSON: lower case, words joined by underscores, unit last (<c>length_mm</c>).</param>
/// <param name="Header">What people read at its head.</param>
/// <param name="Align">How it stands.</param>
public sealed record ReportColumn(string Key, string Header, ColumnAlign Align = ColumnAlign.Left);
