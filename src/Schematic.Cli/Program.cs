using System.Text;
using Schematic.Cli;

using var bytes = Console.OpenStandardOutput();
var output = Writer(bytes);
var error = Writer(Console.OpenStandardError());
using var input = Console.OpenStandardInput();
var code = CliApplication.Run(args, new CliConsole(output, error, input, Environment.CurrentDirectory)
{
    HasColour = FindingsOutput.AreColoursWanted(Console.IsOutputRedirected, Environment.GetEnvironmentVariable("NO_COLOR")),
    OutBytes = bytes,
    ShowsProgress = !Console.IsErrorRedirected,
    Width = Console.IsOutputRedirected ? 140 : Math.Clamp(Console.WindowWidth, 40, 200),
});
return Flushed(output) & Flushed(error) ? code : ExitCode.Failure;

static StreamWriter Writer(Stream stream) => new(stream, new UTF8Encoding(false)) { AutoFlush = false };

// What is printed may go to a disk that is full; nobody can be told then, but the exit code tells.
static bool Flushed(StreamWriter writer)
{
    try
    {
        writer.Flush();
        return true;
    }
    catch (ObjectDisposedException)
    {
        // A conversation over it has ended and closed it: nothing was left to print.
        return true;
    }
    catch (IOException)
    {
        return false;
    }
}
