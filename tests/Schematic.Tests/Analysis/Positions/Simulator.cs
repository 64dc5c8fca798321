using MathNet.Numerics.LinearAlgebra;
using Schematic.Analysis.Circuits;
using Schematic.Model;

namespace Schematic.Tests.Analysis.Positions;

/// <summary>
/// A second, plain opinion on a panel: it tries every state one by one, joins terminals by colouring them, and solves the
/// whole network as one dense system, trying all modes of the diodes. It shares no code with the proof beyond the model and
/// the figures of <see cref="LoadLimits"/>.
/// </summary>
internal sealed class Simulator
{
    public const double LeastOhms = 0.001;
    private const double Leak = 1e-8;

    private readonly Panel _panel;
    private readonly Dictionary<TerminalId, int> _node = [];
    private readonly List<(TerminalId A, TerminalId B, Condition When, bool Bridges)> _contacts = [];
    private readonly HashSet<string> _bridging;
    private readonly int _nodes;

    public Simulator(Panel panel)
    {
        _panel = panel;
        foreach (var part in panel.Parts)
            foreach (var terminal in part.Terminals) _node[part.At(terminal.Name)] = _node.Count;
        foreach (var wire in panel.Wires) Recolour(_node[wire.From], _node[wire.To]);
        foreach (var fuse in panel.Parts.OfType<Fuse>()) Recolour(_node[fuse.At("1")], _node[fuse.At("2")]);
        _nodes = _node.Count;
        foreach (var part in panel.Parts)
        {
            IEnumerable<Pole> poles = part switch { Switch s => [s.Pole], Relay r => r.Poles.Select(p => p.Pole), Keypad k => k.ContactSets, _ => [] };
            foreach (var pole in poles)
                foreach (var t in pole.Throws) _contacts.Add((part.At(pole.Common), part.At(t.Terminal), t.When, pole.MakesBeforeBreak));
        }

        _bridging = [.. panel.Parts.OfType<Relay>().Where(r => r.Poles.Any(p => p.Pole.MakesBeforeBreak)).Select(r => r.Designator)];
        Relays = [.. panel.Parts.OfType<Relay>()];
        Loads = [.. panel.Parts.Where(p => p is Lamp or Led or Relay or Solenoid or Consumer)];
        Supplies = [.. panel.Parts.OfType<Supply>()];
        Varying = [.. panel.Parts.Where(p => p is Potentiometer or RangedResistor)];
        Explore();
    }

    public Panel Panel => _panel;

    public IReadOnlyList<Relay> Relays { get; }

    public IReadOnlyList<Part> Loads { get; }

    public IReadOnlyList<Supply> Supplies { get; }

    /// <summary>Parts that have no one value; a look has the number of the way in which each stands.</summary>
    public IReadOnlyList<Part> Varying { get; }

    /// <summary>What resistances such a part has between which terminals in one of its ways; none at all is a joint.</summary>
    private static IEnumerable<(TerminalId A, TerminalId B, double Ohms)> Sections(Part part, int way) => part switch
    {
        Potentiometer track => [(part.At("1"), part.At("2"), way * track.Ohms!.Value / 2), (part.At("2"), part.At("3"), (2 - way) * track.Ohms.Value / 2)],
        RangedResistor ranged => [(part.At("1"), part.At("2"), (way == 0 ? ranged.Least : ranged.Most).Ohms!.Value)],
        _ => throw new InvalidOperationException(),
    };

    private static int WaysOf(Part part) => part is Potentiometer ? 3 : 2;

    /// <summary>All states in which the panel can come to stand, with the fewest moves to each.</summary>
    public Dictionary<string, (Look Look, int Moves)> Lasting { get; } = [];

    /// <summary>
    /// What shows for a moment while an actuator moves, with what would show before and after, the relays standing as they did.
    /// </summary>
    public List<(Look Moment, Look Before, Look After, bool Opens)> Moments { get; } = [];

    /// <summary>Relays whose delay ends again and again while nobody touches anything: its end lies on a round of ends of delays.</summary>
    public HashSet<string> Flashing { get; } = [];

    /// <summary>Whether some states never settle.</summary>
    public bool Chatters { get; private set; }

    /// <summary>Whether some figure lies so near a limit that two right methods may differ.</summary>
    public bool IsBorderline { get; private set; }

