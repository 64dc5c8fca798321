using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.Positions;
using Schematic.Analysis.States;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Reports;

/// <summary>
/// What is closed in which position: a table for each actuator with its contacts, and with the inputs and loads that change
/// with it; one more for the relays. Proved over all states that can be reached.
/// </summary>
public static class ContactChart
{
    /// <summary>The word of a closed contact.</summary>
    public const string Closed = "CLOSED";

    /// <summary>The word of an open contact.</summary>
    public const string Open = "open";

    // The columns before those of the positions.
    private const int Names = 2;

    /// <summary>The cell of a position in which nobody has traced the contact.</summary>
    public const string Unknown = "?";

    private const string NotReached = "not reached";
    private const string Either = " / ";

    private const string PositionsNote = "Positions stand in mechanical order. Two words in a cell: other actuators or relays decide.";
    private const string HoldNote = "hold: it springs back from there when let go.";

    /// <summary>The tables that have rows.</summary>
    public static ImmutableArray<ReportTable> Build(AnalysisContext context)
    {
        var proof = context.Positions;
        ReportTable[] tables = [.. context.Panel.Actuators.Where(a => a.Keypad is null).Select(a => OfActuator(context, proof, a)), .. context.Panel.Parts.OfType<Keypad>().Select(k => OfKeypad(context, proof, k)), OfRelays(context, proof)];
        return [.. tables.Where(t => !t.Rows.IsEmpty)];
    }

    /// <summary>What a pack draws as bars: how to read them is said once, and the combinations that matter in words.</summary>
    public static ImmutableArray<ReportTable> BuildPrinted(AnalysisContext context)
    {
        var combinations = new ContactCombinations(context);
        ReportTable WithWords(ReportTable whole, Actuator? actuator)
        {
            // A chart of which no row would be left is printed whole: left out altogether it would be missed.
            var table = whole.Rows.Any(Tells) ? whole with { Rows = [.. whole.Rows.Where(Tells)], Notes = [.. Alike(whole), .. whole.Notes] } : whole;
            return table with { Notes = [.. actuator is null ? [] : combinations.Of(actuator), .. table.Notes.Where(n => n is not (PositionsNote or HoldNote))] };
        }

        var proof = context.Positions;
        ReportTable[] tables =
        [
            .. context.Panel.Actuators.Where(a => a.Keypad is null).Select(a => WithWords(OfActuator(context, proof, a), a)),
            .. context.Panel.Parts.OfType<Keypad>().Select(k => WithWords(OfKeypad(context, proof, k), null)),
            WithWords(OfRelays(context, proof), null),
        ];
        var shown = tables.Where(t => !t.Rows.IsEmpty).ToList();
        return [.. shown.Select((t, i) => i == 0 ? t with { Notes = [Legend(context.Panel, shown), .. t.Notes] } : t)];
    }

    /// <summary>How to read the bars that are there.</summary>
    private static string Legend(Panel panel, List<ReportTable> tables) => string.Join(' ', new[]
    {
        "Black: closed, ON or low as written. Nothing: open, off, high.",
        tables.Exists(t => t.Rows.Any(r => r.Skip(Names).Any(c => c.Contains(Either, StringComparison.Ordinal)))) ? "Outlined: other actuators or relays decide." : "",
        panel.Actuators.IsEmpty ? "" : "Positions in mechanical order.",
        panel.Actuators.Any(a => a.Positions.Any(p => p.IsMomentary)) || panel.Parts.Any(p => p is Keypad) ? "hold: it springs back when let go." : "",
    }.Where(w => w.Length > 0));

    /// <summary>Whether a row differs between positions that are reached: nothing else has to be looked up.</summary>
    private static bool Tells(ImmutableArray<string> row) => row.Contains(Open) || row.Contains(Closed) || row.Contains(Unknown)
        || row.Skip(Names).Where(c => c != NotReached).Distinct().Count() > 1;

    /// <summary>What is said of the rows that do not tell a position from another.</summary>
    private static IEnumerable<string> Alike(ReportTable table)
    {
        var alike = table.Rows.Where(r => !Tells(r)).ToList();
        if (alike.Count == 0) yield break;
        var missed = table.Columns.Skip(Names).Where((_, i) => alike.TrueForAll(r => r[Names + i] == NotReached)).Select(c => c.Header).ToList();
        var where = missed.Count == 0 ? "" : $"; never reached with the supplies on: {NameList.Sentence(missed)}";
        yield return $"Left out: {Figures.Count(alike.Count)} inputs and loads that are alike in all positions that are reached{where}.";
    }

