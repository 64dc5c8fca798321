using System.Collections.Immutable;
using Schematic.Bench;
using Schematic.Bench.Diagnosis;
using Schematic.Bench.Learning;
using Schematic.Bench.Readings;
using Schematic.Binding;
using Schematic.Text;

namespace Schematic.Tests.Bench;

/// <summary>A unit of which the person knows connector and actuators only, and the plain dense meter at its contacts.</summary>
internal sealed class UnknownUnit
{
    private readonly SimulatedPerson _person;
    private readonly BenchReadings _head;
    private readonly double _leadOhms;

    public UnknownUnit(string text, Random? noise = null, double noiseShare = 0, double leadOhms = 0)
    {
        Circuit = BenchCircuit.Read(PanelLoader.Load(new SourceText("unit.panel", text), MemoryPanelFiles.None).Panel, BenchSide.Unit);
        _person = new SimulatedPerson(Circuit, Explanation.Sound, noise, noiseShare);
        _leadOhms = leadOhms;
        var declared = string.Join('\n', text.Split('\n').Where(l => l.StartsWith("connector", StringComparison.Ordinal) || l.StartsWith("actuator", StringComparison.Ordinal)));
        _head = ReadingsLoader.Load(new SourceText("unit.readings", $"readings unknown\n{declared}"), null).Readings;
        _head = _head with { Meter = new Meter { LeadOhms = leadOhms, IsZeroed = leadOhms == 0 } };
    }

    public BenchCircuit Circuit { get; }

    /// <summary>All pairs at rest and in every position of every actuator alone, and all diode tests at rest.</summary>
    public BenchReadings Complete()
    {
        var actuators = _head.Declared.Actuators;
        var rest = Stand.Rest(actuators);
        var stands = actuators.SelectMany((a, i) => Enumerable.Range(0, a.Positions.Length).Select(p => rest.With(i, 2 * p))).Prepend(rest).Distinct();
        var readings = ImmutableArray.CreateBuilder<NotedReading>();
        foreach (var stand in stands)
        {
            foreach (var (one, other) in Pairs().Where(p => p.One < p.Other)) readings.Add(Note(stand, MeterTest.Ohms, [one], [other]));
            if (stand == rest)
                foreach (var (one, other) in Pairs()) readings.Add(Note(stand, MeterTest.Diode, [one], [other]));
        }

        return _head with { Readings = readings.ToImmutable() };
    }

    /// <summary>The readings that the adaptive order asks for.</summary>
    public BenchReadings Adaptive(int most)
    {
        var readings = _head;
        for (var i = 0; i < most && LearnPlanner.Next(readings) is { } step; i++)
        {
            var note = NoteAt(step);
            readings = readings with { Readings = readings.Readings.Add(note) };
        }

        return readings;
    }

    /// <summary>What is noted at a placement that the adaptive order names.</summary>
    public NotedReading NoteAt(LearnStep step) =>
        Note(step.Stand, step.Test, [.. step.Red.Select(Circuit.NumberOf)], [.. step.Black.Select(Circuit.NumberOf)]);

    /// <summary>Where the draft of these readings differs from the unit, or null.</summary>
    public string? DifferenceOf(BenchReadings readings)
    {
        var draft = Draft.Of(readings);
        var loaded = PanelLoader.Load(new SourceText("draft.panel", draft), MemoryPanelFiles.None);
        if (loaded.HasErrors) return $"{loaded.Diagnostics[0].Span}: {loaded.Diagnostics[0].Message}\n{draft}";
        var difference = UnitLikeness.Difference(Circuit, BenchCircuit.Read(loaded.Panel, BenchSide.Unit));
        return difference is null ? null : $"{difference}\n{draft}";
    }

    private IEnumerable<(int One, int Other)> Pairs() =>
        from one in Circuit.Accessible from other in Circuit.Accessible
        where one != other && one != Circuit.FrameNumber && other != Circuit.FrameNumber
        select (one, other);

    /// <summary>What is noted with the declared actuators held so; some of them may move nothing.</summary>
    private NotedReading Note(Stand declared, MeterTest test, ImmutableArray<int> red, ImmutableArray<int> black)
    {
        var actuators = _head.Declared.Actuators;
        var names = actuators.Select(a => a.Name).ToList();
        var stand = new Stand([.. Circuit.Actuators.Select(a => declared.Places[names.IndexOf(a.Name)])]);
        var note = _person.Note(new Placement(stand, test, red, black)) with
        {
            Held =
            [
                .. actuators.Select((a, n) => (a, n)).Where(p => declared.Places[p.n] != 2 * p.a.Positions.IndexOf(p.a.Rest))
                    .Select(p => new HeldPlace(p.a.Name, declared.Places[p.n])),
            ],
        };
        return note.Value!.Kind == ReadingKind.Ohms ? note with { Value = note.Value with { Number = note.Value.Number + _leadOhms } } : note;
    }
}
