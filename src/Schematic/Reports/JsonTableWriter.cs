using System.Collections.Immutable;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Schematic.Reports;

/// <summary>
/// Writes tables as JSON. The schema, version 1:
/// <code>
/// { "format": "schematic-tables", "version": 1,
///   "tables": [ { "title": string,
///                 "columns": [ { "key": string, "header": string } ],
///                 "rows": [ { KEY: string | number | null, ... } ],      // one member for each column, in its order
///                 "notes": [ string ] } ] }
/// </code>
/// In a column that stands flush right a plain number is written as a number with all its digits, and an empty cell as null;
/// every other cell is a string. A later version only adds members.
/// </summary>
public static class JsonTableWriter
{
    /// <summary>The version of the schema that is written.</summary>
    public const int Version = 1;

    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The tables as JSON text, ending in a line end.</summary>
    public static string Write(params ImmutableArray<ReportTable> tables)
    {
        using var buffer = new MemoryStream();
        using (var json = new Utf8JsonWriter(buffer, Options))
        {
            json.WriteStartObject();
            json.WriteString("format", "schematic-tables");
            json.WriteNumber("version", Version);
            json.WriteStartArray("tables");
            foreach (var table in tables) WriteTable(json, table);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(buffer.ToArray()) + "\n";
    }

    private static void WriteTable(Utf8JsonWriter json, ReportTable table)
    {
        json.WriteStartObject();
        json.WriteString("title", table.Title);
        json.WriteStartArray("columns");
        foreach (var column in table.Columns)
        {
            json.WriteStartObject();
            json.WriteString("key", column.Key);
            json.WriteString("header", column.Header);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteStartArray("rows");
        foreach (var row in table.Rows) WriteRow(json, table.Columns, row);
        json.WriteEndArray();
        json.WriteStartArray("notes");
        foreach (var note in table.Lead.Concat(table.Notes)) json.WriteStringValue(note);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteRow(Utf8JsonWriter json, ImmutableArray<ReportColumn> columns, ImmutableArray<string> row)
    {
        json.WriteStartObject();
        foreach (var (column, cell) in columns.Zip(row))
        {
            json.WritePropertyName(column.Key);
            if (column.Align != ColumnAlign.Right) json.WriteStringValue(cell);
            else if (cell.Length == 0) json.WriteNullValue();
            else if (PlainNumber.Is(cell)) json.WriteRawValue(cell);
            else json.WriteStringValue(cell);
        }

        json.WriteEndObject();
    }
}
