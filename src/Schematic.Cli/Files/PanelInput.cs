using System.CommandLine;
using Schematic.Analysis;
using Schematic.Bench.Record;
using Schematic.Binding;

namespace Schematic.Cli.Files;

/// <summary>The argument FILE that every command with a panel has, and the way from it to a checked panel.</summary>
/// <param name="description">What the help says of FILE.</param>
public sealed class PanelInput(string description = "panel file; - reads standard input")
{
    /// <summary>The name for standard input.</summary>
    public const string StandardInput = "-";

    private readonly Argument<string> _file = new("FILE")
    {
        Description = description,
    };

    private readonly Option<bool> _allowOutside = new("--allow-outside")
    {
        Description = "let 'use' reach files outside the folder of FILE",
    };

    private readonly Option<bool> _acceptUnproved = new("--accept-unproved")
    {
        Description = "go on where the proof gave up; sheets are then stamped NOT PROVED",
    };

    /// <summary>Adds the option by which what could not be proved is no error.</summary>
    public void AddAcceptUnprovedTo(Command command) => command.Options.Add(_acceptUnproved);

    /// <summary>Adds FILE and its option to a command that loads the panel.</summary>
    public void AddTo(Command command)
    {
        AddFileTo(command);
        command.Options.Add(_allowOutside);
    }

    /// <summary>Adds FILE alone to a command that reads its text.</summary>
    public void AddFileTo(Command command) => command.Arguments.Add(_file);

    /// <summary>Reads and checks the panel; null when it cannot be read, which has then been said on standard error.</summary>
    public LoadedPanel? Load(CliConsole console, ParseResult parsed)
    {
        if (Read(console, parsed) is not { } file) return null;
        var folder = file.IsStandardInput ? console.WorkingDirectory : Path.GetDirectoryName(console.PathOf(file.ShownName))!;
        var files = new FolderPanelFiles(folder, parsed.GetValue(_allowOutside));
        return console.During("checking", () =>
        {
            var loaded = PanelLoader.Load(file.Opened.Text, files);
            var context = new AnalysisContext(loaded.Panel);
            var findings = PanelChecker.Check(context, [.. file.Opened.Diagnostics, .. loaded.Diagnostics], RecordCheck.All);
            var panel = new LoadedPanel(loaded.Panel, findings, file) { Context = context };
            return parsed.GetValue(_acceptUnproved) ? panel.AcceptingUnproved() : panel;
        });
    }

    /// <summary>Reads the text alone; null when it cannot be read, which has then been said on standard error.</summary>
    public PanelText? Read(CliConsole console, ParseResult parsed)
    {
        var name = parsed.GetValue(_file)!;
        try
        {
            return new PanelText(name, name == StandardInput ? ReadStream(console.In, StandardInput) : ReadFile(console.PathOf(name), name));
        }
        catch (Exception failure) when (FileProblems.IsAboutFile(failure))
        {
            console.Complain($"{FileProblems.Reading(name, failure)}");
            return null;
        }
    }

    private static PanelFile ReadFile(string path, string shownName)
    {
        if (Directory.Exists(path)) throw new IOException("it is a folder; name the panel file in it.");
        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        return ReadStream(stream, Path.GetFileName(shownName));
    }

    /// <summary>All bytes of a stream, which may have no end: the limit holds for what comes, not for what is promised.</summary>
    private static PanelFile ReadStream(Stream stream, string shownName)
    {
        using var bytes = new MemoryStream();
        var buffer = new byte[1 << 16];
        for (int count; (count = stream.Read(buffer)) > 0;)
        {
            bytes.Write(buffer, 0, count);
            if (bytes.Length > FolderPanelFiles.LargestFile) throw new IOException("it is larger than 16 MB.");
        }

        return PanelBytes.Decode(shownName, bytes.GetBuffer().AsSpan(0, (int)bytes.Length));
    }
}
