using Schematic.Text;
using Sprache;

namespace Schematic.Language;

/// <summary>Placing, using other files, other ways to buy.</summary>
internal static class ArrangingGrammar
{
    private static readonly ClauseSet Buying = new ClauseSet().With("price", _ => SharedGrammar.Price);

    private static readonly ClauseSet PlaceData = new ClauseSet()
        .Flags("left", "right", "top", "bottom").WithOne("sheet", _ => Lexemes.Number);

    private static readonly Parser<Tuple<WordSyntax, ClauseRun>> PlaceBody =
        from part in Lexemes.Name
        from run in (Parser<ClauseRun>)PlaceData.Run
        select Tuple.Create(part, run);

    private static readonly Parser<UseSyntax> UseBody =
        from path in Lexemes.Path
        from word in Lexemes.Keyword("as")
        from name in Lexemes.SimpleName
        select new UseSyntax(word, path, name, default);

    private static readonly Parser<Tuple<WordSyntax, WordSyntax, ClauseRun>> AlternativeBody =
        from part in Lexemes.Name
        from order in Lexemes.String
        from run in (Parser<ClauseRun>)Buying.Run
        select Tuple.Create(part, order, run);

    /// <summary>The forms of these statements.</summary>
    public static IEnumerable<KeyValuePair<string, StatementForm>> Forms() =>
    [
        new("place", new("place A1 right sheet 1", ReadPlace)),
        new("use", new("use \"lever-unit.panel\" as UNIT", ReadUse)),
        new("alternative", new("alternative P1 \"plug, cleaned\" price 12.00 EUR", ReadAlternative)),
    ];

    private static PlaceSyntax? ReadPlace(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.RefuseBlock(raw, usage);
        return reader.Read(PlaceBody, rest, usage) is { } body
            ? new PlaceSyntax(keyword, body.Item1, reader.Accept(body.Item2, rest, usage), raw.Span)
            : null;
    }

    private static UseSyntax? ReadUse(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.RefuseBlock(raw, usage);
        return reader.Read(UseBody, rest, usage) is { } body ? body with { Keyword = keyword, Span = raw.Span } : null;
    }

    private static AlternativeSyntax? ReadAlternative(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.RefuseBlock(raw, usage);
        return reader.Read(AlternativeBody, rest, usage) is { } body
            ? new AlternativeSyntax(keyword, body.Item1, body.Item2, reader.Accept(body.Item3, rest, usage), raw.Span)
            : null;
    }
}
