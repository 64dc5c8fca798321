using Schematic.Text;
using Sprache;

namespace Schematic.Language;

/// <summary>Locks, and statements that are to be proved.</summary>
internal static class ProofGrammar
{
    private static readonly Parser<LockSyntax> LockBody =
        from actuator in Lexemes.Name
        from at in Lexemes.Keyword("at")
        from positions in ContactLists.BareUntilKeyword(w => w == "unless")
        from unless in Lexemes.Keyword("unless")
        from condition in Conditions.Condition
        select new LockSyntax(actuator, actuator, [.. positions.Select(p => p.From)], condition, default);

    private static readonly Parser<ConditionSyntax?> When =
        (from word in Lexemes.Keyword("when") from condition in Conditions.Condition select condition)
        .XOr(Parse.Return<ConditionSyntax>(null!));

    private static readonly Parser<bool> InPassing =
        (from word in Lexemes.Keyword("in") from passing in Lexemes.Keyword("passing") select true).XOr(Parse.Return(false));

    private static readonly Parser<ExpectSyntax> Continuity =
        from state in Lexemes.OneOf("closed", "open")
        from word in Lexemes.Keyword("to")
        from other in ContactLists.Terminal
        select new ExpectSyntax(state, null, null, state, other, null, default);

    private static readonly Parser<ExpectSyntax> Level =
        from state in Lexemes.OneOf("low", "high")
        select new ExpectSyntax(state, null, null, state, null, null, default);

    private static readonly Parser<ExpectSyntax> TerminalExpectation =
        from terminal in ContactLists.TerminalOrRange
        from body in Level.XOr(Continuity)
        select body with { Terminal = terminal };

    private static readonly Parser<ExpectSyntax> LoadExpectation =
        from part in Lexemes.Name
        from last in SharedGrammar.Through(Lexemes.Name)
        from state in Lexemes.OneOf("energised", "released")
        select new ExpectSyntax(part, part, null, state, null, null, default) { Through = last };

    private static readonly Parser<ExpectSyntax> ExpectBody =
        from body in (Parser<ExpectSyntax>)(input =>
            ClauseSet.StandsBeforeTerminal(Lexemes.Trim(input)) ? TerminalExpectation(input) : LoadExpectation(input))
        from passing in InPassing
        from condition in When
        select body with { IsInPassing = passing, When = condition };

    private static readonly Parser<NeverSyntax> NeverBody =
        from sources in ContactLists.UntilKeyword(w => w is "reaches" or "when")
        from word in Lexemes.Keyword("reaches")
        from targets in ContactLists.UntilKeyword(w => w == "when")
        from condition in When
        select new NeverSyntax(word, [.. sources], [.. targets], condition, default);

    /// <summary>The forms of these statements.</summary>
    public static IEnumerable<KeyValuePair<string, StatementForm>> Forms() =>
    [
        new("lock", new("lock LEVER at normal unless L1 energised", ReadLock)),
        new("expect", new("expect A1:IN1 low when LEVER reverse", ReadExpect)),
        new("never", new("never PS1:+ reaches A1:IN1..IN16", ReadNever)),
    ];

    private static LockSyntax? ReadLock(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.RefuseBlock(raw, usage);
        return reader.Read(LockBody, rest, usage) is { } body ? body with { Keyword = keyword, Span = raw.Span } : null;
    }

    private static ExpectSyntax? ReadExpect(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.RefuseBlock(raw, usage);
        return reader.Read(ExpectBody, rest, usage) is { } body ? body with { Keyword = keyword, Span = raw.Span } : null;
    }

    private static NeverSyntax? ReadNever(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.RefuseBlock(raw, usage);
        return reader.Read(NeverBody, rest, usage) is { } body ? body with { Keyword = keyword, Span = raw.Span } : null;
    }
}
