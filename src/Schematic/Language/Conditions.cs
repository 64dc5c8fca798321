using System.Collections.Immutable;
using Schematic.Text;
using Sprache;

namespace Schematic.Language;

/// <summary>Conditions: <c>LEVER normal check and (L1 energised or BUTTON pressed)</c>. And binds closer than or.</summary>
internal static class Conditions
{
    private const int DeepestParentheses = 16;

    private static readonly Parser<string> Opening = Lexemes.Sign("(");
    private static readonly Parser<string> Closing = Lexemes.Sign(")");

    private static readonly Parser<ConditionSyntax> State =
        from subject in Lexemes.Name
        from states in ContactLists.BareUntilKeyword(w => w is "and" or "or")
        select MakeState(subject, [.. states.Select(s => s.From)]);

    private static readonly Parser<ConditionSyntax> Group =
        from opening in Opening
        from inner in Parse.Ref(() => Either)
        from closing in Closing
        select inner;

    private static readonly Parser<ConditionSyntax> All =
        from first in Group.XOr(State)
        from others in (from word in Lexemes.Keyword("and") from next in Group.XOr(State) select next).XMany()
        select Join(true, first, others);

    private static readonly Parser<ConditionSyntax> Either =
        from first in All
        from others in (from word in Lexemes.Keyword("or") from next in All select next).XMany()
        select Join(false, first, others);

    /// <summary>A condition.</summary>
    public static readonly Parser<ConditionSyntax> Condition = input =>
        DeepestIn(((SliceInput)input).Rest) > DeepestParentheses
            ? Result.Failure<ConditionSyntax>(input, "", [$"a condition with at most {DeepestParentheses} parentheses in one another"])
            : Either(input);

    private static int DeepestIn(ReadOnlySpan<char> text)
    {
        var depth = 0;
        var deepest = 0;
        foreach (var c in text)
        {
            if (c == '(') deepest = Math.Max(deepest, ++depth);
            else if (c == ')') depth--;
        }

        return deepest;
    }

    private static StateConditionSyntax MakeState(WordSyntax subject, ImmutableArray<WordSyntax> states) =>
        new(subject, states, TextSpan.FromBounds(subject.Span.Start, states[^1].Span.End));

    private static ConditionSyntax Join(bool allHold, ConditionSyntax first, IEnumerable<ConditionSyntax> others)
    {
        ImmutableArray<ConditionSyntax> parts = [first, .. others];
        return parts.Length == 1
            ? first
            : new JoinedConditionSyntax(allHold, parts, TextSpan.FromBounds(first.Span.Start, parts[^1].Span.End));
    }
}
