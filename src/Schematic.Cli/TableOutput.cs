using System.Collections.Immutable;
using System.CommandLine;
using Schematic.Reports;
using Spectre.Console;

namespace Schematic.Cli;

/// <summary>How commands print lists, and the options that say it: a table for the eye, CSV or JSON for other programs.</summary>
public sealed class TableOutput
{
    private const int NarrowestTerminal = 40;

    private readonly Option<bool> _csv = new("--csv") { Description = "print as CSV, for a spreadsheet" };

    private readonly Option<bool> _json = new("--json") { Description = "print as JSON" };

    /// <summary>Adds the options to a command; one of them at most may be given.</summary>
    public void AddTo(Command command)
    {
        command.Options.Add(_csv);
        command.Options.Add(_json);
        command.Validators.Add(result =>
        {
            if (result.GetValue(_csv) && result.GetValue(_json)) result.AddError("Give --csv or --json, not both.");
        });
    }

    /// <summary>Prints the tables.</summary>
    public void Print(CliConsole console, ParseResult parsed, ImmutableArray<ReportTable> tables)
    {
        if (parsed.GetValue(_json)) console.Out.Write(JsonTableWriter.Write(tables));
        else if (parsed.GetValue(_csv)) console.Out.Write(string.Join("\r\n", tables.Select(CsvTableWriter.Write)));
        else PrintForPeople(console, tables);
    }

    private static void PrintForPeople(CliConsole console, ImmutableArray<ReportTable> tables)
    {
        var terminal = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = AnsiSupport.No,
            ColorSystem = ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(console.Out),
        });
        var width = Math.Max(console.Width, NarrowestTerminal);
        terminal.Profile.Width = width;
        foreach (var table in tables)
        {
            console.Out.Write($"{table.Title}\n");
            foreach (var line in table.Lead.SelectMany(n => WordWrap.Lines(n, width))) console.Out.Write($"{line}\n");
            if (table.Rows.IsEmpty && !table.Notes.IsEmpty) console.Out.Write("\n");
            else if (TableFit.Widths(table, width) is { } widths) terminal.Write(Shown(table, widths));
            else foreach (var line in TableFit.Records(table, width)) console.Out.Write($"{line}\n");
            foreach (var line in table.Notes.SelectMany(n => WordWrap.Lines(n, width))) console.Out.Write($"{line}\n");
            console.Out.Write("\n");
        }
    }

    private static Table Shown(ReportTable table, int[] widths)
    {
        var shown = new Table { Border = TableBorder.Simple };
        foreach (var (column, width) in table.Columns.Zip(widths))
        {
            shown.AddColumn(new TableColumn(Markup.Escape(column.Header))
            {
                Width = width,
                Alignment = column.Align switch
                {
                    ColumnAlign.Right => Justify.Right,
                    ColumnAlign.Centre => Justify.Center,
                    _ => Justify.Left,
                },
            });
        }

        foreach (var row in table.Rows) shown.AddRow([.. row.Zip(widths).Select(c => Markup.Escape(Broken(c.First, c.Second)))]);
        return shown;
    }

    private static string Broken(string cell, int width) => string.Join('\n', cell.Split('\n').SelectMany(l => WordWrap.Lines(l, width)));
}
