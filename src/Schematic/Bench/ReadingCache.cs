using Schematic.Analysis.Circuits;
using Schematic.Analysis.Electrical;

namespace Schematic.Bench;

/// <summary>
/// What a meter reads between two places of a small network, solved once for each network that looks alike: nearly all faulty
/// units leave nearly all networks as they were.
/// </summary>
public sealed class ReadingCache(Meter meter)
{
    /// <summary>Tracks in one network whose wipers are looked at apart from each other.</summary>
    private const int MostTracksApart = 4;

    /// <summary>What leads on old contacts add or take.</summary>
    private const double SlackOhms = 0.3;

    /// <summary>What may be left of a track when its wiper stands at the end (from memory).</summary>
    private const double TurnedSlackOhms = 5;

    private readonly Dictionary<string, Reading> _known = new(StringComparer.Ordinal);
    private readonly Dictionary<ElementValue, int> _numberOf = [];

    /// <summary>The meter that is read.</summary>
    public Meter Meter => meter;

    /// <summary>How many different networks were solved.</summary>
    public int SolvedCount => _known.Count;

    /// <summary>The number of a device's figures, for a network's name.</summary>
    internal int NumberOf(ElementValue value)
    {
        if (!_numberOf.TryGetValue(value, out var number)) _numberOf[value] = number = _numberOf.Count;
        return number;
    }

    /// <summary>The reading from place 0 to place 1 of a network, found under its name or solved.</summary>
    internal Reading Find(MeterTest test, List<(ElementValue Value, int From, int To)> network)
    {
        Span<char> name = network.Count <= 256 ? stackalloc char[1 + (3 * network.Count)] : new char[1 + (3 * network.Count)];
        var numbers = new Dictionary<int, int> { [0] = 0, [1] = 1 };
        name[0] = (char)(1 + (int)test);
        for (var i = 0; i < network.Count; i++)
        {
            var (value, from, to) = network[i];
            network[i] = (value, Renumbered(numbers, from), Renumbered(numbers, to));
            name[1 + (3 * i)] = (char)NumberOf(value);
            name[2 + (3 * i)] = (char)network[i].From;
            name[3 + (3 * i)] = (char)network[i].To;
        }

        var known = _known.GetAlternateLookup<ReadOnlySpan<char>>();
        if (!known.TryGetValue(name, out var reading)) known[name] = reading = Solve(test, numbers.Count, network);
        return reading;
    }

    private static int Renumbered(Dictionary<int, int> numbers, int place)
    {
        if (!numbers.TryGetValue(place, out var number)) numbers[place] = number = numbers.Count;
        return number;
    }

    private Reading Solve(MeterTest test, int places, List<(ElementValue Value, int From, int To)> elements)
    {
        if (test == MeterTest.Turned) return Turned(places, elements);
        var middle = Show(test, places, elements, e => 1);
        if (middle is not { } value) return Reading.Open;
        var kind = test == MeterTest.Ohms ? ReadingKind.Ohms : ReadingKind.Volts;
        // More resistance anywhere never gives less between two places (Rayleigh), so the ends of the range bound the rest.
        // A wiper gives one piece of its track what it takes from the other, so both ends of its way and the middle are asked, of every
        // track by itself.
        var stands = Wipers([.. elements.Select(e => e.Value.Track).Where(t => t != 0).Distinct()]).ToList();
        var least = stands.Min(s => Show(test, places, elements, e => e.ShareAt(isLow: true, s(e.Track))) ?? value);
        var most = stands.Max(s => Show(test, places, elements, e => e.ShareAt(isLow: false, s(e.Track))) ?? (test == MeterTest.Ohms ? meter.RangeOhms : meter.DiodeVolts));
        var slack = test == MeterTest.Ohms ? SlackOhms : 0.02; // leads on old contacts; the last digit
        return new Reading(kind, value, Math.Max(0, (least * 0.99) - slack), (most * 1.01) + slack);
    }

    /// <summary>For each way in which the wipers can stand where each track's does; of many tracks those beyond the first few stand alike.</summary>
    private static IEnumerable<Func<int, int>> Wipers(List<int> tracks)
    {
        var count = Math.Min(tracks.Count, MostTracksApart);
        var ways = (int)Math.Pow(3, count);
        for (var way = 0; way < ways; way++)
        {
            var digits = way;
            yield return track =>
            {
                var place = Math.Min(tracks.IndexOf(track), count - 1);
                return place < 0 ? 0 : (digits / (int)Math.Pow(3, place) % 3) - 1;
            };
        }
    }

    /// <summary>What the meter goes through while what varies is turned from one end to the other.</summary>
    private Reading Turned(int places, List<(ElementValue Value, int From, int To)> elements)
    {
        var ends = new List<(double Value, double Least, double Most)>();
        foreach (var end in new[] { -1, 1 })
        {
            if (Show(MeterTest.Ohms, places, elements, e => e.ShareAt(isLow: null, end)) is not { } value) return Reading.Open;
            var least = Show(MeterTest.Ohms, places, elements, e => e.ShareAt(isLow: true, end)) ?? value;
            var most = Show(MeterTest.Ohms, places, elements, e => e.ShareAt(isLow: false, end)) ?? meter.RangeOhms;
            ends.Add((value, Math.Max(0, (least * 0.99) - SlackOhms), (most * 1.01) + TurnedSlackOhms));
        }

        var (low, high) = (ends.MinBy(e => e.Value), ends.MaxBy(e => e.Value));
        return new Reading(ReadingKind.Ohms, high.Value, high.Least, high.Most) { Lowest = low };
    }

    /// <summary>Ohms or volts; null when the meter shows that nothing passes.</summary>
    private double? Show(MeterTest test, int places, List<(ElementValue Value, int From, int To)> elements, Func<ElementValue, double> share)
    {
        var isOhms = test != MeterTest.Diode;
        var branches = new Branch[elements.Count + 1];
        for (var i = 0; i < elements.Count; i++)
        {
            var (value, from, to) = elements[i];
            var ohms = Math.Max(value.Ohms * share(value), Circuit.LeastOhms);
            branches[i] = value.IsOneWay
                ? new Branch(BranchKind.OneWay, from, to, Math.Max(value.Ohms, Circuit.LeastOhms), value.Volts * share(value))
                : new Branch(BranchKind.Linear, from, to, ohms);
        }

        branches[^1] = isOhms
            ? new Branch(BranchKind.Source, 0, 1, 1, meter.OhmsVolts)
            : new Branch(BranchKind.Source, 0, 1, 1, meter.DiodeVolts) { LimitAmps = meter.DiodeAmps };
        var solved = NodalSolver.Solve(places, branches);
        var (volts, amps) = (solved.Volts[0] - solved.Volts[1], -solved.Amps[^1]);
        if (isOhms) return amps * meter.RangeOhms <= volts ? null : volts / amps;
        return volts >= meter.DiodeVolts * 0.98 ? null : volts;
    }
}
