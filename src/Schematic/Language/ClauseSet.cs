using System.Collections.Immutable;
using Schematic.Text;
using Sprache;

namespace Schematic.Language;

/// <summary>
/// The clauses that may stand in one place of a statement, each found by its keyword. What stands between known clauses and
/// cannot be read is noted and skipped, so that one slip does not hide the next. Filled once, where the grammar is declared.
/// </summary>
internal sealed class ClauseSet
{
    private readonly Dictionary<string, Parser<IEnumerable<ValueSyntax>>> _byKeyword = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Parser<ClauseSyntax>> _blocks = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _synonyms = new(StringComparer.Ordinal);
    private readonly List<string> _expected = [];
    private bool _hasQuantities;
    private bool _hasRanges;
    private bool _hasLetterCodes;
    private bool _hasContacts;
    private bool _hasColours;
    private bool _stopsAtTerminals;

    public ClauseSet()
    {
        Quantity = input => QuantityAt(input, allowRange: false);
        QuantityRange = input => QuantityAt(input, allowRange: true);
        Contacts = ContactLists.UntilKeyword(IsKeyword);
        Names = ContactLists.BareUntilKeyword(IsKeyword);
    }

    /// <summary>A number with its unit.</summary>
    public Parser<ValueSyntax> Quantity { get; }

    /// <summary>A number or a range of numbers with a unit.</summary>
    public Parser<ValueSyntax> QuantityRange { get; }

    /// <summary>A terminal list that ends before the next keyword of the set.</summary>
    public Parser<IEnumerable<ContactSyntax>> Contacts { get; }

    /// <summary>A list of bare contact names that ends before the next keyword of the set.</summary>
    public Parser<IEnumerable<ContactSyntax>> Names { get; }

    /// <summary>The keywords, in the order declared.</summary>
    public ImmutableArray<string> Keywords => [.. _byKeyword.Keys];

    /// <summary>Adds keywords that have no value.</summary>
    public ClauseSet Flags(params string[] keywords)
    {
        var nothing = Parse.Return(Enumerable.Empty<ValueSyntax>());
        foreach (var keyword in keywords) _byKeyword.Add(keyword, nothing);
        return this;
    }

    /// <summary>Lets other words of the trade stand for a keyword that is known already.</summary>
    public ClauseSet Synonyms(string keyword, params ReadOnlySpan<string> words)
    {
        foreach (var word in words) _synonyms.Add(word, keyword);
        return this;
    }

    /// <summary>Adds a keyword and what follows it.</summary>
    public ClauseSet With(string keyword, Func<ClauseSet, Parser<IEnumerable<ValueSyntax>>> values)
    {
        _byKeyword.Add(keyword, values(this));
        return this;
    }

    /// <summary>Adds a keyword that is followed by one value.</summary>
    public ClauseSet WithOne(string keyword, Func<ClauseSet, Parser<ValueSyntax>> value) =>
        With(keyword, set => value(set).Select(v => (IEnumerable<ValueSyntax>)[v]));

    /// <summary>Adds a keyword that is followed by a block of its own, each of whose lines is a clause.</summary>
    public ClauseSet WithBlock(string keyword, Func<ClauseSet, Parser<ClauseSyntax>> line)
    {
        _blocks.Add(keyword, line(this));
        return Flags(keyword);
    }

    /// <summary>The parser for the lines of the block that follows a keyword, or null where none may follow.</summary>
    public Parser<ClauseSyntax>? BlockOf(string keyword) => _blocks.GetValueOrDefault(keyword);

    /// <summary>Lets quantities stand for themselves.</summary>
    public ClauseSet Quantities(string expected)
    {
        _hasQuantities = true;
        _expected.Add(expected);
        return this;
    }

    /// <summary>Lets quantities and ranges of quantities stand for themselves.</summary>
    public ClauseSet Ranges(string expected)
    {
        _hasRanges = true;
        return Quantities(expected);
    }

    /// <summary>Lets a resistance stand for itself in the letter code of IEC 60062: <c>4k7</c>, <c>R47</c>.</summary>
    public ClauseSet LetterCodes()
    {
        _hasLetterCodes = true;
        return this;
    }

