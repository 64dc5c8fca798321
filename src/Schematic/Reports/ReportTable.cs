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
    /// <summary>Begins the first cell of a row that is a heading among the rows: it stands across all columns, with what it heads. Printed lists only.</summary>
    public const char Across = '▸';

    /// <summary>Sentences printed above, before any row: what must be read first. Printed lists only.</summary>
    public ImmutableArray<string> Lead { get; init; } = [];

    /// <summary>Whether lines stand as close as a book's: lists that are looked up and not written on. Printed lists only.</summary>
    public bool IsDense { get; init; }

    /// <summary>Whether it helps to choose and buy, not to build and test: a pack leaves it out unless all lists are asked for, and says so.</summary>
    public bool IsExtra { get; init; }

    /// <summary>Sentences printed below: methods, sources, what a mark means.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];
}
