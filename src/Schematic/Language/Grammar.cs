using System.Collections.Frozen;
using System.Collections.Immutable;
using Schematic.Text;
using Sprache;

namespace Schematic.Language;

/// <summary>The grammar: for each keyword the form of its statement. Leaves stand in <see cref="Lexemes"/>.</summary>
internal static class Grammar
{
    private static readonly string[] SettingWords =
        ["title", "number", "revision", "date", "owner", "drawn", "approved"];

    private static readonly Parser<ClauseRun> Nothing = Parse.Return(ClauseRun.Empty);

    private static readonly Parser<IEnumerable<ContactSyntax>> AnyContacts = ContactLists.UntilKeyword(_ => false);

    private static readonly Parser<WordSyntax> Currency = input =>
    {
        var at = Lexemes.Trim(input);
        var length = Characters.ScanContact(at.Rest);
        var isCode = length == 3 && !at.Rest[..3].ContainsAnyExceptInRange('A', 'Z');
        return isCode ? Lexemes.Contact(at) : Result.Failure<WordSyntax>(at, "", ["a currency code such as EUR"]);
    };

    private static readonly Parser<IEnumerable<ValueSyntax>> Price =
        from amount in Lexemes.Number
        from currency in Currency.Maybe()
        select currency is null ? (IEnumerable<ValueSyntax>)[amount] : [amount, currency];

    private static readonly Parser<IEnumerable<ValueSyntax>> Face =
        from side in Lexemes.OneOf("front", "rear")
        from of in Lexemes.Keyword("of")
        from half in Lexemes.OneOf("pins", "sockets")
        select (IEnumerable<ValueSyntax>)[side, half];

    private static readonly Parser<IEnumerable<ValueSyntax>> Grid =
        from columns in Lexemes.Number
        from word in Lexemes.Keyword("by")
        from rows in Lexemes.Number
        select (IEnumerable<ValueSyntax>)[columns, rows];

    private static Parser<IEnumerable<ValueSyntax>> Cutout(ClauseSet set) =>
        from width in set.Quantity
        from height in By(set)
        select (IEnumerable<ValueSyntax>)[width, .. height];

    private static Parser<IEnumerable<ValueSyntax>> Flange(ClauseSet set) =>
        from count in Lexemes.Number
        from holes in Lexemes.Keyword("holes")
        from diameter in set.Quantity
        from word in Lexemes.Keyword("on")
        from across in set.Quantity
        from along in By(set)
        select (IEnumerable<ValueSyntax>)[count, diameter, across, .. along];

    private static Parser<IEnumerable<ValueSyntax>> By(ClauseSet set) =>
        (from word in Lexemes.Keyword("by") from value in set.Quantity select (IEnumerable<ValueSyntax>)[value])
            .XOr(Parse.Return(Enumerable.Empty<ValueSyntax>()));

    private static readonly Parser<IEnumerable<ValueSyntax>> Meaning =
        from input in Lexemes.Contact
        from text in Lexemes.String
        select (IEnumerable<ValueSyntax>)[input, text];

    private static readonly Parser<IEnumerable<ValueSyntax>> SheetValue =
        from size in Lexemes.Contact
        from orientation in Lexemes.OneOf("landscape", "portrait").Maybe()
        select orientation is null ? (IEnumerable<ValueSyntax>)[size] : [size, orientation];

    private static readonly ClauseSet Settings = SettingWords
        .Aggregate(new ClauseSet(), (set, word) => set.WithOne(word, _ => Lexemes.StringOrBare))
        .With("sheet", _ => SheetValue)
        .WithOne("symbols", _ => Lexemes.OneOf("iec", "ieee"))
        .WithOne("build", _ => Lexemes.Number)
        .WithOne("caution", _ => Lexemes.String)
        .WithOne("note", _ => Lexemes.String);

    private static readonly ClauseSet Limits = new ClauseSet()
        .WithOne("drop", s => s.Quantity).WithOne("ambient", s => s.Quantity).WithOne("insulation", s => s.Quantity)
        .WithOne("bundle", _ => Lexemes.Number);

    private static readonly ClauseSet Buying = Purchase(new ClauseSet());

    private static readonly ClauseSet Light = Purchase(new ClauseSet().Quantities("a rating").Colours());

