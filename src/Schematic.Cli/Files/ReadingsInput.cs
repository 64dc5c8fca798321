using System.CommandLine;
using Schematic.Binding;
using Schematic.Bench.Readings;
using Schematic.Model;

namespace Schematic.Cli.Files;

/// <summary>The argument READINGS, and the way from it to readings.</summary>
public sealed class ReadingsInput
{
    private readonly Argument<string> _file = new("READINGS") { Description = "readings file" };

    /// <summary>Adds READINGS to a command.</summary>
    public void AddTo(Command command, bool isOptional = false)
    {
        if (isOptional) _file.Arity = ArgumentArity.ZeroOrOne;
        command.Arguments.Add(_file);
    }

    /// <summary>Whether a file was named.</summary>
    public bool IsGiven(ParseResult parsed) => parsed.GetValue(_file) is { Length: > 0 };

    /// <summary>The folder of the file as the user wrote it, with its slash: what findings print before file names.</summary>
    public string FolderOf(ParseResult parsed) => parsed.GetValue(_file)![..^Path.GetFileName(parsed.GetValue(_file)!).Length];

    /// <summary>Reads the file; null when it cannot be read, which has then been said on standard error.</summary>
    public ReadingsResult? Load(CliConsole console, ParseResult parsed, Panel? panel)
    {
        var name = parsed.GetValue(_file)!;
        try
        {
            var path = console.PathOf(name);
            if (Directory.Exists(path)) throw new IOException("it is a folder; name the readings file in it.");
            var opened = PanelBytes.Decode(Path.GetFileName(name), File.ReadAllBytes(path));
            var result = ReadingsLoader.Load(opened.Text, panel);
            return result with { Diagnostics = [.. opened.Diagnostics, .. result.Diagnostics] };
        }
        catch (Exception failure) when (FileProblems.IsAboutFile(failure))
        {
            console.Complain($"{FileProblems.Reading(name, failure)}");
            return null;
        }
    }
}
