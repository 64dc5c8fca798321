using System.Collections.Immutable;

namespace Schematic.Reports;

/// <summary>
/// A list made from the model: wire list, contact chart, parts list and so on. One table feeds the terminal, CSV, JSON and
/// the printed sheet, so that they cannot differ.
/// </summary>
/// <param name="Title">What the sheet is called.</param>
/// <param name="Columns">The columns from left to right.</param>
/// <param name="Rows">The cells as text, row by row; every row has a cell for each column.</param>
public sealed record ReportTable(
    string Title, ImmutableArray<ReportColumn> Columns, ImmutableArray<ImmutableArray<string>> Rows)
{
    /// <summary>Sentences printed below: methods, sources, what a mark means.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];
}
