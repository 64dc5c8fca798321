using Schematic.Text;

namespace Schematic.Model;

/// <summary>One terminal of a part: a contact of a connector, a pole's common, an end of a lamp.</summary>
public sealed record Terminal(string Name, SourceSpan Span);
