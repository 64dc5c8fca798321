using System.Collections.Frozen;
using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Text;
using Sprache;

namespace Schematic.Bench.Readings;

/// <summary>
/// The grammar of readings files. It has the words, the cutter and the reader of the panel language, and that language's own
/// connectors and actuators for units of which there is no panel yet.
/// </summary>
internal static class ReadingsGrammar
{
    /// <summary>What a person may have seen of a device besides its ohms.</summary>
    public static readonly ImmutableArray<string> SeenWords = ["lamp", "coil", "resistor", "led"];

    private static readonly ClauseSet When = new ClauseSet()
        .WithOne("date", _ => Lexemes.StringOrBare).WithOne("by", _ => Lexemes.StringOrBare);

    private static readonly ClauseSet MeterData = new ClauseSet()
        .WithOne("range", s => s.Quantity).WithOne("beeps", s => s.Quantity).WithOne("test", s => s.Quantity);

    private static readonly ClauseSet LeadData = new ClauseSet().Quantities("a resistance").Flags("zeroed");

    private static readonly Parser<IEnumerable<WordSyntax>> Of =
        (from word in Lexemes.Keyword("of") from path in Lexemes.String select (IEnumerable<WordSyntax>)[path])
        .Or(from word in Lexemes.Keyword("unknown") select Enumerable.Empty<WordSyntax>());

    private static readonly Parser<IEnumerable<WordSyntax>> Side =
        Lexemes.Name.Maybe().Select(p => p is null ? Enumerable.Empty<WordSyntax>() : [p]);

    private static readonly Parser<Tuple<WordSyntax?, ClauseRun>> MeterBody =
        from name in Lexemes.String.Maybe()
        from run in (Parser<ClauseRun>)MeterData.Run
        select Tuple.Create(name, run);

    private static readonly Parser<HeldPlaceSyntax> Between =
        from actuator in Lexemes.Name
        from word in Lexemes.Keyword("between")
        from one in Lexemes.Contact
        from and in Lexemes.Keyword("and")
        from other in Lexemes.Contact
        select new HeldPlaceSyntax(actuator, one, other);

    private static readonly Parser<HeldPlaceSyntax> Place = Between.Or(
        from actuator in Lexemes.Name from position in Lexemes.Contact select new HeldPlaceSyntax(actuator, position, null));

    private static readonly Parser<string> And = Lexemes.Sign(",").Or(Lexemes.Keyword("and").Select(w => w.Text));

    private static readonly Parser<IEnumerable<HeldPlaceSyntax>> Held =
        (from rest in (Parser<WordSyntax>)OnlyRest select Enumerable.Empty<HeldPlaceSyntax>())
        .Or(from first in Place from others in (from and in And from next in Place select next).Many() select others.Prepend(first));

    private static readonly Parser<ValueSyntax> Value = input => IsQuantity(Lexemes.Trim(input)) || char.IsDigit(Next(input))
        ? MeterData.QuantityRange(input)
        : Lexemes.OneOf("open", "closed").Or(Blank)(input) is { WasSuccessful: true } word
            ? Result.Success<ValueSyntax>(word.Value, word.Remainder)
            : Result.Failure<ValueSyntax>(Lexemes.Trim(input), "", ["a reading such as 38 ohm", "`open`", "`closed`", "`?`"]);

    private static readonly Parser<WordSyntax> Blank = input => Lexemes.Sign("?")(input) is { WasSuccessful: true } sign
        ? Result.Success(new WordSyntax("?", new TextSpan(Lexemes.Trim(input).Position, 1)), sign.Remainder)
        : Result.Failure<WordSyntax>(input, "", ["`?`"]);

    /// <summary>One reading.</summary>
    public static readonly Parser<ReadingSyntax> Line =
        from red in (Parser<IEnumerable<ContactSyntax>>)Lead
        from joined in Lexemes.Sign("->").Or(Lexemes.Keyword("to").Select(w => w.Text)).Or(Parse.Return(""))
        from black in joined.Length == 0 ? Parse.Return(Enumerable.Empty<ContactSyntax>()) : Lead
        from value in Value
        from test in Lexemes.OneOf("diode", "turned").Maybe()
        from seen in Lexemes.OneOf([.. SeenWords]).Maybe()
        from remark in Lexemes.String.Maybe()
        select new ReadingSyntax(
            [.. red], joined, [.. black], value, test, seen, remark,
            TextSpan.FromBounds(red.First().Span.Start, (remark ?? seen ?? test ?? value).Span.End));

