using Schematic.Model;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>A terminal list counted out.</summary>
/// <param name="Items">The terminals in order, also those that do not exist or are not traced, so that counts still compare.</param>
/// <param name="HasBrokenRange">Whether a range could not be counted out: how many terminals were meant is then not known.</param>
internal sealed record BoundTerminals(List<BoundTerminal> Items, bool HasBrokenRange);

/// <summary>One terminal of a list.</summary>
/// <param name="Terminal">The terminal, or null where it does not exist or is not known.</param>
/// <param name="Span">Where it is written.</param>
internal readonly record struct BoundTerminal(TerminalId? Terminal, SourceSpan Span)
{
    /// <summary>Whether a question mark stands in its place: nobody knows yet which contact it is.</summary>
    public bool IsNotTraced { get; init; }
}
