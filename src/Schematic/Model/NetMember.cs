using Schematic.Text;

namespace Schematic.Model;

/// <summary>One terminal named by a net statement.</summary>
public sealed record NetMember(TerminalId Terminal, SourceSpan Span);
