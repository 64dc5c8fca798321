using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>
/// The statements of a text by their own characters, so that those which did not change are not read again in the next version of
/// the text. It is filled while one version is read and never changed afterwards. How a statement is read depends on its
/// characters alone, unless something was wrong with its strings or braces: those are not kept.
/// </summary>
internal sealed class StatementMemory
{
    private readonly Dictionary<string, RememberedStatement> _byText = new(StringComparer.Ordinal);
    private readonly Dictionary<string, RememberedStatement>.AlternateLookup<ReadOnlySpan<char>> _bySpan;

    public StatementMemory() => _bySpan = _byText.GetAlternateLookup<ReadOnlySpan<char>>();

    /// <summary>What was read of those characters before, or null.</summary>
    public RememberedStatement? Find(ReadOnlySpan<char> text) => _bySpan.TryGetValue(text, out var known) ? known : null;

    /// <summary>Keeps a statement; of two that are alike the first.</summary>
    public void Keep(ReadOnlySpan<char> text, RememberedStatement read) => _bySpan.TryAdd(text, read);
}

/// <summary>A statement as it was read.</summary>
/// <param name="Start">Where it stood.</param>
/// <param name="Syntax">What it says; null when nothing could be read.</param>
/// <param name="Diagnostics">What was found in it.</param>
internal sealed record RememberedStatement(int Start, StatementSyntax? Syntax, ImmutableArray<Diagnostic> Diagnostics)
{
    /// <summary>The same at another place of another version of the text.</summary>
    public RememberedStatement At(int start, SourceText source) => this with
    {
        Start = start,
        Syntax = Syntax is null ? null : StatementMover.Move(Syntax, start - Start),
        Diagnostics = [.. Diagnostics.Select(d => d.Moved(start - Start, source))],
    };
}