    public IReadOnlyList<(TerminalId A, TerminalId B, Condition When, bool Bridges)> Contacts => _contacts;

    private void Recolour(int one, int other)
    {
        foreach (var key in _node.Keys.ToList())
            if (_node[key] == other) _node[key] = one;
    }

    private void Explore()
    {
        var looks = new Dictionary<string, Look>();
        Look LookAt(int[] positions, bool[] coils, bool[] delayed, bool[] on, int[] ways, Transit? transit = null)
        {
            string Bits(bool[] bits) => string.Concat(bits.Select(c => c ? '1' : '0'));
            var key = $"{string.Join(' ', positions)}|{Bits(coils)}|{Bits(delayed)}|{Bits(on)}|{string.Join(' ', ways)}|{transit}";
            if (!looks.TryGetValue(key, out var look)) looks[key] = look = new Look(this, key, positions, coils, delayed, on, ways, transit);
            return look;
        }

        IEnumerable<Look> Steps(Look look)
        {
            for (var k = 0; k < Relays.Count; k++)
            {
                if (look.IsUnstable(k)) yield return LookAt(look.Positions, Turned(look.Coils, k), look.Delayed, look.On, look.Ways);
                if (look.FollowsAtOnce(k)) yield return LookAt(look.Positions, look.Coils, Turned(look.Delayed, k), look.On, look.Ways);
            }
        }

        IEnumerable<Look> Waits(Look look)
        {
            for (var k = 0; k < Relays.Count; k++)
                if (look.IsWaiting(k)) yield return LookAt(look.Positions, look.Coils, Turned(look.Delayed, k), look.On, look.Ways);
        }

        IEnumerable<Look> AfterWait(Look look, int relay) => Closure(LookAt(look.Positions, look.Coils, Turned(look.Delayed, relay), look.On, look.Ways)).Where(l => l.IsStable);

        HashSet<Look> Closure(Look start)
        {
            var seen = new HashSet<Look> { start };
            var waiting = new Stack<Look>(seen);
            while (waiting.TryPop(out var at))
                foreach (var next in Steps(at))
                    if (seen.Add(next)) waiting.Push(next);
            return seen;
        }

        IEnumerable<Look> Moved(Look look) =>
        [
            .. Moves(look).Select(m => LookAt(m, look.Coils, look.Delayed, look.On, look.Ways)),
            .. Switchings(look).Select(on => LookAt(look.Positions, look.Coils, look.Delayed, on, look.Ways)),
            .. Turnings(look).Select(ways => LookAt(look.Positions, look.Coils, look.Delayed, look.On, ways)),
            .. Waits(look),
        ];

        bool IsLasting(Look look)
        {
            if (look.IsStable) return true;
            var chatters = !Closure(look).Any(l => l.IsStable);
            Chatters |= chatters;
            return chatters;
        }

        var starts = Varying.Aggregate((IEnumerable<int[]>)[[]], (all, part) => all.SelectMany(w => Enumerable.Range(0, WaysOf(part)).Select(v => (int[])[.. w, v])));
        var rests = starts.Select(ways => LookAt(
            [.. _panel.Actuators.Select(a => a.Positions.IndexOf(a.Rest))], new bool[Relays.Count], new bool[Relays.Count], [.. Supplies.Select(_ => true)], ways)).ToList();
        var frontier = rests.SelectMany(Closure).Where(IsLasting).Distinct().ToList();
        foreach (var look in frontier) Lasting[look.Key] = (look, 0);
        for (var moves = 1; frontier.Count > 0; moves++)
        {
            var next = new List<Look>();
            foreach (var look in frontier)
            {
                foreach (var moved in Moved(look))
                {
                    foreach (var settled in Closure(moved))
                    {
                        if (Lasting.ContainsKey(settled.Key) || !IsLasting(settled)) continue;
                        Lasting[settled.Key] = (settled, moves);
                        next.Add(settled);
                    }
                }
            }

            frontier = next;
        }

        foreach (var (look, _) in Lasting.Values.ToList())
            foreach (var (actuator, transit, opens) in Moves(look).SelectMany(m => Transits(look, m)))
            {
                Look Standing(int position)
                {
                    int[] positions = [.. look.Positions];
                    positions[actuator] = position;
                    return LookAt(positions, look.Coils, look.Delayed, look.On, look.Ways);
                }

                Moments.Add((LookAt(look.Positions, look.Coils, look.Delayed, look.On, look.Ways, transit), Standing(transit.From), Standing(transit.To), opens));
            }

        // A relay changes over while the relays settle: after a move, or when all is switched on.
        var moving = Lasting.Values.Select(l => l.Look)
            .SelectMany(Moved).Concat(rests).SelectMany(Closure).Distinct().ToList();
        foreach (var at in moving)
            for (var k = 0; k < Relays.Count; k++)
                if (_bridging.Contains(Relays[k].Designator) && at.IsUnstable(k))
                    foreach (var others in "ba")
                        Moments.Add((
                            LookAt(at.Positions, at.Coils, at.Delayed, at.On, at.Ways, new Transit(-1 - k, 0, 1, others)), at,
                            LookAt(at.Positions, Turned(at.Coils, k), at.Delayed, at.On, at.Ways), false));

        bool ComesBack(Look from, Look to)
        {
            var (seen, waiting) = (new HashSet<Look> { from }, new Stack<Look>([from]));
            while (waiting.TryPop(out var at))
            {
                if (at == to) return true;
                for (var k = 0; k < Relays.Count; k++)
                    if (at.IsWaiting(k))
                        foreach (var next in AfterWait(at, k)) if (seen.Add(next)) waiting.Push(next);
            }

            return false;
        }

        for (var k = 0; k < Relays.Count; k++)
            if (Lasting.Values.Any(l => l.Look.IsStable && l.Look.IsWaiting(k) && AfterWait(l.Look, k).Any(next => ComesBack(next, l.Look))))
                Flashing.Add(Relays[k].Designator);
    }

