using Schematic.Text;

namespace Schematic.Language;

/// <summary>How a statement that begins with a certain keyword is read.</summary>
/// <param name="Usage">The statement written out, shown when it cannot be read.</param>
/// <param name="Read">Reads it: the statement, its keyword, the stretch after the keyword, the reader, the usage.</param>
internal sealed record StatementForm(
    string Usage, Func<RawStatement, WordSyntax, TextSpan, StatementReader, string, StatementSyntax?> Read);