    private static readonly ClauseSet Coil = Purchase(new ClauseSet().Quantities("a rating"))
        .WithOne("operates", s => s.Quantity).WithOne("releases", s => s.Quantity).WithOne("max", s => s.Quantity)
        .Flags("suppressed");

    private static readonly ClauseSet RelayCoil = Purchase(new ClauseSet().Quantities("a rating"))
        .WithOne("operates", s => s.Quantity).WithOne("releases", s => s.Quantity).WithOne("max", s => s.Quantity)
        .Flags("suppressed").With("rated", s => s.Quantity.AtLeastOnce());

    private static readonly ClauseSet Rated = Purchase(new ClauseSet().Quantities("a rating"));

    private static readonly ClauseSet DiodeRating = Purchase(new ClauseSet().Quantities("a rating"))
        .WithOne("drop", s => s.Quantity);

    private static readonly ClauseSet FuseRating = Purchase(new ClauseSet().Quantities("a rating")).Flags("slow");

    private static readonly ClauseSet SupplyRating = Purchase(new ClauseSet().Quantities("a voltage"))
        .WithOne("adjustable", s => s.QuantityRange).WithOne("limit", s => s.Quantity).WithOne("source", s => s.Quantity)
        .Flags("alternating");

    private static readonly ClauseSet Switching = Purchase(new ClauseSet())
        .With("when", s => s.Names).With("rated", s => s.Quantity.AtLeastOnce()).Flags("make-before-break");

    private static readonly ClauseSet Terminals = new ClauseSet().ContactsAlone("a terminal such as J1:5");

    private static readonly ClauseSet RelayBlock = new ClauseSet()
        .With("coil", s => s.Contacts).With("make", s => OrNone(s.Contacts)).With("break", s => OrNone(s.Contacts))
        .With("changeover", s => OrNone(s.Contacts));

    private static readonly ClauseSet BoardBlock = new ClauseSet()
        .With("inputs", s => s.Names).WithOne("max", s => s.Quantity)
        .With("pull-up", s => s.Quantity.AtLeastOnce()).WithOne("pull-down", s => s.Quantity)
        .WithOne("low", s => s.Quantity).WithOne("high", s => s.Quantity)
        .With("ground", s => s.Names).With("meaning", _ => Meaning);

    private static readonly ClauseSet StripBlock = new ClauseSet().ContactsAlone("terminal names such as 1..12")
        .With("jumper", s => s.Names).With("spare", s => s.Names).WithOne("wires", _ => Lexemes.Number);

    private static readonly ClauseSet ConnectorBlock = DeclareConnectorBlock();

    private static readonly ClauseSet WireData = new ClauseSet()
        .Quantities("a gauge or a length").Colours().UpToTerminals();

    private static readonly ClauseSet PlaceData = new ClauseSet()
        .Flags("left", "right", "top", "bottom").WithOne("sheet", _ => Lexemes.Number);

    /// <summary>The names that a statement of any kind seems to declare: its second word, or a range of names.</summary>
    public static readonly Parser<(WordSyntax First, WordSyntax? Last)> DeclaredNames =
        from first in Lexemes.Contact
        from last in (from dots in Lexemes.Sign("..") from name in Lexemes.Contact select name).Maybe()
        select (first, last);

    /// <summary>The form of each statement by its keyword.</summary>
    public static readonly FrozenDictionary<string, StatementForm> Forms = DeclareForms();

    private static ClauseSet Purchase(ClauseSet set) => set
        .With("price", _ => Price).WithOne("order", _ => Lexemes.String).WithOne("spares", _ => Lexemes.Number).Flags("on-hand");

    private static Parser<IEnumerable<ValueSyntax>> OrNone(Parser<IEnumerable<ContactSyntax>> contacts) =>
        contacts.Select(c => (IEnumerable<ValueSyntax>)c).XOr(Parse.Return(Enumerable.Empty<ValueSyntax>()));

