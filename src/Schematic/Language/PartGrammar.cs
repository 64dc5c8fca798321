using Schematic.Text;
using Sprache;

namespace Schematic.Language;

/// <summary>Connectors and devices: a designator, a description, ratings, a block.</summary>
internal static class PartGrammar
{
    private static readonly ClauseSet Buying = new ClauseSet().WithPurchase();

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

    private static readonly ClauseSet Light = new ClauseSet().Quantities("a rating").Colours().WithPurchase();

    private static readonly ClauseSet Coil = new ClauseSet().Quantities("a rating").WithPurchase()
        .WithOne("operates", s => s.Quantity).WithOne("releases", s => s.Quantity).WithOne("max", s => s.Quantity)
        .Flags("suppressed");

    private static IEnumerable<ValueSyntax> OneOrNone(ValueSyntax? value) => value is null ? [] : [value];

    private static readonly ClauseSet RelayCoil = new ClauseSet().Quantities("a rating").WithPurchase()
        .WithOne("operates", s => s.Quantity).WithOne("releases", s => s.Quantity).WithOne("max", s => s.Quantity)
        .Flags("suppressed").With("rated", s => s.Quantity.AtLeastOnce())
        .With("on-delay", s => s.QuantityRange.XOr(Parse.Return<ValueSyntax>(null!)).Select(OneOrNone))
        .With("off-delay", s => s.QuantityRange.XOr(Parse.Return<ValueSyntax>(null!)).Select(OneOrNone));

    private static readonly ClauseSet Rated = new ClauseSet().Quantities("a rating").WithPurchase();

    private static readonly ClauseSet ResistorRating = new ClauseSet().Ranges("a rating").LetterCodes().WithPurchase().Flags("varies");

    private static readonly ClauseSet TrackRating = new ClauseSet().Quantities("a rating").LetterCodes().WithPurchase()
        .WithOne("wiper", s => s.QuantityRange);

    private static readonly ClauseSet ThermistorRating = new ClauseSet().Ranges("a rating").LetterCodes().WithPurchase()
        .WithOne("beta", s => s.Quantity).WithOne("over", s => s.QuantityRange);

    private static readonly ClauseSet LightRating = new ClauseSet().Ranges("a rating").WithPurchase()
        .WithOne("dark", s => s.Quantity).WithOne("lit", s => s.Quantity);

    private static readonly ClauseSet DiodeRating = new ClauseSet().Quantities("a rating").WithPurchase()
        .WithOne("drop", s => s.Quantity);

    private static readonly ClauseSet TransformerRating = new ClauseSet().Quantities("a rating").WithPurchase()
        .WithOne("secondary", s => s.Quantity);

    private static readonly ClauseSet TransistorRating = new ClauseSet().Quantities("a rating").WithPurchase()
        .WithOne("saturates", s => s.Quantity);

    private static readonly ClauseSet CouplerRating = new ClauseSet().Quantities("a rating").WithPurchase()
        .With("output", s => s.Quantity.AtLeastOnce()).WithOne("saturates", s => s.Quantity);

    private static readonly ClauseSet ConsumerRating = new ClauseSet().Quantities("a rating").WithPurchase()
        .WithOne("operates", s => s.Quantity).WithOne("max", s => s.Quantity);

    private static readonly ClauseSet CapacitorRating = new ClauseSet().Quantities("a rating").WithPurchase().Flags("polarised");

    private static readonly ClauseSet FuseRating = new ClauseSet().Quantities("a rating").WithPurchase().Flags("slow");

    private static readonly ClauseSet SupplyRating = new ClauseSet().Quantities("a voltage").WithPurchase()
        .WithOne("adjustable", s => s.QuantityRange).WithOne("limit", s => s.Quantity).WithOne("source", s => s.Quantity)
        .Flags("alternating", "switched");

    private static readonly ClauseSet Terminals = new ClauseSet().ContactsAlone("a terminal such as J1:5");

