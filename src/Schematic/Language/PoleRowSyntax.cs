using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>A row of a gang's block: <c>common J1:4 7 10</c> or <c>left,left-stop J1:27</c>.</summary>
/// <param name="Names">The word <c>common</c>, or the positions that close the throw; empty for make and break.</param>
/// <param name="Contacts">One contact for each pole; empty where the contacts are not brought out.</param>
/// <param name="Span">The whole row.</param>
public sealed record PoleRowSyntax(ImmutableArray<WordSyntax> Names, ImmutableArray<ContactSyntax> Contacts, TextSpan Span)
{
    /// <summary>Of an output of a coded wheel a digit for each position, 1 where it is closed; null for other rows.</summary>
    public WordSyntax? Pattern { get; init; }

    /// <summary>Whether it is <c>at POSITION OUTPUT …</c>: the names are a position and the outputs that it closes.</summary>
    public bool IsPosition { get; init; }

    /// <summary>The same row in a text that has more characters before it, or fewer.</summary>
    public PoleRowSyntax Moved(int by) =>
        new([.. Names.Select(n => n.Moved(by))], [.. Contacts.Select(c => c.Moved(by))], Span.Moved(by)) { Pattern = Pattern?.Moved(by), IsPosition = IsPosition };
}
