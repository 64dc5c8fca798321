using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using System.Text;
using Schematic.Cli.Files;
using Schematic.Drawing;
using Schematic.Rendering;

namespace Schematic.Cli;

/// <summary>Where and as what commands write sheets, and the options that say it.</summary>
/// <param name="hasPage">Whether there is a page that can be operated besides the sheets.</param>
public sealed class SheetOutput(bool hasPage = false)
{
    private const int FinestDpi = 1200;
    private const int CoarsestDpi = 30;

    private static readonly ImmutableArray<SheetFormat> AllFormats = [SheetFormat.Svg, SheetFormat.Png, SheetFormat.Pdf];

    private readonly Option<string> _folder = new("--out", "-o")
    {
        Description = "folder to write to",
        HelpName = "DIR",
        DefaultValueFactory = _ => "out",
    };

    private readonly Option<IReadOnlyCollection<SheetFormat>?> _formats = new("--format", "-f")
    {
        Description = hasPage
            ? "svg, png, pdf, html, or several joined by commas; svg, png and pdf unless given"
            : "svg, png, pdf, or several joined by commas; all unless given",
        HelpName = "FORMATS",
        CustomParser = result => ParseFormats(result, hasPage),
    };

    private readonly Option<int> _dpi = new("--dpi")
    {
        Description = "dots per inch of PNG pictures",
        HelpName = "N",
        DefaultValueFactory = _ => PngWriter.DefaultDpi,
        CustomParser = ParseDpi,
    };

    private readonly Option<bool> _force = new("--force")
    {
        Description = "draw in spite of errors; every sheet is stamped NOT CHECKED",
    };

    /// <summary>Adds the options to a command.</summary>
    public void AddTo(Command command)
    {
        _formats.Arity = ArgumentArity.OneOrMore;
        _formats.AllowMultipleArgumentsPerToken = true;
        command.Options.Add(_folder);
        command.Options.Add(_formats);
        command.Options.Add(_dpi);
        command.Options.Add(_force);
    }

    /// <summary>Whether the user wants sheets in spite of errors.</summary>
    public bool IsForced(ParseResult parsed) => parsed.GetValue(_force);

    /// <summary>Writes the sheets and prints the files written. Returns an <see cref="ExitCode"/>.</summary>
    /// <param name="console">Where to tell it.</param>
    /// <param name="parsed">What the user asked for.</param>
    /// <param name="sheets">The sheets.</param>
    /// <param name="name">What the names of the files begin with.</param>
    /// <param name="panel">The panel.</param>
    /// <param name="page">Makes the page, where there is one.</param>
    public int Write(CliConsole console, ParseResult parsed, ImmutableArray<Sheet> sheets, string name, LoadedPanel panel, Func<string>? page = null)
    {
        var shownFolder = parsed.GetValue(_folder)!;
        var folder = console.PathOf(shownFolder);
        if (File.Exists(folder)) return Fail(console, $"'{shownFolder}' is a file; --out names a folder.");
        var formats = parsed.GetValue(_formats) ?? AllFormats;
        var files = PackFiles.Render(sheets, name, panel.Panel.Title, formats, parsed.GetValue(_dpi));
        if (formats.Contains(SheetFormat.Html) && page is not null) files = files.Concat(Page(name, page));
        var written = console.During("writing", () => AtomicFiles.Write(folder, shownFolder, PackManifest.Behind(name, files), PackFiles.SafeName(name) + "-"));
        if (written.Problem is { } problem) return Fail(console, problem);
        foreach (var file in written.Names) console.Say(Path.Combine(shownFolder, file));
        if (written.Unchanged > 0) console.Complain(Unchanged(written));
        WarnOfOlderSheets(console, folder, shownFolder, name, written.Names);
        return ExitCode.Clean;
    }

    /// <summary>The page as a file, made when it is its turn.</summary>
    private static IEnumerable<PackFile> Page(string name, Func<string> page)
    {
        yield return new PackFile(PackFiles.SafeName(name) + ".html", Encoding.UTF8.GetBytes(page()));
    }

    private static string Unchanged(WrittenFiles written) => written.Unchanged == written.Names.Length
        ? "nothing changed; no file was written again."
        : $"{written.Unchanged.ToString(CultureInfo.InvariantCulture)} of {written.Names.Length.ToString(CultureInfo.InvariantCulture)} files have not changed and were not written again.";

    /// <summary>A sheet left from an earlier pack would be printed together with the new ones.</summary>
    private static void WarnOfOlderSheets(
        CliConsole console, string folder, string shownFolder, string name, ImmutableArray<string> files)
    {
        var written = files.ToHashSet(StringComparer.Ordinal);
        var prefix = PackFiles.SafeName(name) + "-";
        var older = Directory.EnumerateFiles(folder, prefix + "*").Select(p => Path.GetFileName(p))
            .Where(f => !written.Contains(f) && f.Length > prefix.Length && char.IsAsciiDigit(f[prefix.Length])
                && !f.EndsWith(AtomicFiles.TemporaryEnding, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal).ToImmutableArray();
        if (older.Length == 0) return;
        console.Complain($"{shownFolder} holds older sheets of the same name that were not written now: {string.Join(", ", older)}");
    }

    private static int Fail(CliConsole console, string problem)
    {
        console.Complain(problem);
        return ExitCode.Failure;
    }

    private static int ParseDpi(ArgumentResult result)
    {
        var word = result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
        if (int.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var dpi) && dpi is >= CoarsestDpi and <= FinestDpi) return dpi;
        result.AddError($"--dpi takes a whole number from {CoarsestDpi.ToString(CultureInfo.InvariantCulture)} to {FinestDpi.ToString(CultureInfo.InvariantCulture)}, not '{word}'.");
        return PngWriter.DefaultDpi;
    }

    private static SortedSet<SheetFormat> ParseFormats(ArgumentResult result, bool hasPage)
    {
        var formats = new SortedSet<SheetFormat>();
        foreach (var word in result.Tokens.SelectMany(t => t.Value.Split(',', StringSplitOptions.RemoveEmptyEntries)))
        {
            switch (word.Trim().ToLowerInvariant())
            {
                case "svg": formats.Add(SheetFormat.Svg); break;
                case "png": formats.Add(SheetFormat.Png); break;
                case "pdf": formats.Add(SheetFormat.Pdf); break;
                case "html" when hasPage: formats.Add(SheetFormat.Html); break;
                default: result.AddError($"There is no format '{word}'; there are {(hasPage ? "svg, png, pdf and html" : "svg, png and pdf")}."); break;
            }
        }

        return formats;
    }
}