    /// <summary>The word behind a contact set of a relay that joins its throws for a moment.</summary>
    public const string RelayBridges = "make-before-break";

    private static readonly ClauseSet RelayBlock = new ClauseSet()
        .With("coil", s => s.Contacts).With("make", s => s.Contacts.OrNone()).With("break", s => s.Contacts.OrNone())
        .With("changeover", s => s.Contacts.OrNone()).With("delayed-make", s => s.Contacts.OrNone())
        .With("delayed-break", s => s.Contacts.OrNone()).With("delayed-changeover", s => s.Contacts.OrNone())
        .Flags(RelayBridges);

    private static readonly Parser<ValueSyntax> OwnTerminal = Lexemes.Contact.Select(w => (ValueSyntax)new ContactSyntax(null, w, null, w.Span));

    private static Parser<IEnumerable<ValueSyntax>> PairWithFigures(ClauseSet set) =>
        from one in OwnTerminal
        from other in OwnTerminal
        from figures in set.QuantityRange.Many()
        select (IEnumerable<ValueSyntax>)[one, other, .. figures];

    private static readonly ClauseSet DeviceBlock = new ClauseSet()
        .With("terminals", s => s.Names).With("contacts", s => s.Contacts)
        .With("ohms", PairWithFigures).With("winding", PairWithFigures).With("diode", PairWithFigures)
        .With("coil", PairWithFigures).WithOne("operates", s => s.Quantity).WithOne("releases", s => s.Quantity).WithOne("max", s => s.Quantity)
        .Flags("suppressed").With("joined", s => s.Names).WithOne("when", _ => Conditions.Condition.Select(c => (ValueSyntax)new ConditionValueSyntax(c)))
        .With("open", s => s.Names).With("limit", PairWithFigures);

    private static readonly ClauseSet SynchroRating = new ClauseSet().Quantities("a voltage").WithPurchase()
        .WithOne("rotor", s => s.Quantity).WithOne("stator", s => s.Quantity);

    private static readonly ClauseSet BoardBlock = new ClauseSet()
        .With("inputs", s => s.Names).WithOne("max", s => s.Quantity)
        .With("pull-up", s => s.Quantity.AtLeastOnce()).WithOne("pull-down", s => s.Quantity)
        .WithOne("low", s => s.Quantity).WithOne("high", s => s.Quantity)
        .With("ground", s => s.Names).With("meaning", _ => Meaning);

    private static readonly ClauseSet KeypadRating = new ClauseSet().WithPurchase().With("rated", s => s.Quantity.AtLeastOnce());

    private static readonly ClauseSet KeypadBlock = new ClauseSet()
        .With("keys", s => s.Names).With("rows", s => s.Contacts).With("columns", s => s.Contacts);

    private static readonly ClauseSet StripBlock = new ClauseSet().ContactsAlone("terminal names such as 1..12")
        .With("jumper", s => s.Names).With("spare", s => s.Names).With("not-traced", s => s.Names).WithOne("wires", _ => Lexemes.Number);

    private static readonly ClauseSet ConnectorBlock = DeclareConnectorBlock();

