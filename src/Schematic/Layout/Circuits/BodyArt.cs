using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Fonts;
using Schematic.Layout.Shapes;
using Schematic.Model;
using Schematic.Symbols;

namespace Schematic.Layout.Circuits;

/// <summary>How a contact shows what moves it.</summary>
internal enum Drive
{
    /// <summary>The actuator is drawn here in full: symbol, name, locks.</summary>
    Home,

    /// <summary>The linkage of the contact on the left goes on to it.</summary>
    Shared,

    /// <summary>The actuator's name and where it is drawn.</summary>
    Named,
}

/// <summary>Draws what stands between the leads of a link. The origin is its upper port.</summary>
internal sealed class BodyArt(CircuitMap map, CircuitMeasures measures, ContactWords words, DrawnThings drawn)
{
    private const double SymbolLength = 10;
    private readonly SymbolLibrary _symbols = SymbolLibrary.For(map.Panel.Symbols);
    private readonly LeadArt _leads = new(map, measures);

    /// <summary>A device with two ends, or one throw drawn as a contact of its own.</summary>
    public Art Of(PlacedLink placed, Drive drive) => placed.Link switch
    {
        { Kind: LinkKind.End } => End(placed),
        { Pole: { } pole } => Contact(placed, pole, drive),
        _ => Device(placed),
    };

    /// <summary>A device as references name it: of a relay its coil.</summary>
    public static Thing ThingOf(Part part) => Thing.Part(part.Designator, part is Relay ? "coil" : "");

    /// <summary>What a link shows as references name it: of a device of several elements the two terminals too.</summary>
    private static Thing ThingOf(CircuitLink link) => link.Part is Model.Device device && (device.CoilEnds is not { } coil || link.From.Name != coil.From)
        ? Thing.Part(device.Designator, $"{link.From.Name}-{link.To.Name}") : ThingOf(link.Part!, link.Half);

    /// <summary>A side of a part that is drawn as two: the first is the part itself.</summary>
    private static Thing ThingOf(Part part, int? half) => half is > 0 and var i ? Thing.Part(part.Designator, part.Halves[i].Name) : ThingOf(part);

    /// <summary>A pole as references name it.</summary>
    public static Thing ThingOf(PoleUse pole) => new(ThingKind.Contact, $"{pole.Part.Designator}:{pole.Pole.Common}");

    /// <summary>An actuator as references name it.</summary>
    public static Thing ActuatorOf(string name) => new(ThingKind.Actuator, name);

    private Art Device(PlacedLink placed)
    {
        var (link, part) = (placed.Link, placed.Link.Part!);
        var kind = PartWords.Of(link);
        var upright = _symbols.Get(kind.Symbol).Turned();
        var isTurnedOver = placed.UpperTerminal != link.From;
        var length = upright.Ports[1].At.Y - upright.Ports[0].At.Y;
        // A wiper stands on the left, away from the words.
        var symbol = kind.Symbol == SymbolKind.Breaker || (kind.Symbol == SymbolKind.Potentiometer && !isTurnedOver) ? upright.Mirrored() : upright;
        var drawing = new ArtDrawing(measures);
        var marks = (isTurnedOver ? symbol.Turned().Turned().PlacedAt(new PointMm(0, length), part.Designator) : symbol.PlacedAt(new PointMm(0, 0), part.Designator)).ToList();
        foreach (var mark in marks) drawing.Add(mark);
        var box = marks.Select(m => m.Bounds).Aggregate((a, b) => a.Union(b));
        NamePorts(drawing, placed, marks, length);
        var bottom = WriteDevice(drawing, link, kind, Math.Max(box.Right, 0) + measures.TextGap);
        ImmutableArray<PlacedThing> wiper = part is Potentiometer track ? [.. Wiper(drawing, track, length / 2)] : [];
        return drawing.Done(Math.Max(length, bottom)) with { LowerPort = length, Things = [new PlacedThing(ThingOf(placed.Link), box), .. wiper] };
    }

