using System.Collections.Immutable;
using System.CommandLine;
using System.Runtime.InteropServices;
using Schematic.Cli.Watch;
using Schematic.Diagnostics;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic watch FILE</c>: shows the page of a panel in a browser and draws it anew when the file is saved.</summary>
public sealed class WatchCommand : ICliCommand
{
    /// <inheritdoc/>
    public ImmutableArray<string> CommandLines { get; } = ["schematic watch lever.panel", "schematic watch lever.panel --port 8014"];

    /// <inheritdoc/>
    public Command Build(CliConsole console)
    {
        var file = new Argument<string>("FILE") { Description = "panel file" };
        var port = new Option<int?>("--port") { Description = "port to serve on; any that is free unless given", HelpName = "N" };
        var allowOutside = new Option<bool>("--allow-outside") { Description = "let 'use' reach files outside the folder of FILE" };
        var acceptUnproved = new Option<bool>("--accept-unproved") { Description = "draw where the proof gave up; sheets are then stamped NOT PROVED" };
        var command = new Command("watch", "Show the page of a panel in a browser, drawn anew when the file is saved.") { file, port, allowOutside, acceptUnproved };
        port.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int?>() is < 1 or > 65_535) result.AddError("--port takes a number from 1 to 65535.");
        });
        command.SetAction(parsed =>
        {
            var name = parsed.GetValue(file)!;
            var path = console.PathOf(name);
            if (!File.Exists(path))
            {
                console.Complain(Directory.Exists(path) ? $"'{name}' is a folder; name the panel file in it." : $"There is no file '{name}'.");
                return ExitCode.Failure;
            }

            var maker = new PreviewMaker(path, parsed.GetValue(allowOutside), parsed.GetValue(acceptUnproved));
            return Serve(console, name, maker, parsed.GetValue(port));
        });
        return command;
    }

    private static int Serve(CliConsole console, string name, PreviewMaker maker, int? port)
    {
        using var end = new CancellationTokenSource();
        void End(PosixSignalContext signal)
        {
            signal.Cancel = true;
            end.Cancel();
        }

        using var interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, End);
        using var terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, End);
        var board = new PreviewBoard();
        var loop = new PreviewLoop(maker, board);
        using var server = PreviewServer.Start(board, port);
        if (server is null)
        {
            console.Complain(port is null ? "no port of this machine can be served on." : $"port {port} is taken; leave --port away to take any that is free.");
            return ExitCode.Failure;
        }

        Say(console, $"Open {server.Address} in a browser. Ctrl-C ends.");
        loop.Run(preview => Say(console, $"{name}: {WordsOf(preview)}"), end.Token).GetAwaiter().GetResult();
        return ExitCode.Clean;
    }

    private static string WordsOf(Preview preview)
    {
        var found = preview.Trouble ?? TextPrinter.Summary(preview.Findings);
        return !preview.IsStale ? found : preview.Page is null ? $"{found}; nothing is drawn yet" : $"{found}; the last good drawing stays";
    }

    /// <summary>Says a line at once: whoever waits for it does not wait for the end.</summary>
    private static void Say(CliConsole console, string line)
    {
        console.Say(line);
        console.Out.Flush();
    }
}
