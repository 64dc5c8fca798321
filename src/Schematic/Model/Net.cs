using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>Terminals that belong together, as the user states it: what the wires are compared with.</summary>
public sealed record Net(string Name, ImmutableArray<NetMember> Members, SourceSpan Span);
