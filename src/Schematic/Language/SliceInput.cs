using Schematic.Text;
using Sprache;

namespace Schematic.Language;

/// <summary>
/// A stretch of the file as input for Sprache's parsers. Positions count from the start of the file, so spans need no
/// shifting; nothing is copied; and a scanner can jump over a whole word, which Sprache's own input cannot.
/// </summary>
/// <param name="source">The whole file.</param>
/// <param name="position">Where to read from.</param>
/// <param name="end">The position just after the stretch.</param>
/// <param name="words">Where words of the file are kept.</param>
internal sealed class SliceInput(string source, int position, int end, WordPool words) : IInput
{
    private SliceInput? _next;
    private Dictionary<object, object>? _memos;

    public string Source => source;

    public int Position => position;

    /// <summary>The position just after the stretch.</summary>
    public int End => end;

    public char Current => source[position];

    public bool AtEnd => position >= end;

    /// <summary>Not kept: line and column are found from the position when something is printed.</summary>
    public int Line => 0;

    /// <summary>Not kept, as <see cref="Line"/>.</summary>
    public int Column => 0;

    public IDictionary<object, object> Memos => _memos ??= [];

    /// <summary>What is left of the stretch.</summary>
    public ReadOnlySpan<char> Rest => source.AsSpan(position, end - position);

    /// <summary>The next characters as a text.</summary>
    public string Taken(int length) => words.Of(Rest[..length]);

    /// <summary>A run of characters of the file as a text.</summary>
    public string Taken(TextSpan span) => words.Of(source.AsSpan(span.Start, span.Length));

    public IInput Advance() => _next ??= new SliceInput(source, position + 1, end, words);

    /// <summary>The same stretch, read from another position.</summary>
    public SliceInput At(int other) => other == position ? this : new SliceInput(source, other, end, words);

    public bool Equals(IInput? other) =>
        other is SliceInput slice && slice.Position == position && ReferenceEquals(slice.Source, source);

    public override bool Equals(object? obj) => Equals(obj as IInput);

    public override int GetHashCode() => position;
}