    private static bool[] Turned(bool[] bits, int index)
    {
        bool[] turned = [.. bits];
        turned[index] = !turned[index];
        return turned;
    }

    private IEnumerable<bool[]> Switchings(Look look)
    {
        for (var i = 0; i < Supplies.Count; i++)
        {
            if (!Supplies[i].IsSwitched) continue;
            bool[] on = [.. look.On];
            on[i] = !on[i];
            yield return on;
        }
    }

    /// <summary>Each part that varies to each of its other ways.</summary>
    private IEnumerable<int[]> Turnings(Look look)
    {
        for (var i = 0; i < Varying.Count; i++)
        {
            foreach (var way in Enumerable.Range(0, WaysOf(Varying[i])).Where(w => w != look.Ways[i]))
            {
                int[] ways = [.. look.Ways];
                ways[i] = way;
                yield return ways;
            }
        }
    }

    private IEnumerable<(int Actuator, Transit Transit, bool Opens)> Transits(Look look, int[] positions)
    {
        var a = Enumerable.Range(0, positions.Length).First(i => positions[i] != look.Positions[i]);
        var actuator = _panel.Actuators[a];
        var (here, there, count) = (look.Positions[a], positions[a], actuator.Positions.Length);
        var pairs = actuator.IsEndless && count > 2 && Math.Abs(here - there) == count - 1
            ? [(count - 1, 0)]
            : Enumerable.Range(Math.Min(here, there), Math.Abs(here - there)).Select(i => (i, i + 1));
        var asks = _panel.Expectations.Any(e => e.IsInPassing);
        foreach (var (from, to) in pairs)
        {
            bool ClosedAt(Condition when, int position) => when is PositionCondition p && p.Actuator == actuator.Name && p.Positions.Contains(actuator.Positions[position].Name);
            if (_contacts.Any(c => c.Bridges && ClosedAt(c.When, from) != ClosedAt(c.When, to)))
            {
                yield return (a, new Transit(a, from, to, 'b'), false);
                yield return (a, new Transit(a, from, to, 'a'), false);
            }

            if (asks) yield return (a, new Transit(a, from, to, 'o'), true);
        }
    }

    /// <summary>
    /// An actuator between two positions; contacts that break first stand as before (b), as after (a) or are open (o). A relay that
    /// changes over has numbers below zero, from -1.
    /// </summary>
    internal sealed record Transit(int Actuator, int From, int To, char Others);

