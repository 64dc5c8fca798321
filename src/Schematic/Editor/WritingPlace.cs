using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Text;

namespace Schematic.Editor;

/// <summary>Where somebody writes: the statement so far, and the words on its line.</summary>
/// <param name="Statement">The text from the keyword of the statement to the word that is being written; empty at the start of a statement.</param>
/// <param name="Words">The words of the line, or of the part of it after a brace or semicolon, before the one that is being written.</param>
/// <param name="Begun">What of the word stands there already.</param>
/// <param name="Start">Where that word begins.</param>
/// <param name="IsInBlock">Whether the place lies in the block of the statement.</param>
/// <param name="String">The words of a string that is open here, before the place; null outside strings.</param>
internal sealed record WritingPlace(
    string Statement, ImmutableArray<string> Words, string Begun, int Start, bool IsInBlock, string? String)
{
    /// <summary>The word that begins the statement; empty where none was written yet.</summary>
    public string Keyword => Statement[..Characters.ScanContact(Statement)];

    /// <summary>The place; null in a comment.</summary>
    public static WritingPlace? At(SourceText source, int offset)
    {
        var text = source.Content;
        offset = Math.Clamp(offset, 0, text.Length);
        var (start, quote, isComment) = LineUpTo(source, offset);
        if (isComment) return null;
        var wordStart = quote < 0 ? offset : quote;
        while (quote < 0 && wordStart > start && !IsEnd(text[wordStart - 1])) wordStart--;
        var words = WordsOf(text[start..wordStart]);
        var owner = OwnerOf(source, offset, start);
        var statement = owner is { } begin ? text[begin..wordStart]
            : words.IsEmpty ? "" : text[start..wordStart].TrimStart();
        return new WritingPlace(statement, words, text[wordStart..offset], wordStart, owner is not null, quote < 0 ? null : text[(quote + 1)..offset]);
    }

    private static bool IsEnd(char c) => Characters.IsBlank(c) || c is ',' or '(' or ')' or ';' or '{' or '}' or '"';

    /// <summary>Where the piece of the line begins that the place lies in, the quote of an open string or -1, and whether it is a comment.</summary>
    private static (int Start, int Quote, bool IsComment) LineUpTo(SourceText source, int offset)
    {
        var text = source.Content;
        var start = source.LineSpan(source.PositionOf(offset).Line).Start;
        for (var i = start; i < offset;)
        {
            if (text[i] == '#') return (start, -1, true);
            if (text[i] == '"')
            {
                var length = Characters.ScanString(text.AsSpan(i, source.LineSpan(source.PositionOf(i).Line).End - i));
                if (i + length >= offset && !(i + length == offset && length > 1 && text[offset - 1] == '"')) return (start, i, false);
                i += length;
                continue;
            }

            if (text[i] is ';' or '{' or '}') start = i + 1;
            i++;
        }

        return (start, -1, false);
    }

    private static ImmutableArray<string> WordsOf(string text)
    {
        var words = ImmutableArray.CreateBuilder<string>();
        for (var i = 0; i < text.Length;)
        {
            if (Characters.IsBlank(text[i]) || text[i] is ',' or '(' or ')')
            {
                i++;
                continue;
            }

            var end = i + Characters.ScanString(text.AsSpan(i));
            while (end < text.Length && !IsEnd(text[end])) end++;
            end = Math.Max(end, i + 1);
            words.Add(text[i..end]);
            i = end;
        }

        return words.ToImmutable();
    }

    /// <summary>Where the statement begins in whose block the place lies; null where it lies in none.</summary>
    private static int? OwnerOf(SourceText source, int offset, int lineStart)
    {
        var (statements, _) = StatementCutter.Cut(source, Grammar.Forms.ContainsKey);
        foreach (var statement in statements)
        {
            if (statement.Start > offset) break;
            var isClosed = statement.Block is not null && source.Content[statement.BlockEnd - 1] == '}';
            if (statement.Block is not null && statement.BlockStart < lineStart + 1 && statement.BlockStart < offset
                && (offset < statement.BlockEnd || (!isClosed && statement == statements[^1]))) return statement.Start;
        }

        return null;
    }
}
