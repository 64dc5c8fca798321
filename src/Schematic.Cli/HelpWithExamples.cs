using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace Schematic.Cli;

/// <summary>The help of a command, and below it command lines that show what it is for.</summary>
/// <param name="inner">Writes the help itself.</param>
/// <param name="console">Where it is written.</param>
/// <param name="examples">The command lines of each command.</param>
internal sealed class HelpWithExamples(
    HelpAction inner, CliConsole console, IReadOnlyDictionary<Command, ImmutableArray<string>> examples) : SynchronousCommandLineAction
{
    /// <inheritdoc/>
    public override bool ClearsParseErrors => true;

    /// <inheritdoc/>
    public override int Invoke(ParseResult parseResult)
    {
        var code = inner.Invoke(parseResult);
        if (!examples.TryGetValue(parseResult.CommandResult.Command, out var lines)) return code;
        console.Out.Write("Examples:\n");
        foreach (var line in lines) console.Out.Write($"  {line}\n");
        return code;
    }
}
