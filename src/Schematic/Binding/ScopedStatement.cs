using Schematic.Language;

namespace Schematic.Binding;

/// <summary>A statement and the use of the file it stands in.</summary>
internal readonly record struct ScopedStatement(Scope Scope, StatementSyntax Syntax);