    /// <summary>Lets a colour stand for itself.</summary>
    public ClauseSet Colours()
    {
        _hasColours = true;
        _expected.Add("a colour");
        return this;
    }

    /// <summary>Lets a terminal list stand for itself.</summary>
    public ClauseSet ContactsAlone(string expected)
    {
        _hasContacts = true;
        _expected.Add(expected);
        return this;
    }

    /// <summary>Ends the clauses where a terminal or an arrow begins.</summary>
    public ClauseSet UpToTerminals()
    {
        _stopsAtTerminals = true;
        return this;
    }

    /// <summary>Reads clauses to the end of the input. It never fails: problems are part of the result.</summary>
    public IResult<ClauseRun> Run(IInput input)
    {
        var clauses = ImmutableArray.CreateBuilder<ClauseSyntax>();
        var problems = ImmutableArray.CreateBuilder<SyntaxProblem>(0);
        var at = Lexemes.Trim(input);
        while (!at.AtEnd && !(_stopsAtTerminals && StandsBeforeTerminal(at)))
        {
            var result = Clause(at);
            if (result.WasSuccessful)
            {
                clauses.Add(result.Value);
                at = (SliceInput)result.Remainder;
                continue;
            }

            problems.Add(ProblemAt((SliceInput)result.Remainder, [.. result.Expectations]));
            at = Recover(at, (SliceInput)result.Remainder);
        }

        return Result.Success(new ClauseRun(clauses.DrainToImmutable(), problems.DrainToImmutable()), at);
    }

    private bool IsKeyword(string word) => _byKeyword.ContainsKey(word) || _synonyms.ContainsKey(word);

    private IResult<ClauseSyntax> Clause(SliceInput at)
    {
        var length = Characters.ScanContact(at.Rest);
        var word = at.Taken(length);
        var isPart = length < at.Rest.Length && at.Rest[length] == ':';
        var keyword = _synonyms.GetValueOrDefault(word, word);
        if (!isPart && _byKeyword.TryGetValue(keyword, out var values))
        {
            var result = values(Lexemes.Trim(at.At(at.Position + length)));
            return result.WasSuccessful
                ? Result.Success(Make(keyword, word, result.Value, at.Position), result.Remainder)
                : Result.Failure<ClauseSyntax>(result.Remainder, "", result.Expectations);
        }

        if (_hasLetterCodes && LetterCode.Read(at.Rest, at.Position) is { } code)
            return Result.Success(Make("", "", [code], at.Position), Lexemes.Trim(at.At(code.Span.End)));
        if (_hasQuantities && Characters.ScanNumber(at.Rest) > 0) return Unnamed(_hasRanges ? QuantityRange(at) : Quantity(at), v => [v], at);
        if (_hasContacts && (length > 0 || at.Rest.StartsWith(ContactSyntax.NotTracedMark, StringComparison.Ordinal)))
            return Unnamed(Contacts(at), v => v, at);
        if (_hasColours && length > 0 && !isPart) return Unnamed(Lexemes.Colour(at), v => [v], at);
        return Result.Failure<ClauseSyntax>(at, "", _expected);
    }

    private static IResult<ClauseSyntax> Unnamed<T>(IResult<T> result, Func<T, IEnumerable<ValueSyntax>> values, SliceInput at) =>
        result.WasSuccessful
            ? Result.Success(Make("", "", values(result.Value), at.Position), result.Remainder)
            : Result.Failure<ClauseSyntax>(result.Remainder, "", result.Expectations);

    private static ClauseSyntax Make(string keyword, string written, IEnumerable<ValueSyntax> values, int start)
    {
        ImmutableArray<ValueSyntax> list = [.. values];
        var end = list.IsEmpty ? start + written.Length : list[^1].Span.End;
        return new ClauseSyntax(keyword, list, TextSpan.FromBounds(start, end)) { Written = written == keyword ? null : written };
    }

    private SyntaxProblem ProblemAt(SliceInput at, ImmutableArray<string> expected) => new(
        at.Position, expected, expected.SequenceEqual(_expected) ? [.. Keywords, .. _synonyms.Keys] : [])
        {
            Usual = _synonyms,
        };

