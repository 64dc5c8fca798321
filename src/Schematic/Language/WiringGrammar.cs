using System.Collections.Immutable;
using Schematic.Text;
using Sprache;

namespace Schematic.Language;

/// <summary>Nets, wires and cables.</summary>
internal static class WiringGrammar
{
    private static readonly ClauseSet CableData = new ClauseSet().Quantities("a length").WithPurchase();

    private static readonly ClauseSet WireData = new ClauseSet()
        .Quantities("a gauge or a length").Colours().With("colours", _ => ColourRun).Synonyms("colours", "colors").UpToTerminals();

    private static readonly Parser<Tuple<WordSyntax, WordSyntax?, IEnumerable<ValueSyntax>>> NetHead =
        from name in Lexemes.Contact
        from last in SharedGrammar.Through(Lexemes.Contact)
        from members in SharedGrammar.AnyContacts.OrNone()
        select Tuple.Create(name, last, members);

    private static readonly Parser<Tuple<WordSyntax?, WordSyntax?, ClauseRun>> WireHead =
        from name in Lexemes.Contact
        from last in SharedGrammar.Through(Lexemes.Contact)
        from run in (Parser<ClauseRun>)WireData.Run
        select Tuple.Create((WordSyntax?)name, last, run);

    private static readonly Parser<Tuple<WordSyntax?, WordSyntax?, ClauseRun>> ScreenHead =
        ((Parser<ClauseRun>)WireData.Run).Select(run => Tuple.Create((WordSyntax?)null, (WordSyntax?)null, run));

    private static readonly Parser<Tuple<IEnumerable<ContactSyntax>, IEnumerable<ContactSyntax>>> BothEnds =
        from first in ContactLists.TerminalRun
        from arrow in Lexemes.Sign("->")
        from second in ContactLists.TerminalRun
        select Tuple.Create(first, second);

    private static readonly Parser<Tuple<IEnumerable<ContactSyntax>, IEnumerable<ContactSyntax>>> OneOrBothEnds =
        from first in ContactLists.TerminalRun
        from second in (
            from arrow in Lexemes.Sign("->")
            from terminal in ContactLists.TerminalRun
            select terminal).XOr(Parse.Return(Enumerable.Empty<ContactSyntax>()))
        select Tuple.Create(first, second);

    private static readonly Parser<Tuple<WordSyntax, WordSyntax?, ClauseRun>> CableHead =
        from designator in Lexemes.SimpleName
        from description in Lexemes.String.Maybe()
        from run in (Parser<ClauseRun>)CableData.Run
        select Tuple.Create(designator, description, run);

    private static readonly Parser<WordSyntax> CoreWord = Lexemes.OneOf("core", "screen");

    /// <summary>Colours one after the other, up to a number, a terminal or an arrow.</summary>
    private static IResult<IEnumerable<ValueSyntax>> ColourRun(IInput input)
    {
        var colours = new List<ValueSyntax>();
        var at = Lexemes.Trim(input);
        while (!ClauseSet.StandsBeforeTerminal(at) && Lexemes.Colour(at) is { WasSuccessful: true } colour)
        {
            colours.Add(colour.Value);
            at = Lexemes.Trim(colour.Remainder);
            if (!at.AtEnd && at.Current == ',') at = Lexemes.Trim(at.At(at.Position + 1));
        }

        return colours.Count == 0
            ? Result.Failure<IEnumerable<ValueSyntax>>(at, "", ["colours, such as brown red orange"])
            : Result.Success<IEnumerable<ValueSyntax>>(colours, at);
    }

    /// <summary>The forms of these statements.</summary>
    public static IEnumerable<KeyValuePair<string, StatementForm>> Forms() =>
    [
        new("net", new("net RTN PS1:- A1:GND P1:4", ReadNet)),
        new("wire", new("wire W1 22 AWG black 450 mm PS1:- -> P1:4", ReadWire)),
        new("cable", new("cable C1 12 m { core 1 brown 0.75 mm2 X1:1 -> X2:1 ; screen X1:12 }", ReadCable)),
    ];

    private static NetSyntax? ReadNet(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        if (reader.Read(NetHead, rest, usage) is not { } head) return null;
        var members = head.Item3.Cast<ContactSyntax>().Concat(reader.Lines(raw, SharedGrammar.AnyContacts, usage).SelectMany(m => m));
        return new NetSyntax(keyword, head.Item1, [.. members], raw.Span) { Through = head.Item2 };
    }

    private static WireSyntax? ReadWire(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.RefuseBlock(raw, usage);
        return Conductor(raw, keyword, rest, reader, usage, endsNeeded: true);
    }

    private static WireSyntax? Conductor(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage, bool endsNeeded)
    {
        var isScreen = keyword.Text == "screen";
        var (head, ends) = reader.ReadStart(isScreen ? ScreenHead : WireHead, rest, usage);
        if (head is null) return null;
        var clauses = reader.Accept(head.Item3, rest, usage);
        var wire = new WireSyntax(keyword, isScreen ? keyword : head.Item1!, clauses, [], [], raw.Span) { Through = head.Item2 };
        if (ends.Length == 0 && !endsNeeded) return wire;
        var both = reader.Read(isScreen ? OneOrBothEnds : BothEnds, ends, usage);
        return both is null ? wire with { HasErrors = true } : wire with { From = [.. both.Item1], To = [.. both.Item2] };
    }

    private static CableSyntax? ReadCable(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        if (reader.Read(CableHead, rest, usage) is not { } head) return null;
        var clauses = reader.Accept(head.Item3, rest, usage);
        var cores = ImmutableArray.CreateBuilder<WireSyntax>();
        foreach (var line in raw.Block ?? [])
        {
            reader.RefuseBlock(line, usage);
            var (word, after) = reader.ReadStart(CoreWord, line.Head, usage);
            if (word is not null && Conductor(line, word, after, reader, usage, endsNeeded: false) is { } core) cores.Add(core);
        }

        return new CableSyntax(keyword, head.Item1, head.Item2, clauses, cores.DrainToImmutable(), raw.Span);
    }
}