    private static ReportTable OfActuator(AnalysisContext context, PositionProof proof, Actuator actuator)
    {
        ImmutableArray<Diagram> positions =
            [.. actuator.Positions.Select(p => proof.Circuit.Compile(new PositionCondition(actuator.Name, [p.Name], SourceSpan.None)))];
        var title = actuator.Description.Length == 0 ? actuator.Name : $"{actuator.Name}, {actuator.Description}";
        var working = proof.Working;
        ImmutableArray<Diagram> atWork = [.. positions.Select(p => proof.Circuit.Store.And(p, working))];
        return new ReportTable(
            $"Contact chart: {title}",
            [
                new("contacts", "Contacts"),
                new("device", "Device"),
                .. actuator.Positions.Select(p => new ReportColumn(KeyOf(p.Name), HeaderOf(p), ColumnAlign.Centre)),
            ],
            [.. SwitchRows(context, proof, actuator, positions), .. InputRows(proof, atWork), .. LoadRows(proof, atWork)])
        {
            Notes = [.. NotesOf(context.Panel, actuator)],
        };
    }

    private static IEnumerable<ImmutableArray<string>> SwitchRows(
        AnalysisContext context, PositionProof proof, Actuator actuator, ImmutableArray<Diagram> positions) =>
        from contact in proof.Circuit.Circuit.Contacts
        where contact.Part is Switch s && s.Actuator == actuator.Name
        let closed = proof.Circuit.Closed(contact)
        select (ImmutableArray<string>)
        [
            PairOf(context, contact), NameOf(contact),
            .. positions.Select(p => contact.When is UntracedCondition ? Unknown : proof.Circuit.Store.And(p, closed).IsNever ? Open : Closed),
        ];

    /// <summary>Inputs that do not read the same in all positions of the actuator.</summary>
    private static IEnumerable<ImmutableArray<string>> InputRows(PositionProof proof, ImmutableArray<Diagram> atWork)
    {
        foreach (var input in proof.Circuit.Circuit.Inputs.Where(i => i.GroundNode >= 0))
        {
            var (low, high) = (proof.Circuit.Reads(input, InputLevel.Low), proof.Circuit.Reads(input, InputLevel.High));
            var held = proof.Circuit.Where(proof.Circuit.CasesOf(input), c => c.Volts is not null);
            var floating = proof.Circuit.Store.Not(held);
            var between = proof.Circuit.Store.AndNot(held, proof.Circuit.Store.Or(low, high));
            var cells = Cells(proof, atWork, ("low", low), ("high", high), ("floats", floating), ("between", between));
            if (cells.Distinct().Count() > 1) yield return [input.Terminal.ToString(), input.Input.Meaning, .. cells];
        }
    }

    /// <summary>Loads that are not the same in all positions of the actuator.</summary>
    private static IEnumerable<ImmutableArray<string>> LoadRows(PositionProof proof, ImmutableArray<Diagram> atWork)
    {
        foreach (var load in proof.Circuit.Circuit.Loads)
        {
            var energised = proof.Circuit.Energised(load);
            var cells = Cells(proof, atWork, ("ON", energised), ("off", proof.Circuit.Store.Not(energised)));
            if (cells.Distinct().Count() > 1) yield return [load.Name, load.Part.Description, .. cells];
        }
    }

    /// <summary>For each position all that comes about there with the supplies on: one word, or several where more decides.</summary>
    private static ImmutableArray<string> Cells(
        PositionProof proof, ImmutableArray<Diagram> atWork, params (string Word, Diagram When)[] answers)
    {
        return [.. atWork.Select(CellOf)];

        string CellOf(Diagram here)
        {
            var words = answers.Where(a => proof.States.CanReach(proof.Circuit.Store.And(here, a.When))).Select(a => a.Word).ToList();
            return words.Count == 0 ? NotReached : string.Join(Either, words);
        }
    }