    /// <summary>The next word that is a keyword, at or after the place of the failure, or the end.</summary>
    private SliceInput Recover(SliceInput start, SliceInput failed)
    {
        var position = failed.Position;
        if (position == start.Position) position = WordEnd(start, position);
        while (true)
        {
            position = Characters.SkipBlanks(start.Source, position, start.End);
            if (position >= start.End) return start.At(start.End);
            var word = start.Source.AsSpan(position, start.End - position);
            if (IsKeyword(word[..Characters.ScanContact(word)].ToString())) return start.At(position);
            if (_stopsAtTerminals && StandsBeforeTerminal(start.At(position))) return start.At(position);
            position = WordEnd(start, position);
        }
    }

    private static int WordEnd(SliceInput input, int position)
    {
        var rest = input.Source.AsSpan(position, input.End - position);
        var length = Characters.ScanString(rest);
        while (length < rest.Length && !Characters.IsBlank(rest[length]) && (length == 0 || rest[length] != '"')) length++;
        return position + Math.Max(1, length);
    }

    /// <summary>Whether a terminal or an arrow comes next.</summary>
    public static bool StandsBeforeTerminal(SliceInput at)
    {
        if (at.Rest.StartsWith("->", StringComparison.Ordinal)) return true;
        var length = Characters.ScanName(at.Rest);
        return length > 0 && length < at.Rest.Length && at.Rest[length] == ':';
    }

    private IResult<ValueSyntax> QuantityAt(IInput input, bool allowRange)
    {
        var slice = Lexemes.Trim(input);
        var low = ScanNumberOrGauge(slice.Rest);
        if (low == 0) return Result.Failure<ValueSyntax>(slice, "", ["a number with a unit"]);
        var high = 0;
        if (allowRange && slice.Rest[low..].StartsWith("..", StringComparison.Ordinal))
        {
            high = ScanNumberOrGauge(slice.Rest[(low + 2)..]);
            if (high == 0)
                return Result.Failure<ValueSyntax>(slice.At(slice.Position + low + 2), "", ["the upper end of the range"]);
        }

        var numberEnd = slice.Position + (high == 0 ? low : low + 2 + high);
        var unit = UnitAt(slice.At(numberEnd));
        var text = unit.Length == 0 ? "" : slice.Taken(unit);
        var end = unit.Length == 0 ? numberEnd : unit.End;
        var first = MakeQuantity(slice.Taken(low), text, TextSpan.FromBounds(slice.Position, end));
        ValueSyntax value = high == 0
            ? first
            : new QuantityRangeSyntax(
                first, MakeQuantity(slice.Rest.Slice(low + 2, high).ToString(), text, first.Span), first.Span);
        return Result.Success(value, Lexemes.Trim(slice.At(end)));
    }

    private static int ScanNumberOrGauge(ReadOnlySpan<char> text)
    {
        var length = Characters.ScanNumber(text);
        return length > 0 && text[length..].StartsWith("/0", StringComparison.Ordinal) ? length + 2 : length;
    }

    private static QuantitySyntax MakeQuantity(string number, string unit, TextSpan span)
    {
        var slash = number.IndexOf('/');
        var written = Lexemes.ToDouble(slash < 0 ? number : number.AsSpan(0, slash));
        var (value, dimension) = Units.Convert(slash < 0 ? written : 1 - written, unit);
        if (slash >= 0 && dimension != Dimension.Gauge) dimension = Dimension.Unknown;
        return new QuantitySyntax(value, dimension, number, unit, span);
    }

    /// <summary>
    /// The unit after a number. A word that is no known unit is taken for a wrong one, unless it begins the next clause or
    /// names a part.
    /// </summary>
    private TextSpan UnitAt(SliceInput afterNumber)
    {
        var start = Lexemes.Trim(afterNumber);
        var length = Characters.ScanUnit(start.Rest);
        var span = new TextSpan(start.Position, length);
        if (length == 0) return span;
        var rest = start.Rest[length..];
        if (!rest.IsEmpty && rest[0] is ':' or '/' or '-' or '.') return default;
        var unit = start.Rest[..length];
        return Units.IsKnown(unit) || start.Position == afterNumber.Position || !IsKeyword(unit.ToString()) ? span : default;
    }
}
