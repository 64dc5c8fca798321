using Schematic.Model;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>A terminal list counted out.</summary>
/// <param name="Items">The terminals in order; null in the place of one that does not exist, so that counts still compare.</param>
/// <param name="HasBrokenRange">Whether a range could not be counted out: how many terminals were meant is then not known.</param>
internal sealed record BoundTerminals(List<(TerminalId? Terminal, SourceSpan Span)> Items, bool HasBrokenRange);
