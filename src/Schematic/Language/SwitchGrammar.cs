using System.Collections.Immutable;
using Schematic.Text;
using Sprache;

namespace Schematic.Language;

/// <summary>Actuators and the contacts they move.</summary>
internal static class SwitchGrammar
{
    private const string PositionUsage = "one position between semicolons or on a line: { normal rest ; check ; in springs-to normal }";

    private static readonly ClauseSet Switching = new ClauseSet().WithPurchase()
        .With("when", s => ContactLists.UnknownOr(s.Names)).With("rated", s => s.Quantity.AtLeastOnce()).Flags("make-before-break")
        .With("terminals", s => s.Names);

    private static readonly Parser<PositionSyntax> Position =
        from name in Lexemes.Contact
        from rest in Lexemes.Keyword("rest").Maybe()
        from springs in (
            from word in Lexemes.Keyword("springs-to")
            from target in Lexemes.Contact
            select target).XOr(Parse.Return<WordSyntax>(null!))
        from restAfter in Lexemes.Keyword("rest").Maybe()
        select new PositionSyntax(name, rest ?? restAfter, springs);

    private static readonly ClauseSet Working = new ClauseSet()
        .Flags("lever", "button", "knob", "cam", "magnet", "endless").With("push-to-turn", s => s.Names.OrNone());

    private static readonly Parser<Tuple<WordSyntax, WordSyntax?, ClauseRun, WordSyntax?>> ActuatorHead =
        from name in Lexemes.SimpleName
        from last in SharedGrammar.Through(Lexemes.SimpleName)
        from description in Lexemes.String.Maybe()
        from run in (Parser<ClauseRun>)Working.Run
        select Tuple.Create(name, description, run, last);

    private static readonly Parser<SwitchHead> SwitchHeadParser =
        from names in SharedGrammar.DeclaredNames
        from description in Lexemes.String.Maybe()
        from form in Lexemes.OneOf("make", "break", "changeover", "rotary")
        from word in Lexemes.Keyword("on")
        from actuator in Lexemes.Name
        from lastActuator in SharedGrammar.Through(Lexemes.Name)
        from run in (Parser<ClauseRun>)Switching.Run
        select new SwitchHead(names.First, names.Last, description, form, actuator, run) { LastActuator = lastActuator };

    private static readonly Parser<IEnumerable<WordSyntax>> RowNameList =
        from first in Lexemes.Contact
        from others in (from comma in Lexemes.Sign(",") from name in Lexemes.Contact select name).XMany()
        select others.Prepend(first);

    private static readonly Parser<PoleRowSyntax> PoleRow =
        from names in RowNames
        from contacts in SharedGrammar.AnyContacts.OrNone()
        select MakeRow(names, contacts);

    private static readonly ClauseSet Coding = new ClauseSet().WithPurchase()
        .With("rated", s => s.Quantity.AtLeastOnce()).Flags("make-before-break", "gray");

    private static readonly Parser<SwitchHead> CodedHead =
        from names in SharedGrammar.DeclaredNames
        from description in Lexemes.String.Maybe()
        from word in Lexemes.Keyword("on")
        from actuator in Lexemes.Name
        from run in (Parser<ClauseRun>)Coding.Run
        select new SwitchHead(names.First, names.Last, description, word, actuator, run);

    private static readonly Parser<PoleRowSyntax> PositionRow =
        from at in Lexemes.Keyword("at")
        from position in Lexemes.Contact
        from outputs in Lexemes.Contact.Many()
        select MakeRow(outputs.Prepend(position), []) with { IsPosition = true };

    private static readonly Parser<PoleRowSyntax> OutputRow =
        from name in Lexemes.Contact
        from pattern in Lexemes.String.Maybe()
        from contacts in SharedGrammar.AnyContacts.OrNone()
        select MakeRow([name], contacts) with { Pattern = pattern };

    private static readonly Parser<PoleRowSyntax> CodedRow = PositionRow.XOr(OutputRow);