    private static ClauseSet DeclareConnectorBlock() => new ClauseSet()
        .Flags("pins", "sockets", "solder", "crimp", "screw", "clamp", "letters", "clockwise", "counter-clockwise", "staggered")
        .Flags("zigzag", "by-rows", "by-columns", "around", "d-shape", "centre", "on-hand")
        .WithOne("spiral", _ => Lexemes.Number).WithOne("ring", _ => Lexemes.Number)
        .With("rows", _ => Lexemes.Number.AtLeastOnce()).With("grid", _ => Grid).WithOne("strip", s => s.Quantity)
        .With("rings", _ => Lexemes.Number.AtLeastOnce()).With("start", _ => Lexemes.Number.AtLeastOnce())
        .WithOne("from", _ => Lexemes.OneOf("centre", "rim", "upper-left", "upper-right", "lower-left", "lower-right"))
        .With("on", _ => Face).WithOne("arc", _ => Lexemes.Number)
        .With("order", s => Lexemes.String.Select(t => (IEnumerable<ValueSyntax>)[t]).XOr(s.Names))
        .WithOne("radius", s => s.Quantity).With("radii", s => s.Quantity.AtLeastOnce())
        .WithOne("pitch", s => s.Quantity).WithOne("gap", s => s.Quantity)
        .With("names", s => s.Names).With("spare", s => s.Names).WithOne("mates", _ => Lexemes.Name)
        .WithOne("key", _ => Lexemes.OneOf("top", "right", "bottom", "left").Select(w => (ValueSyntax)w).Or(Lexemes.Number))
        .With("size", SizeValue)
        .With("price", _ => Price).WithOne("spares", _ => Lexemes.Number)
        .With("cutout", Cutout).With("flange", Flange).WithOne("source", _ => Lexemes.String)
        .WithBlock("positions", PositionLine);

    private static Parser<IEnumerable<ValueSyntax>> SizeValue(ClauseSet set) =>
        from size in Lexemes.Contact
        from contacts in (from colon in Lexemes.Sign(":") from names in set.Names select names).XOr(Parse.Return(Enumerable.Empty<ContactSyntax>()))
        select (IEnumerable<ValueSyntax>)[size, .. contacts];

    private static Parser<ClauseSyntax> PositionLine(ClauseSet set) =>
        from name in Lexemes.Contact
        from x in set.Quantity
        from y in set.Quantity
        select new ClauseSyntax("position", [name, x, y], TextSpan.FromBounds(name.Span.Start, y.Span.End));

    private static FrozenDictionary<string, StatementForm> DeclareForms()
    {
        var forms = new Dictionary<string, StatementForm>(StringComparer.Ordinal);
        foreach (var word in Settings.Keywords) forms.Add(word, new(UsageOfSetting(word), ReadSettings));
        forms.Add("limits", new("limits { drop 1 V  ambient 30 degC  insulation 105 degC  bundle 12 }", ReadLimits));
        forms.Add("use", new("use \"lever-unit.panel\" as UNIT", ReadUse));
        DeclareParts(forms);
        DeclareSwitching(forms);
        forms.Add("net", new("net RTN PS1:- A1:GND P1:4", ReadNet));
        forms.Add("wire", new("wire W1 22 AWG black 450 mm PS1:- -> P1:4", ReadWire));
        forms.Add("cable", new("cable C1 12 m { core 1 brown 0.75 mm2 X1:1 -> X2:1 ; screen X1:12 }", ReadCable));
        forms.Add("expect", new("expect A1:IN1 low when LEVER reverse", ReadExpect));
        forms.Add("never", new("never PS1:+ reaches A1:IN1..IN16", ReadNever));
        forms.Add("place", new("place A1 right sheet 1", ReadPlace));
        forms.Add("alternative", new("alternative P1 \"plug, cleaned\" price 12.00 EUR", ReadAlternative));
        return forms.ToFrozenDictionary(StringComparer.Ordinal);
    }

    private static string UsageOfSetting(string word) => word switch
    {
        "sheet" => "sheet A4 landscape",
        "symbols" => "symbols iec",
        "build" => "build 2",
        "date" => "date 2026-11-25",
        "number" or "revision" => "number SB-014  revision B",
        _ => $"{word} \"text\"",
    };

