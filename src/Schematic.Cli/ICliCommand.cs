using System.Collections.Immutable;
using System.CommandLine;

namespace Schematic.Cli;

/// <summary>
/// One command of the program: a class in <c>Commands</c>, named in <see cref="CliApplication"/>. It declares its words and
/// does its work with the console it is given; the work itself is the library's.
/// </summary>
public interface ICliCommand
{
    /// <summary>Command lines that show what it is for, the usual one first; a test runs them.</summary>
    ImmutableArray<string> CommandLines { get; }

    /// <summary>Declares name, arguments, options and action.</summary>
    Command Build(CliConsole console);
}