    /// <summary>The arm of a wiper on the left: its terminal, and an arrow with the place where the circuit goes on.</summary>
    private IEnumerable<PlacedThing> Wiper(ArtDrawing drawing, Potentiometer track, double y)
    {
        const double arm = -5;
        const double tip = -9;
        var terminal = track.At(Potentiometer.WiperEnd);
        if (!map.HasOthers(terminal)) return [];
        var owner = "ref:" + terminal;
        drawing.Wire(terminal.ToString(), new PointMm(arm, y), new PointMm(tip + 2, y));
        drawing.Add(new LineMark(MarkRole.Symbol, [new(tip + 2, y), new(tip + 2, y - 0.9), new(tip, y), new(tip + 2, y + 0.9)], Pen.Narrow) { IsClosed = true, Fill = Ink.Black, Owner = owner });
        drawing.Name(terminal, terminal.Name, arm - 0.5, y - 1.8, TextAlign.End);
        drawing.Refer(owner, "", new Thing(ThingKind.Net, terminal.ToString(), "second"), tip - 0.7, y + (measures.Small / 2), TextAlign.End);
        return [new PlacedThing(new Thing(ThingKind.Net, terminal.ToString(), "first"), new BoxMm(tip, y - 0.9, arm, y + 0.9))];
    }

    /// <summary>Name, description, ratings and, of a relay, its contacts with their places; returns where the words end.</summary>
    private double WriteDevice(ArtDrawing drawing, CircuitLink link, PartWords kind, double x)
    {
        var part = link.Part!;
        var y = 3.4;
        drawing.Name(part.Designator, part.Designator, x, y, bold: true);
        foreach (var line in Lettering.Wrap(part.Description, measures.Small, measures.WordsWidth, measures.MostWordLines))
            drawing.Small(part.Designator, line, x, y += measures.SmallStep);
        if (kind.Value.Length > 0) drawing.Small(part.Designator, kind.Value, x, y += measures.SmallStep);
        if (part is Supply supply)
        {
            foreach (var line in SupplyWords(supply)) drawing.Small(part.Designator, line, x, y += measures.SmallStep);
        }

        if (link.Half is { } half && drawn.HasHalf(part.Designator, 1 - half))
            drawing.Refer(part.Designator, part.Halves[1 - half].Name, ThingOf(part, 1 - half), x, y += measures.SmallStep);
        if (part is not Relay relay) return y + 1;
        foreach (var pole in relay.Poles.Select(p => p.Pole).Where(p => drawn.HasPole(relay.At(p.Common))))
        {
            var contacts = string.Join('-', pole.Throws.Select(t => t.Terminal).Prepend(pole.Common));
            drawing.Refer(part.Designator, contacts, new Thing(ThingKind.Contact, $"{relay.Designator}:{pole.Common}"), x, y += measures.SmallStep);
        }

        return y + 1;
    }

    private static IEnumerable<string> SupplyWords(Supply supply)
    {
        if (supply.IsAdjustable) yield return $"set {ValueText.Volts(supply.MinVolts)} to {ValueText.Volts(supply.MaxVolts)}";
        if (supply.LimitAmps is { } limit) yield return $"limit {ValueText.Amps(limit)}";
    }

    /// <summary>The designations of terminals that somebody must find on the part, beside the symbol's leads.</summary>
    private void NamePorts(ArtDrawing drawing, PlacedLink placed, IEnumerable<Mark> symbol, double length)
    {
        // A short name stands beside the whole symbol; a long one, COM or NC, comes as near as each stroke lets it.
        var isLong = placed.Link.Part is Switch { Kind: not SwitchKind.Plain };
        var strokes = symbol.Where(m => m is not TextMark).SelectMany(m => isLong ? SegmentsOf(m) : [m.Bounds]).Where(b => b.Left < -0.5).ToList();
        foreach (var (terminal, y) in (ReadOnlySpan<(TerminalId, double)>)[(placed.UpperTerminal, 1.3), (placed.LowerTerminal, length + 0.4)])
        {
            if (placed.Link is { Part: not (Relay or Supply or Model.Device), Half: null } && !map.IsWired(terminal)) continue;
            // Left of whatever the symbol has at that height.
            var beside = strokes.Where(b => b.Bottom > y - measures.Name - 0.3 && b.Top < y + (measures.Name * Lettering.DescentShare) + 0.3).Select(b => b.Left);
            drawing.Name(terminal, terminal.Name, beside.Append(-0.3).Min() - 0.5, y, TextAlign.End);
        }
    }

    /// <summary>How far a symbol reaches to the right of its line: words stand beyond the tube of a reed contact.</summary>
    public static double RightOf(Part part, BoxMm symbol) => part is Switch { Kind: SwitchKind.Reed } ? Math.Max(symbol.Right, 0) : 0;