    /// <summary>The form of each statement by its keyword.</summary>
    public static readonly FrozenDictionary<string, StatementForm> Forms = new Dictionary<string, StatementForm>(StringComparer.Ordinal)
    {
        ["readings"] = new("readings of \"lever.panel\"", ReadOf),
        ["unit"] = new("unit J1", ReadSide),
        ["harness"] = new("harness", ReadSide),
        ["mated"] = new("mated", ReadSide),
        ["date"] = new("date 2026-11-25  by \"A. Warden\"", ReadWhen),
        ["by"] = new("by \"A. Warden\"", ReadWhen),
        ["meter"] = new("meter \"pocket meter\" range 4 Mohm beeps 30 ohm test 2.8 V", ReadMeter),
        ["leads"] = new("leads 0.3 ohm zeroed", ReadLeads),
        ["remark"] = new("remark \"the lid was open\"", ReadRemark),
        ["print"] = new("print 0123456789abcdef", ReadRemark),
        ["at"] = new("at LEVER reverse, GRIP left-stop { J1:4 J1:6 closed }", ReadHeld),
        ["connector"] = Grammar.Forms["connector"],
        ["actuator"] = Grammar.Forms["actuator"],
    }.ToFrozenDictionary(StringComparer.Ordinal);

    private static ReadingsOfSyntax? ReadOf(RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.RefuseBlock(raw, usage);
        return reader.Read(Of, rest, usage) is { } path ? new ReadingsOfSyntax(keyword, path.FirstOrDefault(), raw.Span) : null;
    }

    private static SideSyntax? ReadSide(RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.RefuseBlock(raw, usage);
        return reader.Read(Side, rest, usage) is { } part ? new SideSyntax(keyword, part.FirstOrDefault(), raw.Span) : null;
    }

    private static SettingSyntax ReadWhen(RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.RefuseBlock(raw, usage);
        return new SettingSyntax(keyword, reader.Accept(reader.Read(When.Run, raw.Head, usage)!, raw.Head, usage), raw.Span);
    }

    private static MeterSyntax? ReadMeter(RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.RefuseBlock(raw, usage);
        return reader.Read(MeterBody, rest, usage) is { } body
            ? new MeterSyntax(keyword, body.Item1, reader.Accept(body.Item2, rest, usage), raw.Span)
            : null;
    }

    private static MeterSyntax ReadLeads(RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.RefuseBlock(raw, usage);
        return new MeterSyntax(keyword, null, reader.Accept(reader.Read(LeadData.Run, rest, usage)!, rest, usage), raw.Span);
    }

    private static RemarkSyntax? ReadRemark(RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.RefuseBlock(raw, usage);
        return reader.Read(Lexemes.StringOrBare, rest, usage) is { } text ? new RemarkSyntax(keyword, text, raw.Span) : null;
    }

    private static HeldSyntax? ReadHeld(RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        if (reader.Read(Held, rest, usage) is not { } held) return null;
        return new HeldSyntax(keyword, [.. held], reader.Lines(raw, Line, "J1:4 J1:6 closed"), raw.Span);
    }

    /// <summary>The word rest alone: an actuator may be called rest as well.</summary>
    private static IResult<WordSyntax> OnlyRest(IInput input)
    {
        var result = Lexemes.Keyword("rest")(input);
        return result.WasSuccessful && !((SliceInput)result.Remainder).AtEnd
            ? Result.Failure<WordSyntax>(Lexemes.Trim(input), "", ["`rest`"])
            : result;
    }

    /// <summary>The terminals under a lead: they end where a reading begins.</summary>
    private static IResult<IEnumerable<ContactSyntax>> Lead(IInput input)
    {
        var items = new List<ContactSyntax>();
        var at = Lexemes.Trim(input);
        while (!IsEnd(at))
        {
            var item = ContactLists.Any(at);
            if (!item.WasSuccessful) return Result.Failure<IEnumerable<ContactSyntax>>(item.Remainder, "", item.Expectations);
            items.Add(item.Value);
            at = (SliceInput)item.Remainder;
            if (!at.AtEnd && at.Current == ',') at = Lexemes.Trim(at.At(at.Position + 1));
        }

        return items.Count > 0
            ? Result.Success<IEnumerable<ContactSyntax>>(items, at)
            : Result.Failure<IEnumerable<ContactSyntax>>(at, "", ["a contact such as J1:5"]);
    }

    private static bool IsEnd(SliceInput at)
    {
        if (at.AtEnd || at.Current == '?' || at.Rest.StartsWith("->", StringComparison.Ordinal) || IsQuantity(at)) return true;
        var length = Characters.ScanContact(at.Rest);
        return (length < at.Rest.Length && at.Rest[length] == ':') ? false : at.Rest[..length] is "to" or "open" or "closed";
    }

    /// <summary>Whether a number with a unit comes next, or a range of such, and not a contact called by a number.</summary>
    private static bool IsQuantity(SliceInput at)
    {
        var length = Characters.ScanNumber(at.Rest);
        if (length == 0) return false;
        if (at.Rest[length..].StartsWith("..", StringComparison.Ordinal)) length += 2 + Characters.ScanNumber(at.Rest[(length + 2)..]);
        var unit = Lexemes.Trim(at.At(at.Position + length));
        var unitLength = Characters.ScanUnit(unit.Rest);
        return Units.IsKnown(unit.Rest[..unitLength]);
    }

    private static char Next(IInput input) => Lexemes.Trim(input) is { AtEnd: false } at ? at.Current : ' ';
}
