using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Model;

/// <summary>One moving contact: a common and the throws it can meet, as terminal names of the part it belongs to.</summary>
public sealed record Pole(string Common, ImmutableArray<Throw> Throws, SourceSpan Span)
{
    /// <summary>Whether it makes the new contact before it breaks the old one.</summary>
    public bool MakesBeforeBreak { get; init; }
}