    private static void DeclareParts(Dictionary<string, StatementForm> forms)
    {
        void Add(string word, string usage, ClauseSet head, ClauseSet? block) => forms.Add(word, new(usage, Part(head, block)));
        Add("connector", "connector J1 \"lever unit\" { pins  spiral 37  key top }", Buying, ConnectorBlock);
        Add("lamp", "lamp DS1 28 V 40 mA { J1:2 J1:3 }", Light, Terminals);
        Add("led", "led D5 2.0 V 20 mA green { J1:2 J1:3 }", Light, Terminals);
        Add("solenoid", "solenoid L1 28 V 0.7 A operates 20 V { J1:24 J1:25 }", Coil, Terminals);
        Add("relay", "relay K1 24 V 30 mA operates 18 V { coil X1:1 X1:2 ; changeover X1:3 X1:4 X1:5 }", RelayCoil, RelayBlock);
        Add("resistor", "resistor R1 120 ohm 0.5 W", Rated, Terminals);
        Add("diode", "diode D1 1 A 400 V", DiodeRating, Terminals);
        Add("fuse", "fuse F1 1 A slow", FuseRating, Terminals);
        Add("breaker", "breaker CB1 3 A", Rated, Terminals);
        Add("supply", "supply PS1 24 V adjustable 22..29 V limit 3 A { + - }", SupplyRating, Terminals);
        Add("board", "board A1 { inputs IN1..IN16 max 5.5 V pull-up 5 V 10 kohm ; ground GND }", Buying, BoardBlock);
        Add("splice", "splice SP1", Buying, null);
        Add("terminals", "terminals X1 { 1..12 ; jumper 1 2 3 ; spare 12 }", Buying, StripBlock);
    }

    private static void DeclareSwitching(Dictionary<string, StatementForm> forms)
    {
        forms.Add("actuator", new("actuator LEVER { normal rest  check  reverse }", ReadActuator));
        forms.Add("switch", new("switch S7 make on GRIP when left-stop { J1:22 J1:23 }", ReadSwitch));
        forms.Add("pole", new("pole S8 rotary on GRIP { common J1:26 ; left J1:27 ; right J1:28 }", ReadSwitch));
        forms.Add("poles", new(
            "poles S1..S2 changeover on LEVER { common J1:4 7 ; normal J1:5 8 ; reverse J1:6 9 }", ReadSwitch));
        forms.Add("lock", new("lock LEVER at normal unless L1 energised", ReadLock));
    }

    private static SettingSyntax ReadSettings(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.RefuseBlock(raw, usage);
        var run = reader.Read(Settings.Run, raw.Head, usage)!;
        return new SettingSyntax(keyword, reader.Accept(run, raw.Head, usage), raw.Span);
    }

    private static SettingSyntax ReadLimits(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.Read(Nothing, rest, usage);
        return new SettingSyntax(keyword, reader.Block(raw, Limits, usage), raw.Span);
    }

    private static Func<RawStatement, WordSyntax, TextSpan, StatementReader, string, StatementSyntax?> Part(
        ClauseSet headSet, ClauseSet? blockSet)
    {
        var parser =
            from designator in Lexemes.SimpleName
            from description in Lexemes.String.Maybe()
            from run in (Parser<ClauseRun>)headSet.Run
            select Tuple.Create(designator, description, run);
        return (raw, keyword, rest, reader, usage) =>
        {
            if (blockSet is null) reader.RefuseBlock(raw, usage);
            if (reader.Read(parser, rest, usage) is not { } head) return null;
            var clauses = reader.Accept(head.Item3, rest, usage);
            var block = blockSet is null ? [] : reader.Block(raw, blockSet, usage);
            return new PartSyntax(keyword, head.Item1, head.Item2, clauses, block, raw.Span);
        };
    }

    private static readonly Parser<PositionSyntax> Position =
        from name in Lexemes.Contact
        from rest in Lexemes.Keyword("rest").Maybe()
        from springs in (
            from word in Lexemes.Keyword("springs-to")
            from target in Lexemes.Contact
            select target).XOr(Parse.Return<WordSyntax>(null!))
        from restAfter in Lexemes.Keyword("rest").Maybe()
        select new PositionSyntax(name, rest ?? restAfter, springs);

    private static readonly Parser<List<PositionSyntax>> Positions = Position.XMany().Select(p => p.ToList());

    private static readonly Parser<Tuple<WordSyntax, WordSyntax?, WordSyntax?>> ActuatorHead =
        from name in Lexemes.SimpleName
        from description in Lexemes.String.Maybe()
        from endless in Lexemes.Keyword("endless").Maybe()
        select Tuple.Create(name, description, endless);

    private static ActuatorSyntax? ReadActuator(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        if (reader.Read(ActuatorHead, rest, usage) is not { } head) return null;
        var positions = reader.Lines(raw, Positions, usage).SelectMany(p => p);
        return new ActuatorSyntax(keyword, head.Item1, head.Item2, head.Item3 is not null, [.. positions], raw.Span);
    }

