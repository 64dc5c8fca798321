using Schematic.Bench;
using Schematic.Bench.Diagnosis;
using Schematic.Bench.Faults;
using Schematic.Bench.Readings;
using Schematic.Bench.RingOut;
using Schematic.Binding;
using Schematic.Tests.Generators;
using Xunit;

namespace Schematic.Tests.Bench.Diagnosis;

/// <summary>Readings are simulated by the plain dense solver, which shares nothing with the diagnosis.</summary>
public class DiagnoserTests
{
    private static readonly Schematic.Model.Panel Lever = PanelLoader.LoadFile(Repository.PathOf("examples/lever-frame/lever.panel")).Panel;

    private static BenchCircuit LeverUnit => BenchCircuit.Read(Lever, BenchSide.Unit);

    [Fact]
    public void A_sound_unit_passes_and_its_readings_exclude_nearly_all_faults()
    {
        var circuit = LeverUnit;
        var plan = RingOutPlanner.Plan(circuit);
        var result = Diagnoser.Diagnose(circuit, new SimulatedPerson(circuit, Explanation.Sound).Note(plan.Steps.Select(s => s.Placement)));
        Assert.True(result.IsPass);
        Assert.InRange(result.ExcludedShare, 0.95, 1);
        Assert.StartsWith("PASS", DiagnosisList.Verdict(result), StringComparison.Ordinal);
    }

    [Fact]
    public void Whoever_read_the_face_from_its_other_side_is_told_from_a_dozen_readings()
    {
        var circuit = LeverUnit;
        var mistake = MistakeCatalogue.All(circuit).First(m => m.Kind == MistakeKind.Mirrored);
        var plan = RingOutPlanner.Plan(circuit).Steps.Where(s => s.Expected.Kind != ReadingKind.Open).Take(12).Select(s => s.Placement);
        var result = Diagnoser.Diagnose(circuit, new SimulatedPerson(circuit, new Explanation([], mistake)).Note(plan));
        Assert.Contains("read from its other side", result.Ranking[0].Words, StringComparison.Ordinal);
        Assert.InRange(result.Ranking[0].Share, 0.9, 1);
    }

    [Fact]
    public void Whoever_stopped_a_grip_where_it_rests_is_told_so()
    {
        var circuit = LeverUnit;
        var mistake = MistakeCatalogue.All(circuit).First(m => m.Words.StartsWith("GRIP was not held at left-stop", StringComparison.Ordinal));
        var placements = RingOutPlanner.Plan(circuit).Steps.Where(s => s.Expected.Kind != ReadingKind.Open).Select(s => s.Placement).TakeLast(8);
        var result = Diagnoser.Diagnose(circuit, new SimulatedPerson(circuit, new Explanation([], mistake)).Note(placements));
        Assert.Contains("GRIP was not held at left-stop", result.Ranking[0].Words, StringComparison.Ordinal);
        Assert.NotEmpty(result.Ranking[0].For);
        Assert.NotNull(result.Next);
    }