    /// <summary>The forms of these statements.</summary>
    public static IEnumerable<KeyValuePair<string, StatementForm>> Forms() =>
    [
        new("actuator", new("actuator LEVER { normal rest ; check ; reverse }", ReadActuator)),
        new("switch", new("switch S7 make on GRIP when left-stop { J1:22 J1:23 }", ReadSwitch)),
        new("reed", new("reed S10 make on DOOR when open { J1:22 J1:23 }", ReadSwitch)),
        new("microswitch", new("microswitch S11 changeover on CAM when lifted { COM J1:24 ; NO J1:25 ; NC J1:26 }", ReadSwitch)),
        new("coded", new("coded S12 on WHEEL { common J1:1 ; 1 \"0101\" J1:2 ; 2 \"0011\" J1:3 }", ReadCoded)),
        new("pole", new("pole S8 rotary on GRIP { common J1:26 ; left J1:27 ; right J1:28 }", ReadSwitch)),
        new("poles", new("poles S1..S2 changeover on LEVER { common J1:4 7 ; normal J1:5 8 ; reverse J1:6 9 }", ReadSwitch)),
    ];

    private static ActuatorSyntax? ReadActuator(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        if (reader.Read(ActuatorHead, rest, usage) is not { } head) return null;
        var clauses = reader.Accept(head.Item3, rest, usage);
        var positions = reader.Lines(raw, Position, PositionUsage);
        return new ActuatorSyntax(keyword, head.Item1, head.Item2, clauses, [.. positions], raw.Span)
        {
            Through = head.Item4,
        };
    }

    private static Parser<IEnumerable<WordSyntax>> RowNames => input =>
    {
        var at = Lexemes.Trim(input);
        var length = Characters.ScanName(at.Rest);
        var beginsWithTerminal = (length > 0 && length < at.Rest.Length && at.Rest[length] == ':')
            || at.Rest.StartsWith(ContactSyntax.NotTracedMark, StringComparison.Ordinal);
        return beginsWithTerminal ? Result.Success(Enumerable.Empty<WordSyntax>(), at) : RowNameList(at);
    };

    private static PoleRowSyntax MakeRow(IEnumerable<WordSyntax> names, IEnumerable<ValueSyntax> contacts)
    {
        ImmutableArray<WordSyntax> nameList = [.. names];
        ImmutableArray<ContactSyntax> contactList = [.. contacts.Cast<ContactSyntax>()];
        var start = nameList.IsEmpty ? contactList[0].Span.Start : nameList[0].Span.Start;
        var end = contactList.IsEmpty ? nameList[^1].Span.End : contactList[^1].Span.End;
        return new PoleRowSyntax(nameList, contactList, TextSpan.FromBounds(start, end));
    }

    private static SwitchSyntax? ReadSwitch(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        if (reader.Read(SwitchHeadParser, rest, usage) is not { } head) return null;
        var clauses = reader.Accept(head.Run, rest, usage);
        var when = clauses.Where(c => c.Keyword == "when").SelectMany(c => c.All<ContactSyntax>()).Select(c => c.From);
        var rows = reader.Lines(raw, PoleRow, usage);
        return new SwitchSyntax(
            keyword, head.First, head.Last, head.Description, head.Form, head.Actuator, [.. when], clauses, rows, raw.Span)
        {
            LastActuator = head.LastActuator,
        };
    }

    private static SwitchSyntax? ReadCoded(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        if (reader.Read(CodedHead, rest, usage) is not { } head) return null;
        var clauses = reader.Accept(head.Run, rest, usage);
        var rows = reader.Lines(raw, CodedRow, usage);
        return new SwitchSyntax(keyword, head.First, head.Last, head.Description, keyword, head.Actuator, [], clauses, rows, raw.Span);
    }

    private sealed record SwitchHead(
        WordSyntax First, WordSyntax? Last, WordSyntax? Description, WordSyntax Form, WordSyntax Actuator, ClauseRun Run)
    {
        public WordSyntax? LastActuator { get; init; }
    }
}
