using Schematic.Text;

namespace Schematic.Model;

/// <summary>A coil that moves or locks something, on terminals <c>A1</c> and <c>A2</c>.</summary>
public sealed record Solenoid(string Designator, CoilData Coil, SourceSpan Span) : Part(Designator, Span);