    [Fact]
    public void Leads_that_were_not_zeroed_are_seen_in_every_joint()
    {
        var circuit = LeverUnit;
        var mistake = new Mistake(MistakeKind.NotZeroed, 1e-2, "") { LeadOhms = 4 };
        var placements = RingOutPlanner.Plan(circuit).Steps.Where(s => s.Expected.Kind != ReadingKind.Open).Select(s => s.Placement);
        var result = Diagnoser.Diagnose(circuit, new SimulatedPerson(circuit, new Explanation([], mistake)).Note(placements));
        Assert.Contains("leads were not zeroed", result.Ranking[0].Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("contact S7 never closes")]
    [InlineData("J1:5 and J1:6 are exchanged (neighbours)")]
    [InlineData("DS1 is blown or missing")]
    [InlineData("L1 has shorted turns")]
    [InlineData("J1:10 and J1:29 are bridged")]
    [InlineData("J1:30 touches the frame")]
    public void A_single_fault_is_first_after_the_proposed_measurements(string words)
    {
        var circuit = LeverUnit;
        var truth = new Explanation([FaultCatalogue.All(circuit).First(f => f.Words == words)], null);
        var person = new SimulatedPerson(circuit, truth);
        var (result, added, groups, _) = person.Follow(RingOutPlanner.Plan(circuit).Steps.Select(s => s.Placement), 12);
        Assert.Equal(1, SimulatedPerson.RankOf(result, truth));
        Assert.InRange(added, 0, Math.Ceiling(Math.Log2(Math.Max(1, groups))) + 2);
        Assert.False(result.IsPass);
    }

    [Theory]
    [InlineData(2_500_000, false)]
    [InlineData(1, true)]
    public void A_choice_of_the_next_reading_that_ends_early_says_so(long mostTried, bool isCutShort)
    {
        var circuit = LeverUnit;
        var placements = RingOutPlanner.Plan(circuit).Steps.Where(s => s.Expected.Kind != ReadingKind.Open).Select(s => s.Placement).Take(6);
        var result = Diagnoser.Diagnose(circuit, new SimulatedPerson(circuit, Explanation.Sound).Note(placements), mostTried);
        Assert.NotNull(result.Next);
        Assert.Equal(isCutShort, result.IsNextCutShort);
        Assert.Equal(isCutShort, NotesOf(result).Contains("this is the best of those that were tried, and another may tell more.", StringComparison.Ordinal));
    }

    [Fact]
    public void A_choice_that_ended_early_without_a_reading_does_not_say_that_there_is_none()
    {
        var circuit = LeverUnit;
        var notes = new SimulatedPerson(circuit, Explanation.Sound).Note(RingOutPlanner.Plan(circuit).Steps.Select(s => s.Placement));
        var none = Diagnoser.Diagnose(circuit, notes) with { Next = null, IsNextCutShort = false };
        Assert.StartsWith("Nothing: no measurement would tell more", NotesOf(none), StringComparison.Ordinal);
        Assert.True(none.IsSettled);
        var early = none with { IsNextCutShort = true };
        Assert.StartsWith("Not found: there are too many positions and explanations to try every reading", NotesOf(early), StringComparison.Ordinal);
        Assert.False(early.IsSettled);
    }

    /// <summary>In the readings of the plan a wire in series with a contact reads like the contact; the reading named next tells them apart.</summary>
    [Fact]
    public void An_open_wire_beside_a_contact_is_named_with_it_and_first_after_the_next_reading()
    {
        var circuit = BenchCircuit.Read(PanelLoader.LoadFile(Repository.PathOf("examples/relay-latch/latch.panel")).Panel, BenchSide.Harness);
        var truth = new Explanation([FaultCatalogue.All(circuit).First(f => f.Words == "wire W3 (X1:1 to S2:1) is open")], null);
        var person = new SimulatedPerson(circuit, truth);
        var placements = RingOutPlanner.Plan(circuit).Steps.Select(s => s.Placement).ToList();
        var verdict = DiagnosisList.Verdict(Diagnoser.Diagnose(circuit, person.Note(placements)));
        Assert.StartsWith("WRONG, most likely: contact S2 never closes, or what reads the same and stands beside it in the list; or else: wire W3 (X1:1 to S2:1) is open.", verdict, StringComparison.Ordinal);
        var (result, added, _, _) = person.Follow(placements, 1);
        Assert.Equal(1, added);
        Assert.Equal("wire W3 (X1:1 to S2:1) is open", result.Ranking[0].Words);
        Assert.StartsWith("WRONG: wire W3 (X1:1 to S2:1) is open.", DiagnosisList.Verdict(result), StringComparison.Ordinal);
    }

    private static string NotesOf(DiagnosisResult result) => string.Join(' ', DiagnosisList.Build(result)[^1].Notes);

    [Fact]
    public void One_wrong_reading_among_many_is_told_as_such()
    {
        var circuit = LeverUnit;
        var notes = new SimulatedPerson(circuit, Explanation.Sound).Note(RingOutPlanner.Plan(circuit).Steps.Select(s => s.Placement));
        var twice = notes.Readings.First(r => r.Value!.Kind == ReadingKind.Open);
        var wrong = twice with { Value = new NotedValue(ReadingKind.Ohms, 0.2) };
        var result = Diagnoser.Diagnose(circuit, notes with { Readings = notes.Readings.Add(wrong) });
        Assert.Contains(result.Ranking, g => g.Members[0].IsSound && g.Against.Length == 1);
        Assert.False(result.IsPass);
    }

    /// <summary>All single and double faults tried one by one with the dense solver: the first is the likeliest that fits.</summary>
    [Theory]
    [InlineData(11, 7)]
    [InlineData(14, 6)]
    [InlineData(17, 7)]
    public void No_explanation_that_a_brute_force_search_finds_is_likelier_than_the_first(int seed, int contacts)
    {
        var circuit = BenchCircuit.Read(TestPanels.Load(UnitGenerator.Generate(seed, contacts)), BenchSide.Unit);
        var faults = FaultCatalogue.ForRingOut(circuit);
        var placements = RingOutPlanner.Plan(circuit).Steps.Select(s => s.Placement).ToList();
        var random = new Random(seed);
        for (var round = 0; round < 3; round++)
        {
            var truth = new Explanation([faults[random.Next(faults.Length)], faults[random.Next(faults.Length)]], null);
            var notes = new SimulatedPerson(circuit, truth).Note(placements);
            var fitting = Sets(faults).Where(f => Fits(circuit, f, placements, notes)).Select(f => new Explanation(f, null)).ToList();
            var result = Diagnoser.Diagnose(circuit, notes);
            if (result.Ranking[0].Members[0].Mistake is not null) continue;
            var most = fitting.Append(Explanation.Sound).Where(e => e.Size > 0 || Fits(circuit, [], placements, notes)).Max(e => e.LogChance);
            var found = result.Ranking[0].Members.Max(m => m.LogChance);
            Assert.True(found > most - 3, $"{truth.Words}: found {result.Ranking[0].Words}");
        }
    }

    private static IEnumerable<System.Collections.Immutable.ImmutableArray<Fault>> Sets(System.Collections.Immutable.ImmutableArray<Fault> faults)
    {
        for (var i = 0; i < faults.Length; i++)
        {
            yield return [faults[i]];
            for (var j = i + 1; j < faults.Length; j++) yield return [faults[i], faults[j]];
        }
    }

    private static bool Fits(
        BenchCircuit circuit, System.Collections.Immutable.ImmutableArray<Fault> faults, List<Placement> placements, BenchReadings notes)
    {
        var person = new SimulatedPerson(circuit, new Explanation(faults, null));
        for (var i = 0; i < placements.Count; i++)
        {
            var (one, other) = (person.Note(placements[i]).Value!, notes.Readings[i].Value!);
            if (one.Kind != other.Kind || Math.Abs(one.Number - other.Number) > 0.05 + (0.1 * other.Number)) return false;
        }

        return true;
    }
}