    /// <summary>The forms of these statements.</summary>
    public static IEnumerable<KeyValuePair<string, StatementForm>> Forms()
    {
        var forms = new List<KeyValuePair<string, StatementForm>>();
        void Add(string word, string usage, ClauseSet head, ClauseSet? block) =>
            forms.Add(new(word, new(usage, Part(head, block))));
        Add("connector", "connector J1 \"lever unit\" { pins  spiral 37  key top }", Buying, ConnectorBlock);
        Add("lamp", "lamp DS1 28 V 40 mA { J1:2 J1:3 }", Light, Terminals);
        Add("led", "led D5 2.0 V 20 mA green { J1:2 J1:3 }", Light, Terminals);
        Add("solenoid", "solenoid L1 28 V 0.7 A operates 20 V { J1:24 J1:25 }", Coil, Terminals);
        Add("relay", "relay K1 24 V 30 mA operates 18 V { coil X1:1 X1:2 ; changeover X1:3 X1:4 X1:5 }", RelayCoil, RelayBlock);
        Add("resistor", "resistor R1 120 ohm 0.5 W", ResistorRating, Terminals);
        Add("rectifier", "rectifier BR1 1.5 A 400 V { J1:2 J1:3 J1:4 J1:5 }", DiodeRating, Terminals);
        Add("transformer", "transformer T1 230 V secondary 24 V 50 VA { J1:2 J1:3 J1:4 J1:5 }", TransformerRating, Terminals);
        Add("transistor", "transistor Q1 30 V 100 mA { J1:2 J1:3 }", TransistorRating, Terminals);
        Add("optocoupler", "optocoupler U1 1.2 V 10 mA output 30 V 50 mA { J1:2 J1:3 J1:4 J1:5 }", CouplerRating, Terminals);
        Add("thermistor", "thermistor RT1 10 kohm beta 3950 K over -20..60 degC { J1:2 J1:3 }", ThermistorRating, Terminals);
        Add("photoresistor", "photoresistor RL1 dark 1 Mohm lit 5 kohm { J1:2 J1:3 }", LightRating, Terminals);
        Add("rheostat", "rheostat RP2 100 ohm 25 W { J1:2 J1:3 }", TrackRating, Terminals);
        Add("potentiometer", "potentiometer RP1 10 kohm 0.5 W { J1:2 J1:3 J1:4 }", TrackRating, Terminals);
        Add("diode", "diode D1 1 A 400 V", DiodeRating, Terminals);
        Add("motor", "motor M1 24 V 2 A operates 18 V { J1:2 J1:3 }", ConsumerRating, Terminals);
        Add("bell", "bell HA1 12 V 0.5 A { J1:2 J1:3 }", ConsumerRating, Terminals);
        Add("buzzer", "buzzer HA2 24 V 30 mA { J1:2 J1:3 }", ConsumerRating, Terminals);
        Add("heater", "heater EH1 24 V 50 W { J1:2 J1:3 }", ConsumerRating, Terminals);
        Add("meter", "meter P1 1 mA 100 ohm { J1:2 J1:3 }", ConsumerRating, Terminals);
        Add("capacitor", "capacitor C1 100 uF 50 V polarised", CapacitorRating, Terminals);
        Add("suppressor", "suppressor RV1 39 V", Rated, Terminals);
        Add("device", "device U1 \"flasher\" { terminals 1 2 3 ; ohms 1 2 120 ohm ; joined 2 3 when LEVER reverse ; open rest }", Buying, DeviceBlock);
        Add("synchro", "synchro B1 26 V rotor 40 ohm stator 30 ohm { J1:1 J1:2 J1:3 J1:4 J1:5 }", SynchroRating, Terminals);
        Add("fuse", "fuse F1 1 A slow", FuseRating, Terminals);
        Add("breaker", "breaker CB1 3 A", Rated, Terminals);
        Add("supply", "supply PS1 24 V adjustable 22..29 V limit 3 A { + - }", SupplyRating, Terminals);
        Add("board", "board A1 { inputs IN1..IN16 max 5.5 V pull-up 5 V 10 kohm ; ground GND }", Buying, BoardBlock);
        Add("keypad", "keypad KB1 { keys 1 2 3 ; keys 4 5 6 ; rows J1:1..2 ; columns J1:3..5 }", KeypadRating, KeypadBlock);
        Add("splice", "splice SP1 { J1:5 J1:6 }", Buying, Terminals);
        Add("terminals", "terminals X1 { 1..12 ; jumper 1 2 3 ; spare 12 }", Buying, StripBlock);
        return forms;
    }