    private IEnumerable<int[]> Moves(Look look)
    {
        for (var a = 0; a < _panel.Actuators.Length; a++)
        {
            var actuator = _panel.Actuators[a];
            var here = look.Positions[a];
            var position = actuator.Positions[here];
            if (_panel.Locks.Any(l => l.Actuator == actuator.Name && l.Positions.Contains(position.Name) && !look.Holds(l.Release))) continue;
            var targets = new HashSet<int>();
            var count = actuator.Positions.Length;
            if (actuator.IsEndless) targets.UnionWith([(here + 1) % count, (here + count - 1) % count]);
            else targets.UnionWith(new[] { here - 1, here + 1 }.Where(t => t >= 0 && t < count));
            if (position.SpringsTo is { } back) targets.Add(actuator.Positions.ToList().FindIndex(p => p.Name == back));
            foreach (var target in targets.Where(t => t != here))
            {
                int[] moved = [.. look.Positions];
                moved[a] = target;
                yield return moved;
            }
        }
    }

    /// <summary>Everything about one state.</summary>
    internal sealed class Look
    {
        private readonly Simulator _owner;
        private readonly Dictionary<TerminalId, int> _group;
        private readonly int _groups;
        private readonly bool[] _shorted;
        private readonly Transit? _transit;
        private readonly (TerminalId A, TerminalId B, double Ohms)[] _sections;
        private double[] _volts = [];
        private int[] _island = [];

        public Look(Simulator owner, string key, int[] positions, bool[] coils, bool[] delayed, bool[] on, int[] ways, Transit? transit)
        {
            (_owner, Key, Positions, Coils, Delayed, On, Ways, _transit) = (owner, key, positions, coils, delayed, on, ways, transit);
            _sections = [.. owner.Varying.SelectMany((part, i) => Sections(part, ways[i]))];
            var colour = Enumerable.Range(0, owner._nodes).ToArray();
            foreach (var (a, b, when, bridges) in owner._contacts)
            {
                if (!IsClosed(when, bridges)) continue;
                var (one, other) = (colour[owner._node[a]], colour[owner._node[b]]);
                for (var i = 0; i < colour.Length; i++)
                    if (colour[i] == other) colour[i] = one;
            }

            foreach (var (a, b, _) in _sections.Where(s => s.Ohms == 0))
            {
                var (one, other) = (colour[owner._node[a]], colour[owner._node[b]]);
                for (var i = 0; i < colour.Length; i++)
                    if (colour[i] == other) colour[i] = one;
            }

            var used = owner._node.Values.Select(n => colour[n]).Distinct().Order().ToList();
            _groups = used.Count;
            _group = owner._node.ToDictionary(p => p.Key, p => used.BinarySearch(colour[p.Value]));
            _shorted = [.. owner.Supplies.Select((s, i) => on[i] && DownstreamOf(s.At("+")).Contains(Group(s.At("-"))))];
            if (IsShorted) return;
            Solve(s => s.Volts, null);
            NoteBorderlines();
        }

        public string Key { get; }

        public int[] Positions { get; }

        public bool[] Coils { get; }

        /// <summary>For each relay whether its delayed contacts stand operated; false for relays without a delay.</summary>
        public bool[] Delayed { get; }

        public bool[] On { get; }

        public int[] Ways { get; }

        public bool IsOn => On.All(o => o);

        public bool IsShorted => _shorted.Any(s => s);

        public bool IsStable => !Enumerable.Range(0, Coils.Length).Any(k => IsUnstable(k) || FollowsAtOnce(k));

        /// <summary>Whether the delayed contacts are about to follow the coil: in a way that takes no time.</summary>
        public bool FollowsAtOnce(int relay) => _owner.Relays[relay].HasDelay && Delayed[relay] != Coils[relay] && !IsWaiting(relay);

        /// <summary>Whether a delay is running out.</summary>
        public bool IsWaiting(int relay) => Delayed[relay] != Coils[relay]
            && (Coils[relay] ? _owner.Relays[relay].OnDelay : _owner.Relays[relay].OffDelay) is not null;

        public bool IsShortedAt(int supply) => _shorted[supply];

