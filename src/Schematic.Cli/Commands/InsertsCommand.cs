using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using Schematic.Binding;
using Schematic.Model;
using Schematic.Reports;
using Schematic.Text;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic inserts</c>: lists the arrangements that come with the program, or prints the file of one.</summary>
public sealed class InsertsCommand : ICliCommand
{
    private static readonly ReportColumn[] Columns =
    [
        new("name", "Name"), new("contacts", "Contacts", ColumnAlign.Right), new("what", "What it is"), new("source", "Where it is from"),
    ];

    /// <inheritdoc/>
    public ImmutableArray<string> CommandLines { get; } = ["schematic inserts"];

    /// <inheritdoc/>
    public Command Build(CliConsole console)
    {
        var name = new Argument<string?>("NAME") { Description = "arrangement to print", Arity = ArgumentArity.ZeroOrOne };
        var output = new TableOutput();
        var command = new Command("inserts", "List the contact arrangements that a connector can name, or print one.") { name };
        output.AddTo(command);
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(name) is not { } wanted)
            {
                output.Print(console, parsed, [Library()]);
                return ExitCode.Clean;
            }

            if (InsertLibrary.TextOf(wanted) is { } text)
            {
                console.Out.Write(text);
                return ExitCode.Clean;
            }

            console.Complain(Spelling.Nearest(wanted, InsertLibrary.Names) is { } nearest
                ? $"there is no arrangement '{wanted}'; did you mean '{nearest}'?"
                : $"there is no arrangement '{wanted}'; 'schematic inserts' lists them.");
            return ExitCode.Failure;
        });
        return command;
    }

    private static ReportTable Library() => new("Arrangements of the library", [.. Columns], [.. InsertLibrary.Names.Select(name =>
    {
        var files = new MemoryPanelFiles(System.Collections.Immutable.ImmutableDictionary<string, string>.Empty);
        var panel = PanelLoader.Load(new SourceText(name, InsertLibrary.TextOf(name)!), files).Panel;
        var connector = panel.Parts.OfType<Connector>().First();
        return System.Collections.Immutable.ImmutableArray.Create(
            name, connector.Insert.Contacts.Length.ToString(CultureInfo.InvariantCulture), connector.Description, connector.Insert.Source ?? "");
    })])
    {
        Notes = ["Name one in the block of a connector: connector J1 { pins ; insert d-subminiature-25 }. Look at your part before you trust any of them."],
    };
}
