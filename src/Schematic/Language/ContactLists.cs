using Schematic.Text;
using Sprache;

namespace Schematic.Language;

/// <summary>Terminal lists: <c>J1:4 7 10</c>, <c>J1:5,7,9</c>, <c>A1:IN1..IN16</c>.</summary>
internal static class ContactLists
{
    /// <summary>One terminal with its part: <c>J1:5</c>.</summary>
    public static readonly Parser<ContactSyntax> Terminal = input => Item(input, _ => false, PartRule.Needed, allowRange: false);

    /// <summary>One terminal, or a range of terminals that the same is said of.</summary>
    public static readonly Parser<ContactSyntax> TerminalOrRange = input => Item(input, _ => false, PartRule.Needed, allowRange: true);

    /// <summary>The ends of a wire or of a run of wires: <c>J1:5</c>, <c>J1:1..10</c>, <c>J1:1,3,5,P2:7</c>. A blank ends them.</summary>
    public static readonly Parser<IEnumerable<ContactSyntax>> TerminalRun = input =>
    {
        var items = new List<ContactSyntax>();
        if (Lexemes.Trim(input) is var start && start.Rest.StartsWith(ContactSyntax.NotTracedMark, StringComparison.Ordinal))
        {
            var unknown = NotTraced(null, start.Position, start);
            return Result.Success<IEnumerable<ContactSyntax>>([unknown.Value], unknown.Remainder);
        }

        var result = Item(input, _ => false, PartRule.Needed, allowRange: true);
        if (!result.WasSuccessful) return Fail<IEnumerable<ContactSyntax>>(result);
        items.Add(result.Value);
        var at = (SliceInput)result.Remainder;
        while (!at.AtEnd && at.Current == ',')
        {
            result = Item(at.At(at.Position + 1), _ => false, PartRule.Allowed, allowRange: true);
            if (!result.WasSuccessful) return Fail<IEnumerable<ContactSyntax>>(result);
            items.Add(result.Value);
            at = (SliceInput)result.Remainder;
        }

        return Result.Success<IEnumerable<ContactSyntax>>(items, at);
    };

    /// <summary>A question mark alone, for what is not traced, or a list.</summary>
    public static Parser<IEnumerable<ContactSyntax>> UnknownOr(Parser<IEnumerable<ContactSyntax>> list) => input =>
    {
        var at = Lexemes.Trim(input);
        if (!at.Rest.StartsWith(ContactSyntax.NotTracedMark, StringComparison.Ordinal)) return list(input);
        var item = NotTraced(null, at.Position, at);
        return Result.Success<IEnumerable<ContactSyntax>>([item.Value], item.Remainder);
    };

    /// <summary>One item of a terminal list, whatever it is called.</summary>
    public static readonly Parser<ContactSyntax> Any = input => Item(input, _ => false, PartRule.Allowed, allowRange: true);

    /// <summary>A terminal list that ends where an item cannot begin or before a keyword.</summary>
    public static Parser<IEnumerable<ContactSyntax>> UntilKeyword(Func<string, bool> isKeyword) =>
        input => Items(input, isKeyword, PartRule.Allowed);

    /// <summary>A list of contact names alone.</summary>
    public static Parser<IEnumerable<ContactSyntax>> BareUntilKeyword(Func<string, bool> isKeyword) =>
        input => Items(input, isKeyword, PartRule.None);

    private enum PartRule
    {
        None,
        Allowed,
        Needed,
    }

    private static IResult<IEnumerable<ContactSyntax>> Items(IInput input, Func<string, bool> isKeyword, PartRule rule)
    {
        var items = new List<ContactSyntax>();
        var result = Item(input, isKeyword, rule, allowRange: true);
        if (!result.WasSuccessful) return Fail<IEnumerable<ContactSyntax>>(result);
        while (result.WasSuccessful)
        {
            items.Add(result.Value);
            var at = (SliceInput)result.Remainder;
            var afterComma = !at.AtEnd && at.Current == ',' ? at.At(at.Position + 1) : at;
            result = Item(afterComma, isKeyword, rule, allowRange: true);
            var begun = result.Remainder.Position > Lexemes.Trim(afterComma).Position;
            if (!result.WasSuccessful && (begun || afterComma != at)) return Fail<IEnumerable<ContactSyntax>>(result);
        }

        return Result.Success<IEnumerable<ContactSyntax>>(items, result.Remainder);
    }

    private static IResult<ContactSyntax> Item(IInput input, Func<string, bool> isKeyword, PartRule rule, bool allowRange)
    {
        var at = Lexemes.Trim(input);
        var expected = rule switch
        {
            PartRule.None => "a contact name",
            PartRule.Needed => "a terminal such as J1:5",
            _ => "a terminal such as J1:5, or a contact name",
        };
        var start = at.Position;
        WordSyntax? part = null;
        var partLength = Characters.ScanName(at.Rest);
        if (partLength > 0 && partLength < at.Rest.Length && at.Rest[partLength] == ':' && rule != PartRule.None)
        {
            part = WordAt(at, partLength);
            at = at.At(part.Span.End + 1);
        }

        var length = Characters.ScanContact(at.Rest);
        if (length == 0 && rule == PartRule.Allowed && at.Rest.StartsWith(ContactSyntax.NotTracedMark, StringComparison.Ordinal))
            return NotTraced(part, start, at);
        if (length == 0) return Result.Failure<ContactSyntax>(at, "", [part is null ? expected : "a contact name after the colon"]);
        var from = WordAt(at, length);
        if (part is null && (rule == PartRule.Needed || isKeyword(from.Text)))
            return Result.Failure<ContactSyntax>(at, "", [expected]);
        at = at.At(from.Span.End);
        WordSyntax? to = null;
        if (allowRange && at.Rest.StartsWith("..", StringComparison.Ordinal))
        {
            at = at.At(at.Position + 2);
            length = Characters.ScanContact(at.Rest);
            if (length == 0) return Result.Failure<ContactSyntax>(at, "", ["the last contact of the range"]);
            to = WordAt(at, length);
            at = at.At(to.Span.End);
        }

        var item = new ContactSyntax(part, from, to, TextSpan.FromBounds(start, at.Position));
        return Result.Success(item, Lexemes.Trim(at));
    }

    private static IResult<ContactSyntax> NotTraced(WordSyntax? part, int start, SliceInput at)
    {
        var mark = WordAt(at, ContactSyntax.NotTracedMark.Length);
        var item = new ContactSyntax(part, mark, null, TextSpan.FromBounds(start, mark.Span.End));
        return Result.Success(item, Lexemes.Trim(at.At(mark.Span.End)));
    }

    private static WordSyntax WordAt(SliceInput at, int length) =>
        new(HiddenCharacters.Show(at.Taken(length)), new TextSpan(at.Position, length));

    private static IResult<T> Fail<T>(IResult<ContactSyntax> result) =>
        Result.Failure<T>(result.Remainder, "", result.Expectations);
}
