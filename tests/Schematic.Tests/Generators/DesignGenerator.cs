using System.Collections.Immutable;
using System.Globalization;
using Schematic.Inserts;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Tests.Generators;

/// <summary>
/// Makes panels of any size, the same for the same seed: units with connectors, gangs, rotary poles, lamps, coils with their
/// diodes and relays; boards, supplies, fuses, strips and cables outside. It follows the habits of real panels and their
/// exceptions: shared returns, unwired poles, wires on a plugged contact, nets without wires.
/// </summary>
public sealed class DesignGenerator
{
    private static readonly ColourCode[] Colours = Enum.GetValues<ColourCode>();

    private readonly Random _random;
    private readonly ImmutableArray<Part>.Builder _parts = ImmutableArray.CreateBuilder<Part>();
    private readonly ImmutableArray<Actuator>.Builder _actuators = ImmutableArray.CreateBuilder<Actuator>();
    private readonly ImmutableArray<Attachment>.Builder _attachments = ImmutableArray.CreateBuilder<Attachment>();
    private readonly ImmutableArray<Wire>.Builder _wires = ImmutableArray.CreateBuilder<Wire>();
    private readonly ImmutableArray<Net>.Builder _nets = ImmutableArray.CreateBuilder<Net>();
    private readonly ImmutableArray<Cable>.Builder _cables = ImmutableArray.CreateBuilder<Cable>();
    private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);
    private readonly Queue<TerminalId> _freeInputs = [];
    private readonly Queue<TerminalId> _freeStrip = [];
    private readonly List<TerminalId> _plus = [];
    private readonly List<TerminalId> _minus = [];
    private readonly bool _netsOnly;

    private DesignGenerator(int seed)
    {
        _random = new Random(seed);
        _netsOnly = seed % 7 == 3;
    }

    /// <summary>A panel whose connectors have about <paramref name="contacts"/> contacts.</summary>
    public static Panel Generate(int seed, int contacts)
    {
        var generator = new DesignGenerator(seed);
        generator.AddSupply();
        var left = contacts;
        while (left > 0) left -= generator.AddPiece(left);
        return generator.Finish(seed);
    }

    private Panel Finish(int seed) => new()
    {
        Title = new TitleData { Title = $"Generated panel {seed}", Number = $"GP-{seed}" },
        Symbols = seed % 2 == 0 ? SymbolStyle.Iec : SymbolStyle.Ieee,
        Parts = _parts.ToImmutable(),
        Actuators = _actuators.ToImmutable(),
        Attachments = _attachments.ToImmutable(),
        Wires = _wires.ToImmutable(),
        Nets = _nets.ToImmutable(),
        Cables = _cables.ToImmutable(),
    };

    private int AddPiece(int left)
    {
        var size = Math.Min(left, _random.Next(5, 62));
        switch (_random.Next(10))
        {
            case 0:
                AddHarness(size);
                break;
            case 1:
                AddLatch();
                AddUnit(size);
                break;
            default:
                AddUnit(size);
                break;
        }

        return size;
    }

    private string Next(string letter)
    {
        _numbers[letter] = _numbers.GetValueOrDefault(letter) + 1;
        return letter + _numbers[letter].ToString(CultureInfo.InvariantCulture);
    }

    private bool Chance(double share) => _random.NextDouble() < share;

    private static ImmutableArray<Terminal> Terminals(IEnumerable<string> names) => [.. names.Select(n => new Terminal(n, SourceSpan.None))];

    private static IEnumerable<string> Numbers(int count) => Enumerable.Range(1, count).Select(n => n.ToString(CultureInfo.InvariantCulture));

    private void AddSupply()
    {
        var supply = new Supply(Next("PS"), 24, SourceSpan.None) { Terminals = Terminals(["+", "-"]), Description = "bench supply", MinVolts = 22, MaxVolts = 29 };
        var fuse = new Fuse(Next("F"), 2, SourceSpan.None) { Terminals = Terminals(["1", "2"]), Description = "feed" };
        _parts.Add(supply);
        _parts.Add(fuse);
        Join("", supply.At("+"), fuse.At("1"));
        _plus.Add(fuse.At("2"));
        _minus.Add(supply.At("-"));
    }

    private Connector AddConnector(int size, Gender gender, string? mates, string description)
    {
        var contacts = Numbers(size).Select((n, i) => new ContactPosition(n, i * 3, 0)).ToImmutableArray();
        var insert = new InsertArrangement("positions", InsertOutline.Rectangular, contacts, "in a row");
        var connector = new Connector(Next(gender == Gender.Pins ? "J" : "P"), insert, SourceSpan.None)
        {
            Gender = gender,
            Mates = mates,
            Description = description,
            Terminals = Terminals(Numbers(size)),
        };
        _parts.Add(connector);
        return connector;
    }

    private void AddUnit(int size)
    {
        var jack = AddConnector(size, Gender.Pins, null, Chance(0.7) ? "lever unit" : "");
        var plug = Chance(0.85) ? AddConnector(size, Gender.Sockets, jack.Designator, "adapter plug") : null;
        var free = new Queue<TerminalId>(Numbers(size).Select(jack.At));
        TerminalId Outside(TerminalId contact) => plug is null ? contact : plug.At(contact.Name);
        while (free.Count >= 3 && Chance(0.93)) AddDevices(free, Outside);
        if (free.Count > 0 && Chance(0.2)) Join("", Outside(free.Dequeue()), Input());
    }

    private void AddDevices(Queue<TerminalId> free, Func<TerminalId, TerminalId> outside)
    {
        switch (_random.Next(6))
        {
            case 0 or 1 or 2:
                AddGang(free, outside);
                break;
            case 3:
                AddLoad(free, outside);
                break;
            case 4 when free.Count >= 8:
                AddInnerRelay(free, outside);
                break;
            default:
                AddLoad(free, outside);
                break;
        }
    }

    private Actuator AddActuator()
    {
        string[][] names = [["normal", "check", "reverse"], ["released", "pressed"], ["left-stop", "left", "centre", "right", "right-stop"], ["off", "on"]];
        var chosen = names[_random.Next(names.Length)];
        var rest = chosen.Length == 5 ? 2 : 0;
        var positions = chosen.Select((n, i) => new ActuatorPosition(
            n, i == rest, n == "pressed" ? "released" : n.EndsWith("-stop", StringComparison.Ordinal) ? n[..^5] : null, SourceSpan.None));
        var actuator = new Actuator(Next(chosen.Length == 2 ? "BUTTON" : "LEVER"), [.. positions], SourceSpan.None)
        {
            Description = Chance(0.5) ? "signal lever" : "",
        };
        _actuators.Add(actuator);
        return actuator;
    }

    private static PositionCondition At(Actuator actuator, params int[] positions) =>
        new(actuator.Name, [.. positions.Select(p => actuator.Positions[p].Name)], SourceSpan.None);

    private static Throw Way(Actuator actuator, string terminal, string label, params int[] positions) =>
        new(terminal, label, At(actuator, positions), SourceSpan.None);

    private void AddGang(Queue<TerminalId> free, Func<TerminalId, TerminalId> outside)
    {
        var actuator = AddActuator();
        var count = actuator.Positions.Length;
        var rotary = count > 2 && Chance(0.3);
        var throws = rotary ? count : count == 2 && Chance(0.5) ? 1 : 2;
        var poles = Math.Min(_random.Next(1, 8), free.Count / (throws + 1));
        TerminalId? shared = Chance(0.2) && free.Count > 0 ? free.Dequeue() : null;
        var sharedIsWired = false;
        string? gang = null;
        for (var i = 0; i < poles && free.Count >= throws + 1; i++)
        {
            var pole = PoleOf(actuator, throws, rotary);
            var form = throws == 1 ? ContactForm.Make : rotary ? ContactForm.Rotary : ContactForm.Changeover;
            var name = Next("S");
            gang ??= name;
            var part = new Switch(name, form, actuator.Name, pole, SourceSpan.None)
            {
                Gang = gang,
                Terminals = Terminals([pole.Common, .. pole.Throws.Select(t => t.Terminal)]),
            };
            _parts.Add(part);
            var common = shared ?? free.Dequeue();
            Attach(part.At(pole.Common), common);
            var isWired = Chance(0.8);
            if (isWired && (shared is null || !sharedIsWired)) Join("RTN", outside(common), Minus());
            sharedIsWired |= isWired;
            foreach (var way in pole.Throws)
            {
                if (Chance(0.06)) continue;
                var contact = free.Dequeue();
                Attach(part.At(way.Terminal), contact);
                if (isWired) Join("", outside(contact), Chance(0.8) ? Input() : StripPoint());
            }
        }
    }

    private static Pole PoleOf(Actuator actuator, int throws, bool rotary)
    {
        var last = actuator.Positions.Length - 1;
        ImmutableArray<Throw> ways = throws == 1 ? [Way(actuator, "2", "", last)]
            : rotary ? [.. actuator.Positions.Select((p, i) => Way(actuator, $"T{i + 1}", p.Name, i))]
            : [Way(actuator, "T1", actuator.Positions[0].Name, 0), Way(actuator, "T2", actuator.Positions[last].Name, last)];
        return new Pole(throws == 1 ? "1" : "C", ways, SourceSpan.None);
    }

    private void AddLoad(Queue<TerminalId> free, Func<TerminalId, TerminalId> outside)
    {
        var (a, b) = (free.Dequeue(), free.Dequeue());
        Part part;
        string first, second;
        switch (_random.Next(4))
        {
            case 0:
                (first, second) = ("A1", "A2");
                part = new Solenoid(Next("L"), new CoilData(28, 40), SourceSpan.None) { Description = "lever lock" };
                break;
            case 1:
                (first, second) = ("A", "K");
                part = new Led(Next("D"), 2, 0.02, SourceSpan.None) { Colour = ColourCode.GN };
                break;
            case 2:
                (first, second) = ("1", "2");
                part = new Resistor(Next("R"), 1200, SourceSpan.None);
                break;
            default:
                (first, second) = ("X1", "X2");
                part = new Lamp(Next("DS"), 28, 0.04, SourceSpan.None) { Description = Chance(0.5) ? "normal proved" : "", Colour = ColourCode.RD };
                break;
        }

        part = part with { Terminals = Terminals([first, second]) };
        _parts.Add(part);
        Attach(part.At(first), a);
        Attach(part.At(second), b);
        if (part is Solenoid && Chance(0.5)) AddDiode(a, b);
        if (Chance(0.9)) Join("FEED", outside(a), Plus());
        if (Chance(0.9)) Join("RTN", outside(b), Minus());
        else if (Chance(0.5)) Join("", b, StripPoint());
    }

    private void AddDiode(TerminalId cathode, TerminalId anode)
    {
        var diode = new Diode(Next("D"), SourceSpan.None) { Terminals = Terminals(["A", "K"]) };
        _parts.Add(diode);
        Attach(diode.At("K"), cathode);
        Attach(diode.At("A"), anode);
    }

    private Relay MakeRelay(int poles)
    {
        var name = Next("K");
        RelayPole PoleAt(int set)
        {
            var tens = (set + 1).ToString(CultureInfo.InvariantCulture);
            var changeover = Chance(0.6);
            var energised = new EnergisedCondition(name, true, SourceSpan.None);
            var released = new EnergisedCondition(name, false, SourceSpan.None);
            return changeover
                ? new RelayPole(ContactForm.Changeover, new Pole(tens + "1", [new Throw(tens + "2", "", released, SourceSpan.None), new Throw(tens + "4", "operated", energised, SourceSpan.None)], SourceSpan.None))
                : new RelayPole(ContactForm.Make, new Pole(tens + "3", [new Throw(tens + "4", "", energised, SourceSpan.None)], SourceSpan.None));
        }

        var sets = Enumerable.Range(0, poles).Select(PoleAt).ToImmutableArray();
        var relay = new Relay(name, new CoilData(24, 800), sets, SourceSpan.None)
        {
            Terminals = Terminals(["A1", "A2", .. sets.SelectMany(s => s.Pole.Throws.Select(t => t.Terminal).Prepend(s.Pole.Common))]),
        };
        _parts.Add(relay);
        return relay;
    }

    private void AddInnerRelay(Queue<TerminalId> free, Func<TerminalId, TerminalId> outside)
    {
        var relay = MakeRelay(_random.Next(1, 3));
        var (a, b) = (free.Dequeue(), free.Dequeue());
        Attach(relay.At("A1"), a);
        Attach(relay.At("A2"), b);
        Join("FEED", outside(a), Plus());
        Join("RTN", outside(b), Minus());
        foreach (var terminal in relay.Terminals.Skip(2).Where(_ => Chance(0.9)))
        {
            if (free.Count == 0) return;
            var contact = free.Dequeue();
            Attach(relay.At(terminal.Name), contact);
            if (Chance(0.8)) Join("", outside(contact), Chance(0.5) ? Input() : StripPoint());
        }
    }

    /// <summary>A relay that holds itself in, all loose: buttons, coil, contact, lamp on the supply.</summary>
    private void AddLatch()
    {
        var relay = MakeRelay(2);
        var start = LooseButton();
        var lamp = new Lamp(Next("DS"), 24, 0.05, SourceSpan.None) { Terminals = Terminals(["X1", "X2"]) };
        _parts.Add(lamp);
        var holding = relay.Poles[0].Pole;
        Join("", Plus(), start.At("1"));
        Join("", start.At("2"), relay.At("A1"));
        Join("", Plus(), relay.At(holding.Common));
        Join("", relay.At(holding.Throws[^1].Terminal), relay.At("A1"));
        Join("RTN", relay.At("A2"), Minus());
        var other = relay.Poles[1].Pole;
        Join("", Plus(), relay.At(other.Common));
        Join("", relay.At(other.Throws[0].Terminal), lamp.At("X1"));
        Join("RTN", lamp.At("X2"), Minus());
    }

    private Switch LooseButton()
    {
        var actuator = new Actuator(
            Next("PB"),
            [new ActuatorPosition("released", true, null, SourceSpan.None), new ActuatorPosition("pressed", false, "released", SourceSpan.None)],
            SourceSpan.None);
        _actuators.Add(actuator);
        var pole = new Pole("1", [Way(actuator, "2", "", 1)], SourceSpan.None);
        var button = new Switch(Next("S"), ContactForm.Make, actuator.Name, pole, SourceSpan.None) { Terminals = Terminals(["1", "2"]) };
        _parts.Add(button);
        return button;
    }

    /// <summary>Connector to strip over a cable, no devices.</summary>
    private void AddHarness(int size)
    {
        var plug = AddConnector(size, Gender.Sockets, null, "breakout plug");
        var strip = AddStrip(size);
        var cable = Next("C");
        var cores = ImmutableArray.CreateBuilder<string>();
        for (var i = 1; i <= size; i++)
        {
            if (Chance(0.1)) continue;
            var core = i.ToString(CultureInfo.InvariantCulture);
            var name = $"{cable}.{core}";
            cores.Add(name);
            _wires.Add(new Wire(name, plug.At(core), strip.At(core), SourceSpan.None)
            {
                Cable = cable,
                Core = core,
                Gauge = WireGauge.FromMm2(0.25),
                Colour = Colour(),
            });
        }

        _cables.Add(new Cable(cable, cores.ToImmutable(), SourceSpan.None) { Description = "breakout lead", LengthMm = 1500 });
    }

    private TerminalStrip AddStrip(int size)
    {
        ImmutableArray<ImmutableArray<string>> jumpers = size >= 6 && Chance(0.4) ? [["1", "2", "3"]] : [];
        var strip = new TerminalStrip(Next("X"), SourceSpan.None)
        {
            Terminals = Terminals(Numbers(size)),
            Jumpers = jumpers,
            Description = "marshalling",
        };
        _parts.Add(strip);
        return strip;
    }

    private WireColour Colour() => new(Colours[_random.Next(14)], Chance(0.3) ? Colours[_random.Next(14)] : null);

    private TerminalId Input()
    {
        if (_freeInputs.Count == 0)
        {
            var name = Next("A");
            var inputs = Enumerable.Range(1, 16).Select(n => new BoardInput($"IN{n}", 5.5, SourceSpan.None)
            {
                Meaning = Chance(0.3) ? "lever normal" : "",
            }).ToImmutableArray();
            var board = new Board(name, inputs, ["GND"], SourceSpan.None)
            {
                Terminals = Terminals([.. inputs.Select(i => i.Terminal), "GND"]),
                Description = "input board",
            };
            _parts.Add(board);
            foreach (var input in inputs) _freeInputs.Enqueue(board.At(input.Terminal));
            Join("RTN", board.At("GND"), Minus());
        }

        return _freeInputs.Dequeue();
    }

    private TerminalId StripPoint()
    {
        if (_freeStrip.Count == 0)
        {
            var strip = AddStrip(_random.Next(4, 24));
            foreach (var terminal in strip.Terminals) _freeStrip.Enqueue(strip.At(terminal.Name));
        }

        return _freeStrip.Dequeue();
    }

    /// <summary>Feeds branch over strips once a terminal is crowded.</summary>
    private TerminalId Plus() => Branch(_plus);

    private TerminalId Minus() => Branch(_minus);

    private TerminalId Branch(List<TerminalId> points)
    {
        if (Chance(0.12))
        {
            var next = StripPoint();
            Join("", points[^1], next);
            points.Add(next);
        }

        return points[_random.Next(Math.Max(0, points.Count - 3), points.Count)];
    }

    private void Attach(TerminalId device, TerminalId contact) => _attachments.Add(new Attachment(device, contact, SourceSpan.None));

    private void Join(string net, TerminalId a, TerminalId b)
    {
        if (a == b) return;
        if (_netsOnly || Chance(0.05))
        {
            _nets.Add(new Net($"N{_nets.Count + 1}", [new NetMember(a, SourceSpan.None), new NetMember(b, SourceSpan.None)], SourceSpan.None));
            return;
        }

        _wires.Add(new Wire(Next("W"), a, b, SourceSpan.None)
        {
            Gauge = Chance(0.8) ? WireGauge.FromAwg(22) : null,
            Colour = Chance(0.8) ? Colour() : null,
        });
        if (net.Length > 0 && Chance(0.1))
            _nets.Add(new Net($"{net}{_nets.Count + 1}", [new NetMember(a, SourceSpan.None), new NetMember(b, SourceSpan.None)], SourceSpan.None));
    }
}
