using Schematic.Text;

namespace Schematic.Language;

/// <summary>A condition as written.</summary>
public abstract record ConditionSyntax(TextSpan Span);
