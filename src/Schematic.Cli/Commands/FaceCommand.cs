using System.Collections.Immutable;
using System.CommandLine;
using Schematic.Cli.Files;
using Schematic.Layout.Pack;
using Schematic.Model;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic face FILE J1</c>: writes the face sheets of one connector.</summary>
public sealed class FaceCommand : ICliCommand
{
    /// <inheritdoc/>
    public ImmutableArray<string> CommandLines { get; } = ["schematic face lever.panel P1 --out sheets --format svg"];

    /// <inheritdoc/>
    public Command Build(CliConsole console)
    {
        var input = new PanelInput();
        var sheets = new SheetOutput();
        var connector = new Argument<string>("CONNECTOR") { Description = "designator of the connector, such as J1" };
        var command = new Command("face", "Draw the faces of one connector, enlarged and at true size.");
        input.AddTo(command);
        command.Arguments.Add(connector);
        sheets.AddTo(command);
        command.SetAction(parsed =>
        {
            if (input.Load(console, parsed) is not { } panel) return ExitCode.Failure;
            if (panel.HasErrors && !sheets.IsForced(parsed))
            {
                FindingsOutput.Print(console, panel, console.Error);
                console.Error.Write("Nothing was drawn, because of the errors. --force draws sheets that are stamped NOT CHECKED.\n");
                return ExitCode.Findings;
            }

            var name = parsed.GetValue(connector)!;
            if (panel.Panel.FindPart(name) is not Connector part)
            {
                var known = panel.Panel.Parts.OfType<Connector>().Select(c => c.Designator).ToList();
                console.Complain(known.Count == 0
                    ? $"'{panel.Text.ShownName}' has no connectors."
                    : $"there is no connector '{name}'; there are {string.Join(", ", known)}.");
                return ExitCode.Failure;
            }

            var pack = PackBuilder.BuildFaces(panel.Panel, part, panel.Findings);
            return sheets.Write(console, parsed, pack, $"{panel.PackName}-{name}", panel);
        });
        return command;
    }
}
