using System.Collections.Immutable;
using System.CommandLine;
using Schematic.Cli.Files;
using Schematic.Layout.Pack;
using Schematic.Page;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic draw FILE</c>: writes the whole pack of sheets.</summary>
public sealed class DrawCommand : ICliCommand
{
    /// <inheritdoc/>
    public ImmutableArray<string> CommandLines { get; } =
    [
        "schematic draw lever.panel --out sheets --format svg",
        "schematic draw lever.panel --out sheets --format png --dpi 60",
        "schematic draw lever.panel --out sheets --format html",
    ];

    /// <inheritdoc/>
    public Command Build(CliConsole console)
    {
        var input = new PanelInput();
        var sheets = new SheetOutput(hasPage: true);
        var command = new Command("draw", "Check a panel file and draw its pack: schematic, connector faces, lists.");
        input.AddTo(command);
        input.AddAcceptUnprovedTo(command);
        sheets.AddTo(command);
        var allLists = new Option<bool>("--all-lists") { Description = "print also the lists that help to choose and buy: LEDs in place of lamps, alternatives" };
        command.Options.Add(allLists);
        command.SetAction(parsed =>
        {
            if (input.Load(console, parsed) is not { } panel) return ExitCode.Failure;
            if (panel.Findings.Length > 0) FindingsOutput.Print(console, panel, console.Error);
            if (panel.HasErrors && !sheets.IsForced(parsed))
            {
                console.Error.Write("Nothing was drawn, because of the errors. --force draws sheets that are stamped NOT CHECKED.\n");
                return ExitCode.Findings;
            }

            if (panel.Panel.Parts.IsEmpty)
            {
                console.Complain($"'{panel.Text.ShownName}' has nothing to draw: it declares no part.");
                return ExitCode.Failure;
            }

            var pack = console.During("drawing", () => PackBuilder.Draw(panel.Context, panel.Findings, parsed.GetValue(allLists)));
            if (pack.Findings.Length > 0) FindingsOutput.Print(console, panel with { Findings = pack.Findings }, console.Error);
            var written = sheets.Write(console, parsed, pack.Sheets, panel.PackName, panel, () => PanelPage.Write(
                new PageRequest(panel.Panel, panel.Findings) { FileName = panel.Text.IsStandardInput ? "panel.panel" : Path.GetFileName(panel.Text.ShownName), Context = panel.Context, Pack = pack }));
            return written == ExitCode.Clean ? panel.ExitCode : written;
        });
        return command;
    }
}
