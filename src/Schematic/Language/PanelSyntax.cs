using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>A panel file as written: its statements in order, and what could not be read.</summary>
public sealed record PanelSyntax(
    SourceText Source, ImmutableArray<StatementSyntax> Statements, ImmutableArray<Diagnostic> Diagnostics)
{
    /// <summary>What the next version of the text need not read again; null unless the text is being edited.</summary>
    internal StatementMemory? Memory { get; init; }
}