    private static IEnumerable<BoxMm> SegmentsOf(Mark mark) => mark is LineMark { Fill: null } line
        ? line.Points.Zip(line.Points.Skip(1), (a, b) => new BoxMm(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Max(a.X, b.X), Math.Max(a.Y, b.Y)))
        : [mark.Bounds];

    private Art Contact(PlacedLink placed, PoleUse pole, Drive drive)
    {
        var way = pole.Pole.Throws[placed.Link.Throw];
        var contact = _symbols.Get(words.IsClosedAtRest(way) ? SymbolKind.BreakContact : SymbolKind.MakeContact);
        var symbol = _symbols.ContactOf(contact, pole.Part, pole.Pole).Turned().Turned().Turned();
        var drawing = new ArtDrawing(measures);
        var shown = symbol.PoleOf(pole.Part.At(pole.Pole.Common).ToString(), [(pole.Part.At(way.Terminal).ToString(), symbol.Ports[1].Name)]);
        var marks = symbol.PlacedAt(new PointMm(0, SymbolLength), pole.Part.Designator, shown).ToList();
        foreach (var mark in marks) drawing.Add(mark);
        var box = marks.Select(m => m.Bounds).Aggregate((a, b) => a.Union(b));
        NamePorts(drawing, placed, marks, SymbolLength);
        var y = 4.0;
        var x = RightOf(pole.Part, box) + measures.TextGap;
        drawing.Name(pole.Part.Designator, pole.Part.Designator, x, y, bold: true);
        if (pole.Part is Relay relay)
        {
            WriteCoil(drawing, relay, x, y += measures.SmallStep);
            if (Holds(placed.Link, relay)) drawing.Words(relay.Designator, $"holds {relay.Designator}", x, y += measures.SmallStep);
        }

        // A linkage to the next contact passes between the name and the positions.
        y += 0.6;
        foreach (var line in Lettering.Wrap(words.PositionsOf(pole, way), measures.Name, measures.WordsWidth))
            drawing.Name(pole.Part.Designator, line, x, y += measures.NameStep);
        var bladeX = -1.25;
        var left = WriteDrive(drawing, pole, drive, bladeX, 5);
        return drawing.Done(Math.Max(SymbolLength, Math.Max(y + 1, left))) with
        {
            LowerPort = SymbolLength,
            Things = [new PlacedThing(ThingOf(pole), box), .. HomeOf(pole, drive, box)],
        };
    }

    /// <summary>Whether a make contact keeps its own relay operated: it stands beside another contact that feeds the coil.</summary>
    private bool Holds(CircuitLink link, Relay relay)
    {
        if (words.IsClosedAtRest(link.Pole!.Pole.Throws[link.Throw])) return false;
        bool IsBeside(CircuitLink other) => other.Pole is { } pole && pole.Part != relay
            && ((other.FromNode == link.FromNode && other.ToNode == link.ToNode) || (other.FromNode == link.ToNode && other.ToNode == link.FromNode));
        var fed = map.Links.Where(l => l.Part == relay && l.Pole is null).SelectMany(l => new[] { l.FromNode, l.ToNode }).ToHashSet();
        return (fed.Contains(link.FromNode) || fed.Contains(link.ToNode)) && map.Links.Any(IsBeside);
    }

    /// <summary>Where the coil of a contact is drawn.</summary>
    public void WriteCoil(ArtDrawing drawing, Relay relay, double x, double y)
    {
        if (drawn.HasDevice(relay.Designator)) drawing.Refer(relay.Designator, "coil", ThingOf(relay), x, y);
        else drawing.Words(relay.Designator, "coil not in any circuit", x, y);
    }

    private static IEnumerable<PlacedThing> HomeOf(PoleUse pole, Drive drive, BoxMm box) =>
        drive == Drive.Home && pole.Actuator is { } name ? [new PlacedThing(ActuatorOf(name), box)] : [];

