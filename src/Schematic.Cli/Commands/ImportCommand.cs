using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Parsing;
using Schematic.Binding.Import;
using Schematic.Cli.Files;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic import FILE.csv</c>: prints a spreadsheet of wires or contacts as statements.</summary>
public sealed class ImportCommand : ICliCommand
{
    /// <inheritdoc/>
    public ImmutableArray<string> CommandLines { get; } = ["schematic import wires.csv", "schematic import wires.csv --as wires --declare"];

    /// <inheritdoc/>
    public Command Build(CliConsole console)
    {
        var input = new PanelInput("spreadsheet saved as CSV; - reads standard input");
        var kind = new Option<string?>("--as") { Description = "what a row is: wires or contacts; found by the headings unless given", HelpName = "WHAT" };
        kind.AcceptOnlyFromAmong("wires", "contacts");
        var part = new Option<string>("--part") { Description = "connector that the contacts belong to", HelpName = "NAME", DefaultValueFactory = _ => "J1" };
        var told = new Option<Dictionary<string, string>>("--column", "-c")
        {
            Description = $"what a column means where its heading does not say it, such as from=Von; meanings: {string.Join(" ", ColumnMap.Meanings)}",
            HelpName = "MEANING=HEADING",
            CustomParser = Pairs,
            Arity = ArgumentArity.OneOrMore,
        };
        var declare = new Option<bool>("--declare") { Description = "declare the terminals that are named as well" };
        var command = new Command("import", "Print a spreadsheet of wires or contacts as statements of the language.") { kind, part, told, declare };
        input.AddFileTo(command);
        command.SetAction(parsed =>
        {
            if (input.Read(console, parsed) is not { } file) return ExitCode.Failure;
            var sheet = Spreadsheet.Read(file.Opened.Text.Content);
            var columns = new ColumnMap(sheet, parsed.GetValue(told) ?? []);
            foreach (var wrong in columns.Wrong) console.Complain($"{wrong}.");
            if (columns.Wrong.Count > 0) return ExitCode.Failure;
            var what = parsed.GetValue(kind) ?? (columns.Of("from") is not null && columns.Of("to") is not null ? "wires" : "contacts");
            string[] needed = what == "wires" ? ["from", "to"] : ["contact"];
            if (needed.Where(n => columns.Of(n) is null).ToList() is { Count: > 0 } missing)
            {
                var shown = columns.Headings.IsEmpty ? "the file is empty" : $"the headings are {string.Join(", ", columns.Headings)}";
                console.Complain($"no column says '{string.Join("' or '", missing)}'; {shown}. Say which one it is: --column {missing[0]}=HEADING.");
                return ExitCode.Failure;
            }

            var importer = new SheetImporter(sheet, columns, Path.GetFileName(file.ShownName)) { Declares = parsed.GetValue(declare) };
            console.Out.Write(what == "wires" ? importer.Wires() : importer.Contacts(parsed.GetValue(part)!));
            foreach (var problem in importer.Problems) console.Complain(problem);
            return importer.Problems.Count > 0 ? ExitCode.Findings : ExitCode.Clean;
        });
        return command;
    }

    private static Dictionary<string, string> Pairs(ArgumentResult result)
    {
        var pairs = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var token in result.Tokens)
        {
            var at = token.Value.IndexOf('=', StringComparison.Ordinal);
            if (at > 0) pairs[token.Value[..at]] = token.Value[(at + 1)..];
            else result.AddError($"--column takes MEANING=HEADING, not '{token.Value}'.");
        }

        return pairs;
    }
}
