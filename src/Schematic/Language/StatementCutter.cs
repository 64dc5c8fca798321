using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>
/// Cuts a text into statements, so that each is read by itself and one mistake never hides the next. It knows strings, comments,
/// line ends, semicolons and braces, and goes once over the text; a second time when a block was left open, and then it lets a
/// line that begins with a statement's keyword close the block.
/// </summary>
internal sealed class StatementCutter
{
    private const int DeepestBlock = 8;
    private const int LongestStatement = 1 << 18;
    private const int MostHidden = 20;
    private const int LongestName = 60;
    private const int LongestText = 500;

    private readonly SourceText _source;
    private readonly string _text;
    private readonly SyntaxReporter _report;
    private readonly Func<string, bool> _beginsStatement;
    private readonly bool _closesAtStatements;
    private readonly List<RawStatement> _top = [];
    private readonly Stack<RawStatement> _open = new();
    private readonly List<string> _comments = [];
    private List<RawStatement> _list;
    private RawStatement? _current;
    private int _position;
    private int _tooDeep;
    private int _hidden;
    private bool _leftOpen;

    private StatementCutter(SourceText source, Func<string, bool> beginsStatement, bool closesAtStatements)
    {
        _source = source;
        _text = source.Content;
        _report = new SyntaxReporter(source);
        _beginsStatement = beginsStatement;
        _closesAtStatements = closesAtStatements;
        _list = _top;
    }

    /// <summary>The statements of a text in order, and what is wrong with its strings and braces.</summary>
    public static (List<RawStatement> Statements, ImmutableArray<Diagnostic> Diagnostics) Cut(
        SourceText source, Func<string, bool> beginsStatement)
    {
        var cutter = new StatementCutter(source, beginsStatement, closesAtStatements: false);
        cutter.Run();
        if (cutter._leftOpen)
        {
            cutter = new StatementCutter(source, beginsStatement, closesAtStatements: true);
            cutter.Run();
        }

        return (cutter._top, cutter._report.Found);
    }

    /// <summary>The comments of a text in order, without the blanks at their ends.</summary>
    public static IReadOnlyList<string> Comments(SourceText source)
    {
        var cutter = new StatementCutter(source, _ => false, closesAtStatements: false);
        cutter.Run();
        return cutter._comments;
    }

    private void Run()
    {
        while (_position < _text.Length)
        {
            var c = _text[_position];
            switch (c)
            {
                case ';':
                case var _ when LineEnds.Is(c):
                    EndStatement();
                    _position++;
                    break;
                case '#':
                    SkipComment();
                    break;
                case '"':
                    TakeString();
                    break;
                case '{':
                    OpenBlock();
                    _position++;
                    break;
                case '}':
                    CloseBlock();
                    _position++;
                    break;
                default:
                    if (Characters.IsBlank(c)) SkipBlank(c);
                    else TakeWord();
                    break;
            }
        }

        EndStatement();
        CloseOpenBlocks();
    }

    private void SkipBlank(char c)
    {
        if (c > '~') RefuseHidden(_position, _position + 1);
        _position++;
    }

    /// <summary>
    /// What cannot be seen has no place in names and between words. Controls are looked for in the whole text, and reported there.
    /// </summary>
    private void RefuseHidden(int start, int end)
    {
        for (var i = start; i < end; i++)
        {
            if (HiddenCharacters.IsControl(_text[i]) || !HiddenCharacters.IsHidden(_text[i])) continue;
            if (++_hidden <= MostHidden) _report.Hidden(new TextSpan(i, 1), _text[i]);
        }
    }

    private void SkipComment()
    {
        var end = LineEnds.IndexIn(_text.AsSpan(_position));
        end = end < 0 ? _text.Length : _position + end;
        _comments.Add(_text[_position..end].TrimEnd());
        _position = end;
    }

    private void TakeString()
    {
        if (IsInchMark())
        {
            var start = _position;
            while (start > 0 && (char.IsAsciiDigit(_text[start - 1]) || _text[start - 1] is '.' or '/')) start--;
            _report.InchMark(TextSpan.FromBounds(start, _position + 1), _text[start.._position]);
            Take(1);
            _current!.IsReported = true;
            _current.HasSlip = true;
            return;
        }

        var line = _text.AsSpan(_position);
        var lineEnd = LineEnds.IndexIn(line);
        if (lineEnd >= 0) line = line[..lineEnd];
        var length = Characters.ScanString(line);
        var isClosed = length > 1 && line[length - 1] == '"' && !IsEscaped(line, length - 1);
        if (!isClosed)
        {
            // A block that opens on the same line is more likely than a brace in a text: nothing after it is then lost.
            var brace = line.IndexOf('{');
            length = brace > 0 ? line[..brace].TrimEnd().Length : line.Length;
            _report.OpenString(new TextSpan(_position, length));
        }

        Take(length);
        if (!isClosed) _current!.IsReported = true;
    }

    /// <summary>A quote that ends a number and begins no string: <c>16" black</c>.</summary>
    private bool IsInchMark() =>
        _current is not null && _position > 0 && char.IsAsciiDigit(_text[_position - 1])
        && (_position + 1 == _text.Length || Characters.IsBlank(_text[_position + 1]) || _text[_position + 1] is '-' or ';');

