using Sprache;

namespace Schematic.Language;

/// <summary>What several statements have in common.</summary>
internal static class SharedGrammar
{
    private static readonly Parser<WordSyntax> Currency = input =>
    {
        var at = Lexemes.Trim(input);
        var length = Characters.ScanContact(at.Rest);
        var isCode = length == 3 && !at.Rest[..3].ContainsAnyExceptInRange('A', 'Z');
        return isCode ? Lexemes.Contact(at) : Result.Failure<WordSyntax>(at, "", ["a currency code such as EUR"]);
    };

    /// <summary>An amount and, perhaps, its currency.</summary>
    public static readonly Parser<IEnumerable<ValueSyntax>> Price =
        from amount in Lexemes.Number
        from currency in Currency.Maybe()
        select currency is null ? (IEnumerable<ValueSyntax>)[amount] : [amount, currency];

    /// <summary>The names that a statement of any kind seems to declare: its second word, or a range of names.</summary>
    public static readonly Parser<(WordSyntax First, WordSyntax? Last)> DeclaredNames =
        from first in Lexemes.Contact
        from last in (from dots in Lexemes.Sign("..") from name in Lexemes.Contact select name).Maybe()
        select (first, last);

    /// <summary>The rest of a range of names, or null: <c>..W10</c>.</summary>
    public static Parser<WordSyntax?> Through(Parser<WordSyntax> name) =>
        (from dots in Lexemes.Sign("..") from last in name select last).Maybe();

    /// <summary>A terminal list that ends where an item cannot begin.</summary>
    public static readonly Parser<IEnumerable<ContactSyntax>> AnyContacts = ContactLists.UntilKeyword(_ => false);

    /// <summary>What any part may carry: price, order text, spares, on-hand.</summary>
    public static ClauseSet WithPurchase(this ClauseSet set) => set
        .With("price", _ => Price).WithOne("order", _ => Lexemes.String).WithOne("spares", _ => Lexemes.Number).Flags("on-hand");

    /// <summary>A terminal list, or nothing.</summary>
    public static Parser<IEnumerable<ValueSyntax>> OrNone(this Parser<IEnumerable<ContactSyntax>> contacts) =>
        contacts.Select(c => (IEnumerable<ValueSyntax>)c).XOr(Parse.Return(Enumerable.Empty<ValueSyntax>()));
}
