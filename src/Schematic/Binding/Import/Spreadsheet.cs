using System.Collections.Immutable;
using CsvHelper;
using Schematic.Text;

namespace Schematic.Binding.Import;

/// <summary>A spreadsheet as text: its headings and its rows, each with a cell for every heading.</summary>
/// <param name="Headings">The first row that is not empty.</param>
/// <param name="Rows">The rows below it that are not empty, with their line numbers.</param>
public sealed record Spreadsheet(ImmutableArray<string> Headings, ImmutableArray<SpreadsheetRow> Rows)
{
    private static readonly char[] Separators = [',', ';', '\t'];

    /// <summary>Reads comma, semicolon or tab separated values; which of them separates is found in the text.</summary>
    public static Spreadsheet Read(string text)
    {
        var options = new CsvReaderOptions { Separator = SeparatorOf(text), HasHeader = false, TrackLineNumbers = true };
        using var reader = CsvReader.FromText(text, options);
        var headings = ImmutableArray<string>.Empty;
        var rows = ImmutableArray.CreateBuilder<SpreadsheetRow>();
        while (reader.Read())
        {
            var cells = Enumerable.Range(0, reader.FieldCount).Select(i => HiddenCharacters.Show(reader.GetString(i).Trim().ReplaceLineEndings(" "))).ToImmutableArray();
            if (cells.All(c => c.Length == 0)) continue;
            if (headings.IsEmpty) headings = cells;
            else rows.Add(new SpreadsheetRow(reader.LineNumber, cells));
        }

        return new Spreadsheet(headings, rows.ToImmutable());
    }

    /// <summary>The separator that stands most often in the first line.</summary>
    private static char SeparatorOf(string text)
    {
        var line = text.TrimStart().Split('\n')[0];
        return Separators.MaxBy(d => line.Split(d).Length);
    }
}

/// <summary>One row of a spreadsheet.</summary>
/// <param name="Line">Where it begins in the file, from one.</param>
/// <param name="Cells">Its cells, each in one line, without blanks at their ends.</param>
public sealed record SpreadsheetRow(long Line, ImmutableArray<string> Cells)
{
    /// <summary>The cell of a column; empty where there is none.</summary>
    public string At(int? column) => column is { } c && c < Cells.Length ? Cells[c] : "";
}
