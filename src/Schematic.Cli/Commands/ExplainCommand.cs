using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Completions;
using Schematic.Diagnostics;
using Schematic.Language;
using Schematic.Text;

namespace Schematic.Cli.Commands;

/// <summary><c>schematic explain WORD</c>: prints the page of a word of the language or of a rule, or the list of all.</summary>
public sealed class ExplainCommand : ICliCommand
{
    /// <summary>What is asked for the whole language.</summary>
    private const string WholeLanguage = "language";

    /// <inheritdoc/>
    public ImmutableArray<string> CommandLines { get; } = ["schematic explain lamp", "schematic explain --list"];

    /// <inheritdoc/>
    public Command Build(CliConsole console)
    {
        var word = new Argument<string?>("WORD")
        {
            HelpName = "WORD",
            Description = $"a word of the language, such as lamp, a rule as a finding shows it, or '{WholeLanguage}' for all of the language",
            Arity = ArgumentArity.ZeroOrOne,
        };
        word.CompletionSources.Add(_ => [.. WordCatalogue.Words.Concat(RuleCatalogue.Rules).Distinct().Select(w => new CompletionItem(w))]);
        var list = new Option<bool>("--list") { Description = "list all words and rules, one line each" };
        var command = new Command("explain", "Explain a word of the language or a rule, with an example.") { word, list };
        command.SetAction(parsed => Run(console, parsed.GetValue(word), parsed.GetValue(list)));
        return command;
    }

    private static int Run(CliConsole console, string? word, bool list)
    {
        if (list || word is null)
        {
            PrintList(console);
            return ExitCode.Clean;
        }

        if (word == WholeLanguage)
        {
            console.Out.Write(LanguageReference.Text);
            return ExitCode.Clean;
        }

        var pages = new[] { WordCatalogue.Find(word)?.Text, RuleCatalogue.Find(word)?.Text }.OfType<string>().ToList();
        if (pages.Count > 0)
        {
            console.Out.Write(string.Join('\n', pages));
            return ExitCode.Clean;
        }

        var nearest = Spelling.Nearest(word, [.. WordCatalogue.Words, .. RuleCatalogue.Rules, WholeLanguage]);
        console.Complain(nearest is null
            ? $"there is no word and no rule '{word}'; 'schematic explain --list' names them all."
            : $"there is no word and no rule '{word}'; did you mean '{nearest}'?");
        return ExitCode.Failure;
    }

    private static void PrintList(CliConsole console)
    {
        PrintLine(console, WholeLanguage, "The whole language on one page.");
        console.Out.Write("\nWords of the language\n");
        foreach (var page in WordCatalogue.Pages) PrintLine(console, string.Join(' ', page.Words), page.Summary);
        console.Out.Write("\nRules\n");
        foreach (var name in RuleCatalogue.Rules)
        {
            var page = RuleCatalogue.Find(name)!;
            PrintLine(console, name, $"{page.Severity.ToString().ToLowerInvariant()}: {page.Summary}");
        }
    }

    private static void PrintLine(CliConsole console, string name, string summary)
    {
        const int NameWidth = 26;
        var lines = WordWrap.Lines(summary.Replace("`", "", StringComparison.Ordinal), console.Width - NameWidth - 4);
        var head = $"  {name}".PadRight(NameWidth + 2);
        console.Out.Write(name.Length >= NameWidth ? $"{head}\n{new string(' ', NameWidth + 2)}{lines[0]}\n" : $"{head}{lines[0]}\n");
        foreach (var line in lines.Skip(1)) console.Out.Write($"{new string(' ', NameWidth + 2)}{line}\n");
    }
}
