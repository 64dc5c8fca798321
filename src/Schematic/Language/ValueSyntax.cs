using Schematic.Text;

namespace Schematic.Language;

/// <summary>A value written in a statement.</summary>
public abstract record ValueSyntax(TextSpan Span);
