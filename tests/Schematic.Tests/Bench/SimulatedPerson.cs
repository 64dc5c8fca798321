using Schematic.Bench;
using Schematic.Bench.Diagnosis;
using Schematic.Bench.Readings;
using Schematic.Bench.RingOut;
using Schematic.Text;

namespace Schematic.Tests.Bench;

/// <summary>
/// A person with a meter at a circuit that may be faulty, who may make a mistake: what they note at a placement comes from the plain
/// dense solver.
/// </summary>
internal sealed class SimulatedPerson(BenchCircuit sound, Explanation truth, Random? noise = null, double noiseShare = 0)
{
    private readonly BenchCircuit _real = truth.Faults.Aggregate(sound, (c, f) => f.ApplyTo(c));
    private readonly DenseMeter _meter = new(truth.Faults.Aggregate(sound, (c, f) => f.ApplyTo(c)));
    private DenseMeter[]? _turned;

    /// <summary>What is noted at a placement.</summary>
    public NotedReading Note(Placement noted)
    {
        var real = truth.Mistake?.Real(noted) ?? noted;
        if (real.Test == MeterTest.Turned) return NoteOf(noted, Turned(real));
        var number = real.Test == MeterTest.Ohms ? _meter.Ohms(real.Stand, real.Red, real.Black) : _meter.DiodeVolts(real.Stand, real.Red, real.Black);
        if (noise is not null && real.Test == MeterTest.Ohms) number *= 1 + (noiseShare * ((2 * noise.NextDouble()) - 1));
        var value = double.IsInfinity(number) ? new NotedValue(ReadingKind.Open, 0)
            : real.Test == MeterTest.Ohms ? new NotedValue(ReadingKind.Ohms, number + (truth.Mistake?.LeadOhms ?? 0))
            : new NotedValue(ReadingKind.Volts, Math.Max(0, number));
        return NoteOf(noted, value);
    }

    /// <summary>What the meter shows with the knob at one end of its way, and at the other.</summary>
    private NotedValue Turned(Placement real)
    {
        _turned ??= [TurnedTo(1), TurnedTo(-1)];
        var ends = _turned.Select(m => m.Ohms(real.Stand, real.Red, real.Black) + (truth.Mistake?.LeadOhms ?? 0)).ToArray();
        return ends.Any(double.IsInfinity) ? new NotedValue(ReadingKind.Open, 0) : new NotedValue(ReadingKind.Ohms, ends.Max()) { Lowest = ends.Min() };
    }

    private DenseMeter TurnedTo(int end) => new(_real with
    {
        Elements = [.. _real.Elements.Select(e => e.Value.Slides == 0 ? e : e with { Value = e.Value with { Ohms = Math.Max(1e-3, e.Value.Ohms * e.Value.ShareAt(isLow: null, end)) } })],
    });

    private NotedReading NoteOf(Placement noted, NotedValue value)
    {
        var rest = Stand.Rest(sound.Actuators);
        return new NotedReading(
            [.. sound.Actuators.Select((a, i) => (a.Name, Index: i)).Where(a => noted.Stand.Places[a.Index] != rest.Places[a.Index])
                .Select(a => new HeldPlace(a.Name, noted.Stand.Places[a.Index]))],
            noted.Test, [.. noted.Red.Select(t => sound.Terminals[t])], [.. noted.Black.Select(t => sound.Terminals[t])], value, SourceSpan.None);
    }

    /// <summary>All that is noted at these placements.</summary>
    public BenchReadings Note(IEnumerable<Placement> placements) => new()
    {
        Source = new SourceText("simulated.readings", ""),
        Readings = [.. placements.Select(Note)],
    };

    /// <summary>
    /// Notes a ring-out, then follows the proposed next measurements until none is left; gives the last diagnosis, how many
    /// measurements were added, among how many groups they had to tell, and all that was noted.
    /// </summary>
    public (DiagnosisResult Result, int Added, int FirstGroups, BenchReadings Noted) Follow(IEnumerable<Placement> placements, int most, double sure = 0.95, IEnumerable<Placement>? goOn = null)
    {
        var others = new Queue<Placement>(goOn ?? []);
        var readings = Note(placements);
        var result = Diagnoser.Diagnose(sound, readings);
        var groups = result.Ranking.Length;
        var added = 0;
        while (added < most && result.Ranking[0].Share < sure)
        {
            // When nothing is proposed a person goes on with the plan.
            if ((result.Next?.Placement ?? (others.TryDequeue(out var other) ? other : null)) is not { } next) break;
            readings = readings with { Readings = readings.Readings.Add(Note(next)) };
            result = Diagnoser.Diagnose(sound, readings);
            added++;
        }

        return (result, added, groups, readings);
    }

    /// <summary>The rank of the truth, or of what no measurement tells from it, from one; zero when it is not ranked.</summary>
    public static int RankOf(DiagnosisResult result, Explanation truth)
    {
        var cache = new ReadingCache(new Meter());
        var stands = StandFinder.Stands(result.Circuit);
        var real = Looks(truth);
        for (var i = 0; i < result.Ranking.Length; i++)
            if (Looks(result.Ranking[i].Members[0]).SequenceEqual(real)) return i + 1;
        return 0;

        List<ulong> Looks(Explanation explanation)
        {
            var explained = Explained.Of(result.Circuit, explanation, cache);
            return [.. stands.Select(explained.Look)];
        }
    }
}
