using System.Collections.Immutable;
using Schematic.Bench.Readings;
using Schematic.Model;

namespace Schematic.Bench.Learning;

/// <summary>What is known of two contacts in one stand.</summary>
internal enum Relation
{
    /// <summary>Nobody has measured it.</summary>
    Unknown,

    /// <summary>Joined without a device between.</summary>
    Closed,

    /// <summary>Nothing passes.</summary>
    Open,

    /// <summary>A resistance.</summary>
    Ohms,
}

/// <summary>What readings tell of an unknown unit: its contacts, and for each stand that was measured what joins them there.</summary>
internal sealed class Knowledge
{
    private readonly Dictionary<Stand, StandKnowledge> _at = [];
    private readonly Meter _meter;

    public Knowledge(BenchReadings readings)
    {
        (Panel, _meter) = (readings.Declared, readings.Meter);
        Contacts = [.. Panel.Parts.OfType<Connector>().SelectMany(c => c.Terminals.Select(t => c.At(t.Name)))];
        var numberOf = Contacts.Select((c, i) => (c, i)).ToDictionary(p => p.c, p => p.i);
        foreach (var reading in readings.Taken) Add(reading, numberOf);
        foreach (var stand in _at.Values) stand.Settle();
    }

    /// <summary>The connectors and actuators that the readings file declares.</summary>
    public Panel Panel { get; }

    /// <summary>All contacts, the frame left away.</summary>
    public ImmutableArray<TerminalId> Contacts { get; }

    /// <summary>The actuators.</summary>
    public ImmutableArray<Actuator> Actuators => Panel.Actuators;

    /// <summary>The stands that were measured, the one at rest first.</summary>
    public IEnumerable<StandKnowledge> Stands => _at.Values.OrderBy(s => Stand.Rest(Actuators).MovesTo(s.Stand, Actuators));

    /// <summary>What is known at a stand.</summary>
    public StandKnowledge At(Stand stand)
    {
        if (!_at.TryGetValue(stand, out var at)) _at[stand] = at = new StandKnowledge(stand, Contacts.Length);
        return at;
    }

    private void Add(NotedReading reading, Dictionary<TerminalId, int> numberOf)
    {
        var stand = Stand.Rest(Actuators);
        for (var i = 0; i < Actuators.Length; i++)
            foreach (var held in reading.Held.Where(h => h.Actuator == Actuators[i].Name)) stand = stand.With(i, held.Place);
        int[] red = [.. reading.Red.Where(numberOf.ContainsKey).Select(t => numberOf[t])];
        int[] black = [.. reading.Black.Where(numberOf.ContainsKey).Select(t => numberOf[t])];
        if (red.Length > 0 && black.Length > 0) At(stand).Add(red, black, reading, _meter);
    }
}

/// <summary>What is known in one stand.</summary>
internal sealed class StandKnowledge(Stand stand, int contacts)
{
    /// <summary>What was turned from end to end goes below this share of its highest reading; what does not was not changed by it.</summary>
    private const double TurnedShare = 0.8;

    private readonly Relation[,] _relation = new Relation[contacts, contacts];
    private readonly Relation[,] _between = new Relation[contacts, contacts];
    private readonly double[,] _ohms = new double[contacts, contacts];
    private readonly double?[,] _volts = new double?[contacts, contacts];
    private readonly Dictionary<(int, int), string> _seen = [];
    private readonly HashSet<(int, int)> _turned = [];
    private readonly PlaceSets _joined = new(contacts);
    private int[] _group = [.. Enumerable.Range(0, contacts)];

    public Stand Stand => stand;

    /// <summary>Placements with several contacts on a lead at which something passed: which of them is not known yet.</summary>
    public List<(int[] Red, int[] Black, bool IsDiode)> Suspects { get; } = [];

    /// <summary>The lowest contact joined to this one.</summary>
    public int GroupOf(int contact) => _group[contact];

    /// <summary>What the eye told of the device between two contacts, or empty.</summary>
    public string SeenBetween(int one, int other) => _seen.GetValueOrDefault((Math.Min(one, other), Math.Max(one, other)), "");

    /// <summary>Whether the reading between two contacts went with a knob that was turned while the leads stayed on.</summary>
    public bool IsTurned(int one, int other) => _turned.Contains((Math.Min(one, other), Math.Max(one, other)));

    /// <summary>Ohms between two contacts that have some between them.</summary>
    public double Ohms(int one, int other) => _ohms[one, other];

    /// <summary>The diode test from one to the other: infinite when open, null when not measured.</summary>
    public double? Volts(int from, int to) => _volts[from, to];

    /// <summary>The relation as measured between these two contacts themselves.</summary>
    public Relation Measured(int one, int other) => _relation[one, other];

    /// <summary>What joins two contacts, those that are joined to either counting as they do.</summary>
    public Relation Between(int one, int other) =>
        _group[one] == _group[other] ? Relation.Closed : _between[_group[one], _group[other]];

    public void Add(int[] red, int[] black, NotedReading reading, Meter meter)
    {
        var value = reading.Value!;
        var isPair = red.Length == 1 && black.Length == 1;
        if (reading.Test == MeterTest.Diode)
        {
            if (value.Kind == ReadingKind.Open || isPair)
                foreach (var from in red) foreach (var to in black) _volts[from, to] = value.Kind == ReadingKind.Open ? double.PositiveInfinity : value.Number;
            else Suspects.Add((red, black, true));
            return;
        }

        if (value.Kind == ReadingKind.Open)
        {
            foreach (var one in red) foreach (var other in black) Set(one, other, Relation.Open);
            return;
        }

        if (!isPair)
        {
            Suspects.Add((red, black, false));
            return;
        }

        var ohms = Math.Max(0, value.Number - (meter.IsZeroed ? 0 : meter.LeadOhms));
        var isClosed = value.IsBeep || ohms <= BenchCircuit.MostJointOhms;
        Set(red[0], black[0], isClosed ? Relation.Closed : Relation.Ohms);
        if (isClosed) _joined.Join(red[0], black[0]);
        _ohms[red[0], black[0]] = _ohms[black[0], red[0]] = ohms;
        if (value.Lowest is { } low && low < TurnedShare * value.Number) _turned.Add((Math.Min(red[0], black[0]), Math.Max(red[0], black[0])));
        if (reading.Seen.Length > 0) _seen[(Math.Min(red[0], black[0]), Math.Max(red[0], black[0]))] = reading.Seen;
    }

    /// <summary>Draws the readings together, when all are noted.</summary>
    public void Settle()
    {
        _group = _joined.Roots();
        for (var one = 0; one < contacts; one++)
        {
            for (var other = 0; other < contacts; other++)
            {
                var (relation, here, there) = (_relation[one, other], _group[one], _group[other]);
                if (relation != Relation.Unknown && here != there && _between[here, there] != Relation.Ohms) _between[here, there] = relation;
            }
        }
    }

    /// <summary>What hangs together in this stand as measured, through devices or not.</summary>
    public PlaceSets Conductors()
    {
        var sets = new PlaceSets(contacts);
        for (var one = 0; one < contacts; one++)
            for (var other = one + 1; other < contacts; other++)
                if (Between(one, other) is Relation.Closed or Relation.Ohms) sets.Join(one, other);
        return sets;
    }

    private void Set(int one, int other, Relation relation)
    {
        if (one == other) return;
        _relation[one, other] = _relation[other, one] = relation;
    }
}