    private static ClauseSet DeclareConnectorBlock() => new ClauseSet()
        .Flags("pins", "sockets", "solder", "crimp", "screw", "clamp", "letters", "clockwise", "counter-clockwise", "staggered")
        .Flags("zigzag", "by-rows", "by-columns", "around", "d-shape", "centre", "on-hand")
        .WithOne("insert", _ => Lexemes.Contact).WithOne("spiral", _ => Lexemes.Number).WithOne("ring", _ => Lexemes.Number)
        .With("rows", _ => Lexemes.Number.AtLeastOnce()).With("grid", _ => Grid).WithOne("strip", s => s.Quantity)
        .With("rings", _ => Lexemes.Number.AtLeastOnce()).With("start", _ => Lexemes.Number.AtLeastOnce())
        .WithOne("from", _ => Lexemes.OneOf("centre", "rim", "upper-left", "upper-right", "lower-left", "lower-right"))
        .With("on", _ => Face).WithOne("arc", _ => Lexemes.Number)
        .With("order", s => Lexemes.String.Select(t => (IEnumerable<ValueSyntax>)[t]).XOr(s.Names))
        .WithOne("radius", s => s.Quantity).With("radii", s => s.Quantity.AtLeastOnce())
        .WithOne("pitch", s => s.Quantity).WithOne("gap", s => s.Quantity)
        .With("names", s => s.Names).With("spare", s => s.Names).With("not-traced", s => s.Names).WithOne("mates", _ => Lexemes.Name)
        .WithOne("key", _ => Lexemes.OneOf("top", "right", "bottom", "left").Select(w => (ValueSyntax)w).Or(Lexemes.Number))
        .With("size", SizeValue)
        .With("price", _ => SharedGrammar.Price).WithOne("spares", _ => Lexemes.Number)
        .With("cutout", Cutout).With("flange", Flange).WithOne("source", _ => Lexemes.String)
        .WithBlock("positions", PositionLine)
        .Synonyms("clockwise", "cw").Synonyms("counter-clockwise", "anticlockwise", "anti-clockwise", "counterclockwise", "ccw", "acw")
        .Synonyms("centre", "center").Synonyms("crimp", "crimped").Synonyms("solder", "soldered", "solder-cup")
        .Synonyms("pins", "pin", "male").Synonyms("sockets", "socket", "female");

    private static Parser<IEnumerable<ValueSyntax>> SizeValue(ClauseSet set) =>
        from size in Lexemes.Contact
        from contacts in (from colon in Lexemes.Sign(":") from names in set.Names select names).XOr(Parse.Return(Enumerable.Empty<ContactSyntax>()))
        select (IEnumerable<ValueSyntax>)[size, .. contacts];

    private static Parser<ClauseSyntax> PositionLine(ClauseSet set) =>
        from name in Lexemes.Contact
        from x in set.Quantity
        from y in set.Quantity
        select new ClauseSyntax("position", [name, x, y], TextSpan.FromBounds(name.Span.Start, y.Span.End));

    private static Func<RawStatement, WordSyntax, TextSpan, StatementReader, string, StatementSyntax?> Part(
        ClauseSet headSet, ClauseSet? blockSet)
    {
        var parser =
            from designator in Lexemes.SimpleName
            from last in SharedGrammar.Through(Lexemes.SimpleName)
            from description in Lexemes.String.Maybe()
            from run in (Parser<ClauseRun>)headSet.Run
            select Tuple.Create(designator, description, run, last);
        return (raw, keyword, rest, reader, usage) =>
        {
            if (blockSet is null) reader.RefuseBlock(raw, usage);
            if (reader.Read(parser, rest, usage) is not { } head) return null;
            var clauses = reader.Accept(head.Item3, rest, usage);
            var block = blockSet is null ? [] : reader.Block(raw, blockSet, usage);
            return new PartSyntax(keyword, head.Item1, head.Item2, clauses, block, raw.Span) { Through = head.Item4 };
        };
    }
}