        public bool IsUnstable(int relay) => Coils[relay]
            ? IsShorted || !LoadLimits.StaysEnergised(Element(_owner.Relays[relay]), VoltsAcross(_owner.Relays[relay]), 0)
            : !IsShorted && LoadLimits.IsEnergised(Element(_owner.Relays[relay]), VoltsAcross(_owner.Relays[relay]), 0);

        public int Group(TerminalId terminal) => _group[terminal];

        public bool Joined(TerminalId a, TerminalId b) => Group(a) == Group(b);

        public bool Holds(Condition condition) => condition switch
        {
            AllCondition all => all.Parts.All(Holds),
            AnyCondition any => any.Parts.Any(Holds),
            EnergisedCondition e when !_owner.Relays.Any(r => r.Designator == e.Part) =>
                IsEnergised(_owner.Loads.Single(l => l.Designator == e.Part)) == e.Energised,
            _ => HoldsWithoutSolving(condition),
        };

        /// <summary>Of a relay: whether its contacts are over; of others whether they get enough.</summary>
        public bool IsEnergised(Part load) => load is Relay relay
            ? Coils[_owner.Relays.ToList().IndexOf(relay)]
            : IsAttracted(load);

        public bool IsAttracted(Part load) => !IsShorted && LoadLimits.IsEnergised(Element(load), VoltsAcross(load), AmpsThrough(load));

        public double Fraction(Part load) => IsShorted ? 0 : LoadLimits.FedFraction(Element(load), VoltsAcross(load), AmpsThrough(load));

        public double VoltsAcross(Part load)
        {
            var (from, to) = Ends(load);
            return _volts[Group(from)] - _volts[Group(to)];
        }

        /// <summary>Volts of an input against its board's ground, or null where it floats.</summary>
        public double? InputVolts(TerminalId input, TerminalId ground)
        {
            if (IsShorted) return null;
            var (a, b) = (Group(input), Group(ground));
            return _island[a] == _island[b] ? _volts[a] - _volts[b] : null;
        }

        /// <summary>What a meter of 10 megohm shows there.</summary>
        public double MeterVolts(TerminalId input, TerminalId ground)
        {
            if (InputVolts(input, ground) is { } volts) return volts;
            var other = (Look)MemberwiseClone();
            other.Solve(s => s.Volts, (input, ground));
            return other._volts[Group(input)] - other._volts[Group(ground)];
        }

        /// <summary>Groups reached from a terminal; loads count as joints when told, rails end the way.</summary>
        public HashSet<int> Reach(TerminalId from, bool upstream)
        {
            var rails = Rails();
            var seen = new HashSet<int> { Group(from) };
            var waiting = new Stack<int>(seen);
            while (waiting.TryPop(out var at))
            {
                foreach (var part in _owner._panel.Parts.Where(p => p is Lamp or Led or Relay or Solenoid or Consumer or Resistor or Diode))
                {
                    var (a, b) = Ends(part);
                    var (start, end) = (Group(a), Group(b));
                    if (part is Diode or Led && upstream) (start, end) = (end, start);
                    foreach (var next in Crossings(at, start, end, oneWay: part is Diode or Led))
                        if (!rails.Contains(next) && seen.Add(next)) waiting.Push(next);
                }

                foreach (var (a, b, _) in _sections)
                    foreach (var next in Crossings(at, Group(a), Group(b), oneWay: false))
                        if (!rails.Contains(next) && seen.Add(next)) waiting.Push(next);
            }

            return seen;
        }

        /// <summary>Whether both ends of a load come to different rails without another load on the way.</summary>
        public bool IsDirect(Part load)
        {
            var (from, to) = Ends(load);
            var (here, there) = (RailsFrom(Group(from)), RailsFrom(Group(to)));
            return here.Count > 0 && there.Count > 0 && !(here.Count == 1 && here.SetEquals(there));
        }

        private void NoteBorderlines()
        {
            foreach (var load in _owner.Loads)
                foreach (var limit in new[] { LoadLimits.PartFraction, LoadLimits.LedFraction, LoadLimits.LampFraction, LoadLimits.OperateFraction, LoadLimits.ConsumerFraction })
                    Note(Fraction(load), limit);
            foreach (var board in _owner._panel.Parts.OfType<Board>())
                foreach (var input in board.Inputs)
                    foreach (var limit in new[] { LoadLimits.LowVolts(input), LoadLimits.HighVolts(input), input.MaxVolts ?? 0, -0.6 })
                        Note(MeterVolts(board.At(input.Terminal), board.At("GND")), limit);

            // Two supplies that fight through a diode are a finding; what they end at is a matter of milliohms.
            _owner.IsBorderline |= _owner._panel.Parts.OfType<Diode>().Any(d => AmpsThrough(d) > 5);

            void Note(double value, double limit) => _owner.IsBorderline |= Math.Abs(value - limit) < 0.02 * Math.Abs(limit);
        }

