using Schematic.Text;

namespace Schematic.Model;

/// <summary>A readings file that the panel keeps as its bench record.</summary>
/// <param name="Text">The text of the file.</param>
/// <param name="Span">Where the panel names it.</param>
public sealed record KeptReadings(SourceText Text, SourceSpan Span);