    /// <summary>A row for each key.</summary>
    private static ReportTable OfKeypad(AnalysisContext context, PositionProof proof, Keypad keypad) => new(
        $"Contact chart: {(keypad.Description.Length == 0 ? keypad.Designator : $"{keypad.Designator}, {keypad.Description}")}",
        [
            new("contacts", "Contacts"),
            new("device", "Device"),
            new(Keypad.Released, Keypad.Released, ColumnAlign.Centre),
            new(Keypad.Pressed, $"{Keypad.Pressed} (hold)", ColumnAlign.Centre),
        ],
        [
            .. from contact in proof.Circuit.Circuit.Contacts
               where contact.Part.Designator == keypad.Designator
               select (ImmutableArray<string>)[PairOf(context, contact), $"{keypad.Designator}-{contact.Label}", Open, Closed],
        ])
    {
        Notes = [.. keypad.Rows.Select(r => $"{keypad.Designator}:{r} has the keys {string.Join(' ', keypad.KeysOn(r))}, from {keypad.Columns[0]} on.")],
    };

    private static ReportTable OfRelays(AnalysisContext context, PositionProof proof) => new(
        "Contact chart: relays",
        [
            new("contacts", "Contacts"),
            new("device", "Device"),
            new("released", "released", ColumnAlign.Centre),
            new("operated", "operated", ColumnAlign.Centre),
        ],
        [
            .. from contact in proof.Circuit.Circuit.Contacts
               where contact.IsRelayContact
               let closed = proof.Circuit.Closed(contact)
               let coil = MoverOf(proof, contact)
               select (ImmutableArray<string>)
               [
                   PairOf(context, contact), NameOf(contact),
                   RelayCell(proof, closed, coil, 0), RelayCell(proof, closed, coil, 1),
               ],
        ])
    {
        Notes =
        [
            .. proof.States.Latches.Select(k => $"{k} remembers: with everything else alike it can stand released or operated."),
            .. context.Panel.Parts.OfType<Relay>().Where(r => r.HasDelay && r.Poles.Any(p => p.IsDelayed)).Select(DelayNote),
        ],
    };

    /// <summary>The coil of a relay's contact, or of a delayed one what stands for it after the delay.</summary>
    private static int MoverOf(PositionProof proof, Contact contact) => proof.Circuit.Variables.IndexOf(
        contact.When is DelayedCondition ? StateVariableKind.Delay : StateVariableKind.Coil, contact.Part.Designator);

    private static string RelayCell(PositionProof proof, Diagram closed, int coil, int value) =>
        proof.Circuit.Store.Restrict(proof.Circuit.Store.And(closed, proof.Circuit.Standing), coil, value).IsNever ? Open : Closed;

    private static string DelayNote(Relay relay) => string.Join(" ", new[]
    {
        $"{relay.Designator} has delayed contacts:",
        relay.OnDelay is { } on ? $"they operate {on.Text} after its coil" : "they operate with its coil",
        relay.OffDelay is { } off ? $"and release {off.Text} after it." : "and release with it.",
    });

    private static IEnumerable<string> NotesOf(Panel panel, Actuator actuator)
    {
        yield return PositionsNote;
        if (actuator.Positions.Any(p => p.IsMomentary)) yield return HoldNote;
        if (actuator.IsPushToTurn) yield return $"{actuator.Name} turns only while it is pushed.";
        foreach (var one in panel.Locks.Where(l => l.Actuator == actuator.Name && !l.IsPush))
            yield return $"{actuator.Name} is locked at {NameList.Sentence(one.Positions)} until its lock is released.";
    }

    private static string HeaderOf(ActuatorPosition position) =>
        position.Name + (position.IsMomentary ? " (hold)" : position.IsRest ? " (rest)" : "");

    private static string KeyOf(string position) => "at_" + position.Replace('-', '_').ToLowerInvariant();

    private static string NameOf(Contact contact) =>
        contact.When is DelayedCondition && contact.Part is Relay relay ? $"{relay.Designator} {relay.DelayText}"
        : contact.Label.Length == 0 ? contact.Part.Designator : $"{contact.Part.Designator} {contact.Label}";

    private static string PairOf(AnalysisContext context, Contact contact) =>
        $"{PlaceOf(context, contact.Common)} - {PlaceOf(context, contact.Throw)}";

    /// <summary>The connector contact that a terminal is wired to inside its unit, else the terminal itself.</summary>
    private static string PlaceOf(AnalysisContext context, TerminalId terminal)
    {
        var attachment = context.Panel.Attachments.FirstOrDefault(a => a.Device == terminal);
        return (attachment?.Contact ?? terminal).ToString();
    }
}