        private static (TerminalId From, TerminalId To) Ends(Part part) => part switch
        {
            Lamp => (part.At("X1"), part.At("X2")),
            Resistor or Consumer => (part.At("1"), part.At("2")),
            Led or Diode => (part.At("A"), part.At("K")),
            _ => (part.At("A1"), part.At("A2")),
        };

        private static IEnumerable<int> Crossings(int at, int start, int end, bool oneWay)
        {
            if (at == start) yield return end;
            if (at == end && !oneWay) yield return start;
        }

        private static double Ohms(Part part) => Math.Max(LeastOhms, part switch
        {
            Lamp l => (l.RatedVolts / l.RatedAmps)!.Value,
            Resistor r => r.Ohms!.Value,
            Relay r => r.Coil.Ohms!.Value,
            Solenoid s => s.Coil.Ohms!.Value,
            Consumer c => (c.RatedVolts / c.RatedAmps)!.Value,
            Led d => (0.1 * d.ForwardVolts / d.RatedAmps)!.Value,
            _ => 0.01,
        });

        private static double Knee(Part part) => part switch { Led d => 0.9 * d.ForwardVolts!.Value, Diode d => d.ForwardVolts, _ => 0 };

        private static Element Element(Part part) => new(ElementKind.Lamp, part, default, default) { FromNode = 0, ToNode = 0, Ohms = 1 };

        private double AmpsThrough(Part part) => (VoltsAcross(part) - Knee(part)) / Ohms(part);

        private HashSet<int> Rails() => [.. _owner.Supplies.Where((_, i) => On[i]).SelectMany(s => new[] { Group(s.At("+")), Group(s.At("-")) }),
            .. _owner._panel.Parts.OfType<Board>().Select(b => Group(b.At("GND")))];

        private HashSet<int> RailsFrom(int start)
        {
            var rails = Rails();
            var (found, seen, waiting) = (new HashSet<int>(), new HashSet<int> { start }, new Stack<int>([start]));
            while (waiting.TryPop(out var at))
            {
                if (rails.Contains(at))
                {
                    found.Add(at);
                    continue;
                }

                foreach (var part in _owner._panel.Parts.Where(p => p is Resistor or Diode))
                {
                    var (a, b) = Ends(part);
                    foreach (var next in Crossings(at, Group(a), Group(b), oneWay: false))
                        if (seen.Add(next)) waiting.Push(next);
                }

                foreach (var (a, b, _) in _sections)
                    foreach (var next in Crossings(at, Group(a), Group(b), oneWay: false))
                        if (seen.Add(next)) waiting.Push(next);
            }

            return found;
        }

        public HashSet<int> DownstreamOf(TerminalId start)
        {
            var seen = new HashSet<int> { Group(start) };
            bool grew;
            do
            {
                grew = false;
                foreach (var diode in _owner._panel.Parts.OfType<Diode>())
                    if (seen.Contains(Group(diode.At("A")))) grew |= seen.Add(Group(diode.At("K")));
            }
            while (grew);
            return seen;
        }

        private bool IsClosed(Condition when, bool bridges)
        {
            if (_transit is not { } t) return HoldsWithoutSolving(when);
            if (t.Actuator < 0)
            {
                var relay = _owner.Relays[-1 - t.Actuator].Designator;
                if (when is not EnergisedCondition { Energised: var closes } e || e.Part != relay) return HoldsWithoutSolving(when);
                return bridges || closes == (t.Others == 'a');
            }

            var (before, after) = (HoldsWithoutSolving(when, t.From), HoldsWithoutSolving(when, t.To));
            return bridges ? before || after : t.Others switch { 'b' => before, 'a' => after, _ => before && after };
        }

