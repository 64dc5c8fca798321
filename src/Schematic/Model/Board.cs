using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>An input board: logic inputs and one or more ground terminals that are joined on the board.</summary>
public sealed record Board(
    string Designator, ImmutableArray<BoardInput> Inputs, ImmutableArray<string> Grounds, SourceSpan Span)
    : Part(Designator, Span);
