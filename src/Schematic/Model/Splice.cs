using Schematic.Text;

namespace Schematic.Model;

/// <summary>A permanent joint of several wires: one terminal, <c>1</c>.</summary>
public sealed record Splice(string Designator, SourceSpan Span) : Part(Designator, Span);