        private bool HoldsWithoutSolving(Condition condition, int? transit = null) => condition switch
        {
            PositionCondition p => p.Positions.Contains(PositionOf(p.Actuator, transit)),
            SupplyCondition s => s.On == (_owner.Supplies.ToList().FindIndex(o => o.Designator == s.Supply) is var i && (i < 0 || On[i])),
            EnergisedCondition e => Coils[_owner.Relays.ToList().FindIndex(r => r.Designator == e.Part)] == e.Energised,
            DelayedCondition d => Delayed[_owner.Relays.ToList().FindIndex(r => r.Designator == d.Relay)] == d.Operated,
            _ => throw new InvalidOperationException(),
        };

        private string PositionOf(string actuator, int? transit)
        {
            var index = _owner._panel.Actuators.ToList().FindIndex(a => a.Name == actuator);
            var position = transit is { } t && _transit!.Actuator == index ? t : Positions[index];
            return _owner._panel.Actuators[index].Positions[position].Name;
        }

        /// <summary>Tries every mode of the diodes until one fits.</summary>
        private void Solve(Func<Supply, double> setting, (TerminalId A, TerminalId B)? meter)
        {
            var oneWay = _owner._panel.Parts.Where(p => p is Diode or Led).ToList();
            for (var mode = 0; mode < 1 << oneWay.Count; mode++)
            {
                var isOn = oneWay.Select((p, i) => (p, On: (mode >> i & 1) == 1)).ToDictionary(p => p.p, p => p.On);
                SolveLinear(setting, meter, isOn);
                if (oneWay.All(p => isOn[p] == (VoltsAcross(p) > Knee(p)))) return;
            }

            throw new InvalidOperationException("No mode of the diodes fits.");
        }

        private void SolveLinear(Func<Supply, double> setting, (TerminalId A, TerminalId B)? meter, Dictionary<Part, bool> isOn)
        {
            var matrix = Matrix<double>.Build.Dense(_groups, _groups);
            var right = Vector<double>.Build.Dense(_groups);
            var colour = Enumerable.Range(0, _groups).ToArray();
            var island = Enumerable.Range(0, _groups).ToArray();
            void Join(int[] set, int a, int b)
            {
                var (one, other) = (set[a], set[b]);
                for (var i = 0; i < set.Length; i++)
                    if (set[i] == other) set[i] = one;
            }

            void Branch(TerminalId from, TerminalId to, double siemens, double volts, bool ties)
            {
                var (a, b) = (Group(from), Group(to));
                if (a == b) return;
                matrix[a, a] += siemens;
                matrix[b, b] += siemens;
                matrix[a, b] -= siemens;
                matrix[b, a] -= siemens;
                right[a] += siemens * volts;
                right[b] -= siemens * volts;
                Join(colour, a, b);
                if (ties) Join(island, a, b);
            }

            foreach (var part in _owner._panel.Parts.Where(p => p is Lamp or Led or Relay or Solenoid or Consumer or Resistor or Diode))
            {
                var (from, to) = Ends(part);
                if (isOn.TryGetValue(part, out var on) && !on) Branch(from, to, Leak, 0, ties: false);
                else Branch(from, to, 1 / Ohms(part), Knee(part), ties: true);
            }

            foreach (var (a, b, ohms) in _sections.Where(s => s.Ohms > 0)) Branch(a, b, 1 / ohms, 0, ties: true);
            foreach (var supply in _owner.Supplies.Where((_, i) => On[i]))
                Branch(supply.At("+"), supply.At("-"), 1 / LeastOhms, setting(supply), ties: true);
            foreach (var board in _owner._panel.Parts.OfType<Board>())
                foreach (var input in board.Inputs.Where(i => i.PullUpVolts is not null))
                    Branch(board.At(input.Terminal), board.At("GND"), 1 / input.PullUpOhms, input.PullUpVolts!.Value, ties: true);
            if (meter is { } probe) Branch(probe.A, probe.B, 1e-7, 0, ties: true);

            // One node of each component is held at zero: a large conductance to the common reference.
            foreach (var first in colour.Select((c, i) => (c, i)).GroupBy(p => p.c).Select(g => g.First().i)) matrix[first, first] += 1;
            _volts = [.. matrix.LU().Solve(right)];
            _island = island;
        }
    }
}