    private static readonly Parser<SwitchHead> SwitchHeadParser =
        from names in DeclaredNames
        from description in Lexemes.String.Maybe()
        from form in Lexemes.OneOf("make", "break", "changeover", "rotary")
        from word in Lexemes.Keyword("on")
        from actuator in Lexemes.Name
        from run in (Parser<ClauseRun>)Switching.Run
        select new SwitchHead(names.First, names.Last, description, form, actuator, run);

    private static readonly Parser<PoleRowSyntax> PoleRow =
        from names in RowNames
        from contacts in OrNone(AnyContacts)
        select MakeRow(names, contacts);

    private static Parser<IEnumerable<WordSyntax>> RowNames => input =>
    {
        var at = Lexemes.Trim(input);
        var length = Characters.ScanName(at.Rest);
        var beginsWithTerminal = length > 0 && length < at.Rest.Length && at.Rest[length] == ':';
        return beginsWithTerminal ? Result.Success(Enumerable.Empty<WordSyntax>(), at) : RowNameList(at);
    };

    private static readonly Parser<IEnumerable<WordSyntax>> RowNameList =
        from first in Lexemes.Contact
        from others in (from comma in Lexemes.Sign(",") from name in Lexemes.Contact select name).XMany()
        select others.Prepend(first);

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
            keyword, head.First, head.Last, head.Description, head.Form, head.Actuator, [.. when], clauses, rows, raw.Span);
    }

    private static readonly Parser<LockSyntax> LockBody =
        from actuator in Lexemes.Name
        from at in Lexemes.Keyword("at")
        from positions in ContactLists.BareUntilKeyword(w => w == "unless")
        from unless in Lexemes.Keyword("unless")
        from condition in Conditions.Condition
        select new LockSyntax(actuator, actuator, [.. positions.Select(p => p.From)], condition, default);

    private static LockSyntax? ReadLock(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.RefuseBlock(raw, usage);
        return reader.Read(LockBody, rest, usage) is { } body ? body with { Keyword = keyword, Span = raw.Span } : null;
    }

    private static readonly Parser<Tuple<WordSyntax, IEnumerable<ValueSyntax>>> NetHead =
        from name in Lexemes.Contact
        from members in OrNone(AnyContacts)
        select Tuple.Create(name, members);

    private static NetSyntax? ReadNet(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        if (reader.Read(NetHead, rest, usage) is not { } head) return null;
        var members = head.Item2.Cast<ContactSyntax>().Concat(reader.Lines(raw, AnyContacts, usage).SelectMany(m => m));
        return new NetSyntax(keyword, head.Item1, [.. members], raw.Span);
    }

    private static readonly Parser<Tuple<WordSyntax?, ClauseRun>> WireHead =
        from name in Lexemes.Contact
        from run in (Parser<ClauseRun>)WireData.Run
        select Tuple.Create((WordSyntax?)name, run);

    private static readonly Parser<Tuple<WordSyntax?, ClauseRun>> ScreenHead =
        ((Parser<ClauseRun>)WireData.Run).Select(run => Tuple.Create((WordSyntax?)null, run));

    private static readonly Parser<Tuple<ContactSyntax, ContactSyntax?>> BothEnds =
        from first in ContactLists.Terminal
        from arrow in Lexemes.Sign("->")
        from second in ContactLists.Terminal
        select Tuple.Create(first, (ContactSyntax?)second);

    private static readonly Parser<Tuple<ContactSyntax, ContactSyntax?>> OneOrBothEnds =
        from first in ContactLists.Terminal
        from second in (
            from arrow in Lexemes.Sign("->")
            from terminal in ContactLists.Terminal
            select terminal).XOr(Parse.Return<ContactSyntax>(null!))
        select Tuple.Create(first, (ContactSyntax?)second);

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
        var clauses = reader.Accept(head.Item2, rest, usage);
        var wire = new WireSyntax(keyword, isScreen ? keyword : head.Item1!, clauses, null, null, raw.Span);
        if (ends.Length == 0 && !endsNeeded) return wire;
        var both = reader.Read(isScreen ? OneOrBothEnds : BothEnds, ends, usage);
        return both is null ? wire with { HasErrors = true } : wire with { From = both.Item1, To = both.Item2 };
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

    private static readonly Parser<Tuple<WordSyntax, WordSyntax?, ClauseRun>> CableHead =
        from designator in Lexemes.SimpleName
        from description in Lexemes.String.Maybe()
        from run in (Parser<ClauseRun>)Rated.Run
        select Tuple.Create(designator, description, run);

    private static readonly Parser<WordSyntax> CoreWord = Lexemes.OneOf("core", "screen");

    private static readonly Parser<ConditionSyntax?> When =
        (from word in Lexemes.Keyword("when") from condition in Conditions.Condition select condition)
        .XOr(Parse.Return<ConditionSyntax>(null!));

    private static readonly Parser<ExpectSyntax> Continuity =
        from state in Lexemes.OneOf("closed", "open")
        from word in Lexemes.Keyword("to")
        from other in ContactLists.Terminal
        select new ExpectSyntax(state, null, null, state, other, null, default);

    private static readonly Parser<ExpectSyntax> Level =
        from state in Lexemes.OneOf("low", "high")
        select new ExpectSyntax(state, null, null, state, null, null, default);

    private static readonly Parser<ExpectSyntax> TerminalExpectation =
        from terminal in ContactLists.Terminal
        from body in Level.XOr(Continuity)
        select body with { Terminal = terminal };

    private static readonly Parser<ExpectSyntax> LoadExpectation =
        from part in Lexemes.Name
        from state in Lexemes.OneOf("energised", "released")
        select new ExpectSyntax(part, part, null, state, null, null, default);

    private static readonly Parser<ExpectSyntax> ExpectBody =
        from body in (Parser<ExpectSyntax>)(input =>
            ClauseSet.StandsBeforeTerminal(Lexemes.Trim(input)) ? TerminalExpectation(input) : LoadExpectation(input))
        from condition in When
        select body with { When = condition };

    private static ExpectSyntax? ReadExpect(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.RefuseBlock(raw, usage);
        return reader.Read(ExpectBody, rest, usage) is { } body ? body with { Keyword = keyword, Span = raw.Span } : null;
    }

    private static readonly Parser<NeverSyntax> NeverBody =
        from sources in ContactLists.UntilKeyword(w => w is "reaches" or "when")
        from word in Lexemes.Keyword("reaches")
        from targets in ContactLists.UntilKeyword(w => w == "when")
        from condition in When
        select new NeverSyntax(word, [.. sources], [.. targets], condition, default);

    private static NeverSyntax? ReadNever(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.RefuseBlock(raw, usage);
        return reader.Read(NeverBody, rest, usage) is { } body ? body with { Keyword = keyword, Span = raw.Span } : null;
    }

    private static readonly Parser<Tuple<WordSyntax, ClauseRun>> PlaceBody =
        from part in Lexemes.Name
        from run in (Parser<ClauseRun>)PlaceData.Run
        select Tuple.Create(part, run);

    private static PlaceSyntax? ReadPlace(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.RefuseBlock(raw, usage);
        return reader.Read(PlaceBody, rest, usage) is { } body
            ? new PlaceSyntax(keyword, body.Item1, reader.Accept(body.Item2, rest, usage), raw.Span)
            : null;
    }

    private static readonly Parser<UseSyntax> UseBody =
        from path in Lexemes.String
        from word in Lexemes.Keyword("as")
        from name in Lexemes.SimpleName
        select new UseSyntax(word, path, name, default);

    private static UseSyntax? ReadUse(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.RefuseBlock(raw, usage);
        return reader.Read(UseBody, rest, usage) is { } body ? body with { Keyword = keyword, Span = raw.Span } : null;
    }

    private static readonly Parser<Tuple<WordSyntax, WordSyntax, ClauseRun>> AlternativeBody =
        from part in Lexemes.Name
        from order in Lexemes.String
        from run in (Parser<ClauseRun>)Buying.Run
        select Tuple.Create(part, order, run);

    private static AlternativeSyntax? ReadAlternative(
        RawStatement raw, WordSyntax keyword, TextSpan rest, StatementReader reader, string usage)
    {
        reader.RefuseBlock(raw, usage);
        return reader.Read(AlternativeBody, rest, usage) is { } body
            ? new AlternativeSyntax(keyword, body.Item1, body.Item2, reader.Accept(body.Item3, rest, usage), raw.Span)
            : null;
    }

    private sealed record SwitchHead(
        WordSyntax First, WordSyntax? Last, WordSyntax? Description, WordSyntax Form, WordSyntax Actuator, ClauseRun Run);
}