    private static bool IsEscaped(ReadOnlySpan<char> line, int quote)
    {
        var backslashes = 0;
        while (quote - backslashes - 1 >= 0 && line[quote - backslashes - 1] == '\\') backslashes++;
        return backslashes % 2 == 1;
    }

    private void TakeWord()
    {
        var end = _position;
        while (end < _text.Length && !IsMark(_text[end])) end++;
        RefuseHidden(_position, end);
        if (_closesAtStatements && _current is null && _open.Count > 0 && BeginsStatement(end)) CloseOpenBlocks();
        Take(end - _position);
    }

    private static bool IsMark(char c) => c is '#' or '"' or '{' or '}' or ';' || Characters.IsBlank(c);

    /// <summary>Whether the word up to <paramref name="end"/> is the first of its line and begins a statement.</summary>
    private bool BeginsStatement(int end)
    {
        var before = _position - 1;
        while (before >= 0 && _text[before] is ' ' or '\t') before--;
        if (before >= 0 && !LineEnds.Is(_text[before])) return false;
        return end < _text.Length && _text[end] is ' ' or '\t' && _beginsStatement(_text[_position..end]);
    }

    private void Take(int length)
    {
        _current ??= new RawStatement(_position);
        _position += length;
        _current.HeadEnd = _position;
    }

    private void EndStatement()
    {
        if (_current is not { } statement) return;
        _current = null;
        if (statement.Head.Length > LongestStatement)
        {
            _report.TooLong(statement.Head, LongestStatement);
            if (statement.Block is null) return;
            statement.IsReported = true;
        }

        RefuseLong(statement);
        if (_tooDeep == 0) _list.Add(statement);
    }

    /// <summary>Names and texts that no sheet has room for; the statement then counts as unread.</summary>
    private void RefuseLong(RawStatement statement)
    {
        if (statement.Head.Length <= LongestName) return;
        var head = _source.Slice(statement.Head);
        for (var i = 0; i < head.Length;)
        {
            var text = Characters.ScanString(head[i..]);
            var name = text > 0 ? 0 : Characters.ScanContact(head[i..]);
            var span = new TextSpan(statement.Start + i, Math.Max(text, name));
            if (name > LongestName) _report.LongName(span, LongestName);
            if (text - 2 > LongestText) _report.LongString(span, LongestText);
            statement.HasSlip |= name > LongestName || text - 2 > LongestText;
            i += Math.Max(1, Math.Max(text, name));
        }
    }

    private void OpenBlock()
    {
        if (_tooDeep > 0 || _open.Count == DeepestBlock)
        {
            if (_tooDeep == 0) _report.TooDeep(new TextSpan(_position, 1), DeepestBlock);
            _current = null;
            _tooDeep++;
            return;
        }

        var owner = _current ?? OwnerOfLooseBlock();
        owner.Block = [];
        owner.BlockStart = _position;
        _current = owner;
        EndStatement();
        _open.Push(owner);
        _list = owner.Block;
    }

    /// <summary>A brace at the start of a line was meant for the statement above it.</summary>
    private RawStatement OwnerOfLooseBlock()
    {
        var owner = _list.Count > 0 && _list[^1].Block is null ? _list[^1] : null;
        _report.LooseBlock(new TextSpan(_position, 1), owner is not null);
        if (owner is null) return new RawStatement(_position) { IsReported = true };
        _list.RemoveAt(_list.Count - 1);
        owner.IsReported = true;
        return owner;
    }

    private void CloseBlock()
    {
        EndStatement();
        if (_tooDeep > 0)
        {
            _tooDeep--;
            return;
        }

        if (!_open.TryPop(out var owner))
        {
            if (!GiveBlock()) _report.StrayBrace(new TextSpan(_position, 1));
            return;
        }

        owner.BlockEnd = _position + 1;
        _list = _open.TryPeek(out var outer) ? outer.Block! : _top;
    }

    /// <summary>
    /// A closing brace without its opening one: where lines before it begin with no keyword, they are the block of the last
    /// statement that does.
    /// </summary>
    private bool GiveBlock()
    {
        var owner = _top.FindLastIndex(s => _beginsStatement(FirstWord(s)));
        if (owner < 0 || owner == _top.Count - 1 || _top[owner].Block is not null) return false;
        var statement = _top[owner];
        statement.Block = _top[(owner + 1)..];
        statement.BlockStart = statement.HeadEnd;
        statement.BlockEnd = _position + 1;
        statement.IsReported = true;
        _top.RemoveRange(owner + 1, _top.Count - owner - 1);
        _report.MissingBrace(statement.Head);
        return true;
    }

    private string FirstWord(RawStatement statement)
    {
        var head = _source.Slice(statement.Head);
        return head[..Characters.ScanContact(head)].ToString();
    }

    private void CloseOpenBlocks()
    {
        var end = _position;
        while (end > 0 && Characters.IsBlank(_text[end - 1])) end--;
        while (_open.TryPop(out var owner))
        {
            _leftOpen = true;
            owner.BlockEnd = Math.Max(end, owner.BlockStart + 1);
            _report.OpenBlock(new TextSpan(owner.BlockStart, 1));
        }

        _tooDeep = 0;
        _list = _top;
    }
}
