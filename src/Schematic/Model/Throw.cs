using Schematic.Text;

namespace Schematic.Model;

/// <summary>One throw of a pole: the terminal that the common meets while <paramref name="When"/> holds.</summary>
/// <param name="Terminal">The throw's terminal name on the part.</param>
/// <param name="Label">What the drawing calls the throw: a position's name, "operated", or empty for make and break.</param>
/// <param name="When">When it is closed.</param>
/// <param name="Span">Where it is declared.</param>
public sealed record Throw(string Terminal, string Label, Condition When, SourceSpan Span);