    /// <summary>
    /// The operator on the left of a contact: its symbol with name, description and locks, or its name with the place of the symbol.
    /// It stands left of <paramref name="clearX"/>, beyond whatever the symbol has. Returns where the words end.
    /// </summary>
    public double WriteDrive(ArtDrawing drawing, PoleUse pole, Drive drive, double bladeX, double y, double clearX = 0)
    {
        if (pole.Actuator is not { } name || drive == Drive.Shared) return 0;
        const double reach = 4.5;
        var right = Math.Min(bladeX - reach, clearX);
        var owner = name;
        drawing.Add(new LineMark(MarkRole.Linkage, [new(right, y), new(bladeX, y)], Pen.Linkage) { Owner = owner });
        if (drive == Drive.Named)
        {
            drawing.Name(owner, name, right - 0.8, y + (measures.Name / 2), TextAlign.End);
            drawing.Refer(owner, "", ActuatorOf(name), right - 0.8, y + (measures.Name / 2) + measures.SmallStep, TextAlign.End);
            return y + (measures.Name / 2) + measures.SmallStep + 1;
        }

        var symbol = _symbols.Get(words.Find(name) is { } worked ? FigureFactory.OperatorOf(worked) : SymbolKind.LeverActuator);
        foreach (var mark in symbol.PlacedAt(new PointMm(right, y), owner)) drawing.Add(mark);
        var x = right + symbol.Bounds.Left - 0.8;
        drawing.Name(owner, name, x, y + (measures.Name / 2), TextAlign.End, bold: true);
        var at = y + 1.7;
        if (words.Find(name) is { } actuator)
        {
            foreach (var line in Lettering.Wrap(actuator.Description, measures.Small, measures.WordsWidth, measures.MostWordLines)) drawing.Small(owner, line, x, at += measures.SmallStep, TextAlign.End);
        }

        if (words.PushOf(name) is var (push, pushed))
        {
            if (pushed is { } thing) drawing.Refer(owner, push, thing, x, at += measures.SmallStep, TextAlign.End);
            else drawing.Words(owner, push, x, at += measures.SmallStep, TextAlign.End);
        }

        foreach (var (held, targets) in words.LocksOf(name))
        {
            foreach (var line in Lettering.Wrap(held, measures.Small, measures.WordsWidth)) drawing.Words(owner, line, x, at += measures.SmallStep, TextAlign.End);
            foreach (var (release, target) in targets)
            {
                drawing.Refer(owner, "unless " + release, target, x, at += measures.SmallStep, TextAlign.End);
                if (target.Kind != ThingKind.Part) continue;
                foreach (var mover in drawn.MoversOf(target.Name)) drawing.Refer(owner, "by " + mover, ActuatorOf(mover), x, at += measures.SmallStep, TextAlign.End);
            }
        }

        return at + 1;
    }

    private Art End(PlacedLink placed)
    {
        var link = placed.Link;
        var isUp = placed.Lower == link.FromNode;
        if (link.Cut is { } cut) return CutEnd(cut, link.From, isUp);
        if (link.Part is Keypad keypad) return BoxEnd(link.From, isUp, [.. KeypadWords(keypad, link.From)]);
        return link.Part is Board board ? BoxEnd(link.From, isUp, [.. BoardWords(board, link.From)]) : LooseEnd(link.From, isUp);
    }

    /// <summary>An arrow head with the place where the column goes on.</summary>
    private Art CutEnd(Cut cut, TerminalId terminal, bool isUp)
    {
        const double length = 5;
        const double head = 2;
        var drawing = new ArtDrawing(measures);
        var (inner, neck, tip) = isUp ? (length, head, 0.0) : (0.0, length - head, length);
        var owner = "ref:" + cut.Name;
        drawing.Wire(terminal.ToString(), new PointMm(0, inner), new PointMm(0, neck));
        drawing.Add(new LineMark(MarkRole.Symbol, [new(0, neck), new(-0.9, neck), new(0, tip), new(0.9, neck)], Pen.Narrow) { IsClosed = true, Fill = Ink.Black, Owner = owner });
        drawing.Refer(owner, cut.Words, new Thing(ThingKind.Net, cut.Name, cut.IsSecond ? "first" : "second"), 1.6, isUp ? 1.9 : length);
        var box = new BoxMm(-0.9, Math.Min(neck, tip), 0.9, Math.Max(neck, tip));
        return drawing.Done(length) with { Things = [new PlacedThing(new Thing(ThingKind.Net, cut.Name, cut.IsSecond ? "second" : "first"), box)] };
    }

    private IEnumerable<(string Text, bool IsMeaning)> KeypadWords(Keypad keypad, TerminalId terminal) => Lettering
        .Wrap("keys " + string.Join(' ', keypad.KeysOn(terminal.Name)), measures.Small, measures.WordsWidth).Select(l => (l, true));

