using System.Text;
using Schematic.Cli;

using var output = Writer(Console.OpenStandardOutput());
using var error = Writer(Console.OpenStandardError());
using var input = Console.OpenStandardInput();
return CliApplication.Run(args, new CliConsole(output, error, input, Environment.CurrentDirectory)
{
    HasColour = !Console.IsOutputRedirected && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")),
    Width = Console.IsOutputRedirected ? 140 : Math.Clamp(Console.WindowWidth, 60, 160),
});

static StreamWriter Writer(Stream stream) => new(stream, new UTF8Encoding(false)) { AutoFlush = false };