    /// <summary>A terminal of a board or a keypad in a box, what it means and how it is held beyond the box.</summary>
    private Art BoxEnd(TerminalId terminal, bool isUp, ImmutableArray<(string Text, bool IsMeaning)> lines)
    {
        const double boxHeight = 5;
        var drawing = new ArtDrawing(measures);
        // A blank between the box and the words, descenders included.
        var wordsHeight = lines.IsEmpty ? 0 : (lines.Length * measures.SmallStep) + 0.4;
        var half = (Lettering.WidthMm(terminal.ToString(), measures.Name, bold: true) / 2) + 1.2;
        var top = isUp ? wordsHeight : 0;
        var box = new BoxMm(-half, top, half, top + boxHeight);
        drawing.Add(LineMark.Rectangle(MarkRole.Symbol, box, Pen.Wide) with { Owner = terminal.ToString() });
        drawing.Name(terminal.ToString(), terminal.ToString(), 0, top + 3.75, TextAlign.Middle, bold: true, Thing.Terminal(terminal.ToString()));
        var y = isUp ? measures.Small : top + boxHeight + measures.Small + 0.8;
        foreach (var (text, isMeaning) in lines)
        {
            if (isMeaning) drawing.Words(terminal.ToString(), text, 0, y, TextAlign.Middle);
            else drawing.Small(terminal.ToString(), text, 0, y, TextAlign.Middle);
            y += measures.SmallStep;
        }

        return drawing.Done(boxHeight + wordsHeight + (isUp || lines.IsEmpty ? 0 : 0.5)) with { Things = [new PlacedThing(Thing.Terminal(terminal.ToString()), box)] };
    }

    private IEnumerable<(string Text, bool IsMeaning)> BoardWords(Board board, TerminalId terminal)
    {
        if (board.Inputs.FirstOrDefault(i => i.Terminal == terminal.Name) is not { } input) yield break;
        foreach (var line in Lettering.Wrap(input.Meaning, measures.Small, measures.WordsWidth, measures.MostWordLines)) yield return (line, true);
        var stated = map.Panel.Expectations.OfType<LevelExpectation>().Where(e => e.Input == terminal && e.When is not AllCondition { Parts.IsEmpty: true })
            .OrderBy(e => e.Level).Select(e => $"{(e.Level == InputLevel.Low ? "low" : "high")}: {ContactWords.Of(e.When)}").FirstOrDefault();
        if (stated is not null)
        {
            foreach (var line in Lettering.Wrap(stated, measures.Small, measures.WordsWidth)) yield return (line, true);
        }
        else if (input.PullUpVolts is { } volts)
        {
            yield return ($"pull-up {ValueText.Volts(volts)}", false);
        }
        else if (input.PullDownOhms is not null)
        {
            yield return ("pull-down", false);
        }
    }

    /// <summary>A contact of a connector, a strip's terminal or whatever else a wire ends on without going further.</summary>
    private Art LooseEnd(TerminalId terminal, bool isUp)
    {
        const double length = 5;
        var drawing = new ArtDrawing(measures);
        var owner = terminal.ToString();
        var (inner, outer) = isUp ? (length + measures.NameStep, measures.NameStep + 0.4) : (0.0, length);
        if (map.Part(terminal.Part) is Connector connector)
        {
            var symbol = _symbols.Get(connector.Gender == Gender.Sockets ? SymbolKind.Socket : SymbolKind.Pin).Turned();
            foreach (var mark in (isUp ? symbol.Turned().Turned() : symbol).PlacedAt(new PointMm(0, inner), owner)) drawing.Add(mark);
            _leads.DrawProof(drawing, terminal, LeadArt.ProofGap, (inner + outer) / 2);
        }
        else
        {
            drawing.Wire(owner, new PointMm(0, inner), new PointMm(0, outer + ((isUp ? 1 : -1) * _leads.StartAt(terminal))));
            _leads.DrawSymbol(drawing, terminal, 0, outer);
        }

        drawing.Name(owner, _leads.NameOf(terminal), 0, isUp ? 1.8 : outer + measures.NameStep + 0.4, TextAlign.Middle);
        return drawing.Done(length + measures.NameStep + (isUp ? 0 : 1.2));
    }
}
