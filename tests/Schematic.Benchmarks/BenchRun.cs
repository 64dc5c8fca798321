using System.Diagnostics;
using System.Globalization;
using Schematic.Bench;
using Schematic.Bench.Diagnosis;
using Schematic.Bench.Faults;
using Schematic.Bench.Learning;
using Schematic.Bench.Readings;
using Schematic.Bench.RingOut;
using Schematic.Binding;
using Schematic.Model;
using Schematic.Tests.Bench;
using Schematic.Tests.Generators;
using Schematic.Text;

namespace Schematic.Benchmarks;

/// <summary>
/// Measures the bench by injected faults: ring-out plans, diagnosis of single and double faults and of the mistakes of people. All
/// readings are simulated by a plain dense solver that shares nothing with the product.
/// </summary>
internal static class BenchRun
{
    /// <summary>Runs one measurement, or all.</summary>
    public static int Run(string which, int units)
    {
        if (which is "plan" or "all") Plans(units);
        if (which is "single" or "all") Singles(units);
        if (which is "double" or "all") Doubles(units);
        if (which is "mistake" or "all") Mistakes(units);
        if (which is "learn" or "all") Learns(units);
        if (which is "grow" or "all") Grow();
        return 0;
    }

    /// <summary>
    /// What has one thing in plenty: a plan, a diagnosis of one blown or open part from it, and the next measurement. Processor time.
    /// </summary>
    private static void Grow()
    {
        foreach (var (name, side, text) in Grown())
        {
            var circuit = name.EndsWith("series", StringComparison.Ordinal) ? BenchCircuit.Read(Load(text), BenchSide.Mated, "J1") : BenchCircuit.Read(Load(text), side);
            var clock = Stopwatch.StartNew();
            var plan = RingOutPlanner.Plan(circuit);
            var planned = clock.Elapsed.TotalMilliseconds;
            var told = FaultCatalogue.All(circuit).Where(f => f.Kind is FaultKind.Open or FaultKind.Dead or FaultKind.Missing && !plan.Hidden.Contains(f)).ToArray();
            var truth = new Explanation([told[told.Length / 2]], null);
            var notes = new SimulatedPerson(circuit, truth).Note(plan.Steps.Select(s => s.Placement));
            clock.Restart();
            var result = Diagnoser.Diagnose(circuit, notes);
            var diagnosed = clock.Elapsed.TotalMilliseconds;
            Print(string.Create(
                CultureInfo.InvariantCulture,
                $"{name}, {circuit.Accessible.Length} contacts, {circuit.Actuators.Length} actuators: plan {planned:0} ms, {plan.Steps.Length} placements, {plan.Moves} moves, {plan.FoundCount} of {plan.FaultCount} faults, {plan.Hidden.Length} hidden, {plan.Undecided.Length} undecided; diagnosis {diagnosed:0} ms, truth at {SimulatedPerson.RankOf(result, truth)}"));
        }
    }

    private static IEnumerable<(string Name, BenchSide Side, string Text)> Grown()
    {
        yield return ("24 lamps behind a resistor", BenchSide.Harness, GrowthPanels.TextOf("lamps", 24));
        yield return ("16 switches on one net", BenchSide.Unit, Unit(33, Switches(16, i => $"J1:{i} J1:33")));
        yield return ("16 switches in series", BenchSide.Unit, $"connector J1 {{ pins ; strip 3 pitch 5 mm }}\n{GrowthPanels.TextOf("series", 16)}net IN J1:1 SA1:1\nnet OUT J1:2 DS1:X2\n");
        yield return ("keypad 4 by 4", BenchSide.Unit, Unit(8, Switches(16, i => $"J1:{1 + ((i - 1) / 4)} J1:{5 + ((i - 1) % 4)}")));
        yield return ("rotary of 200 throws", BenchSide.Harness, GrowthPanels.TextOf("rotary", 200));
        yield return ("rotary of 60 throws in a unit", BenchSide.Unit, Rotary(60));
        yield return ("24 pairs on a bell", BenchSide.Harness, GrowthPanels.TextOf("pairs", 24));
        yield return ("100 levers and lamps", BenchSide.Harness, GrowthPanels.TextOf("independent", 100));
        yield return ("generated unit", BenchSide.Unit, UnitGenerator.Generate(42, 120));
        yield return ("generated unit", BenchSide.Unit, UnitGenerator.Generate(44, 300));
    }

    private static string Unit(int contacts, string inside) => $"connector J1 {{ pins ; strip {contacts} pitch 5 mm }}\n{inside}";

    private static string Switches(int count, Func<int, string> ends) => string.Concat(Enumerable.Range(1, count)
        .Select(i => $"actuator A{i} {{ off rest ; on springs-to off }}\nswitch S{i} make on A{i} when on {{ {ends(i)} }}\n"));

    private static string Rotary(int throws)
    {
        var names = Enumerable.Range(1, throws).Select(i => $"p{i}").ToList();
        return Unit(throws + 1, $"actuator KNOB {{ {string.Join(" ; ", names)} }}\npole S1 rotary on KNOB {{ common J1:{throws + 1} ; {string.Join(" ; ", names.Select((n, i) => $"{n} J1:{i + 1}"))} }}\n");
    }

    private static IEnumerable<(string Name, BenchCircuit Circuit)> Units(int count)
    {
        foreach (var example in new[] { "lever-frame/lever", "relay-latch/latch", "dsub-breakout/breakout", "engine-order/engine-order", "signal-lamp/signal-lamp", "gate-desk/gate-desk" })
        {
            var panel = PanelLoader.LoadFile(Path.Combine(RepositoryRoot.Find(), "examples", example + ".panel")).Panel;
            foreach (var side in Enum.GetValues<BenchSide>())
            {
                var circuit = BenchCircuit.Read(panel, side);
                if (circuit.Accessible.Length > 2) yield return ($"{example} {side}", circuit);
            }
        }

        for (var seed = 1; seed <= count; seed++)
        {
            var contacts = 8 + (seed * 53 / Math.Max(1, count));
            yield return ($"unit {seed} of {contacts}", BenchCircuit.Read(Load(UnitGenerator.Generate(seed, contacts)), BenchSide.Unit));
        }
    }

    private static Panel Load(string text) => PanelLoader.Load(new SourceText("unit.panel", text), MemoryPanelFiles.None).Panel;

    private static void Plans(int units)
    {
        var (found, faults, hidden, placements, moves, pairs, bound) = (0L, 0L, 0L, 0L, 0L, 0L, 0L);
        foreach (var (name, circuit) in Units(units))
        {
            var plan = RingOutPlanner.Plan(circuit);
            found += plan.FoundCount;
            faults += plan.FaultCount;
            hidden += plan.Hidden.Length;
            placements += plan.Steps.Length;
            moves += plan.Moves;
            pairs += plan.AllPairs;
            bound += plan.LowerBound;
            if (!name.StartsWith("unit", StringComparison.Ordinal))
                Print($"plan of {name}: {plan.Steps.Length} placements, {plan.Moves} moves; all pairs {plan.AllPairs}, bound {plan.LowerBound}; {plan.FoundCount} of {plan.FaultCount} faults, {plan.Hidden.Length} hidden");
        }

        Print($"plans: {placements} placements and {moves} moves where all pairs are {pairs} and the bound is {bound}; {found} of {faults - hidden} faults that can be told ({faults} in all)");
    }

    private static void Singles(int units)
    {
        var tally = new Tally("single faults");
        var random = new Random(1);
        foreach (var (_, circuit) in Units(units))
        {
            var plan = RingOutPlanner.Plan(circuit);
            var told = FaultCatalogue.All(circuit).Where(f => f.Kind is not FaultKind.Weak && plan.Hidden.All(h => h.Words != f.Words)).ToArray();
            if (told.Length == 0) continue;
            for (var i = 0; i < 4; i++) tally.Add(circuit, plan, new Explanation([Pick(random, told)], null));
        }

        tally.Print();
    }

    private static void Doubles(int units)
    {
        var tally = new Tally("double faults");
        var random = new Random(2);
        foreach (var (_, circuit) in Units(units))
        {
            var plan = RingOutPlanner.Plan(circuit);
            var told = FaultCatalogue.All(circuit).Where(f => f.Kind is not FaultKind.Weak && plan.Hidden.All(h => h.Words != f.Words)).ToArray();
            if (told.Length < 2) continue;
            for (var i = 0; i < 2; i++) tally.Add(circuit, plan, new Explanation([Pick(random, told), Pick(random, told)], null));
        }

        tally.Print();
    }

    /// <summary>Faults as likely as the catalogue has them: neighbours more often than contacts far apart.</summary>
    private static Fault Pick(Random random, Fault[] faults)
    {
        var left = random.NextDouble() * faults.Sum(f => f.Chance);
        return faults.First(f => (left -= f.Chance) <= 0 || f == faults[^1]);
    }

    /// <summary>Mistakes from at most twelve readings: eight, four or none that a person takes first, then what is proposed.</summary>
    private static void Mistakes(int units)
    {
        foreach (var own in new[] { 8, 4, 0 }) Mistakes(units, own);
    }

    private static void Mistakes(int units, int own)
    {
        var tally = new Tally($"mistakes, twelve readings, {own} of them before the first proposal");
        var random = new Random(3);
        foreach (var (_, circuit) in Units(units).Where(u => u.Circuit.Accessible.Length >= 8))
        {
            var plan = RingOutPlanner.Plan(circuit);
            var all = MistakeCatalogue.All(circuit);
            for (var i = 0; i < 3 && all.Length > 0; i++)
            {
                var kind = all.Select(m => m.Kind).Distinct().ToArray() is var kinds ? kinds[random.Next(kinds.Length)] : default;
                var ofKind = all.Where(m => m.Kind == kind).ToArray();
                tally.AddMistake(circuit, plan, new Explanation([], ofKind[random.Next(ofKind.Length)]), own);
            }
        }

        tally.Print();
    }

    /// <summary>Drafts from complete readings, from the adaptive order's own, and from noisy ones with the leads in them.</summary>
    private static void Learns(int units)
    {
        var (complete, adaptive, noisy, placements, pairs, shown) = (0, 0, 0, 0L, 0L, 0);
        for (var seed = 1; seed <= units; seed++)
        {
            var text = UnitGenerator.Generate(seed, 8 + (seed * 53 / units));
            var unit = new UnknownUnit(text);
            var readings = unit.Adaptive(5000);
            if (units <= 20) Print($"  unit {seed}: {readings.Readings.Length} placements of {LearnPlanner.AllPairs(readings.Declared)}");
            placements += readings.Readings.Length;
            pairs += LearnPlanner.AllPairs(readings.Declared);
            var whole = unit.DifferenceOf(unit.Complete());
            var own = unit.DifferenceOf(readings);
            var noise = new UnknownUnit(text, new Random(seed), 0.05, 0.4);
            var rough = noise.DifferenceOf(noise.Complete());
            if (whole is null) complete++;
            if (own is null) adaptive++;
            if (rough is null) noisy++;
            foreach (var (kind, difference) in new[] { ("complete", whole), ("adaptive", own), ("noisy", rough) })
                if (difference is not null && shown++ < 6) Print($"unit {seed}, {kind}: {difference}\n{text}");
        }

        Print($"learn: exact from complete readings {complete} of {units}, from the adaptive order {adaptive} of {units} with {placements} placements where all pairs are {pairs}, with noise and leads {noisy} of {units}");
    }

    private static void Print(string line) => Console.WriteLine(line);

    private sealed class Tally(string name)
    {
        private readonly List<string> _missed = [];
        private readonly SortedDictionary<MistakeKind, (int Cases, int First)> _kinds = [];
        private int _cases;
        private int _first;
        private int _firstOrSameRun;
        private int _third;
        private int _settled;
        private int _added;
        private double _slowest37;
        private double _slowest61;

        public void Add(BenchCircuit circuit, RingOutPlan plan, Explanation truth)
        {
            var person = new SimulatedPerson(circuit, truth);
            Follow(circuit, truth, person, plan.Steps.Select(s => s.Placement).ToList(), 20);
        }

        /// <summary>A dozen readings: closed joints of the plan first, as a person checks what the diagram says.</summary>
        public void AddMistake(BenchCircuit circuit, RingOutPlan plan, Explanation truth, int own)
        {
            var person = new SimulatedPerson(circuit, truth);
            var begun = FirstReadings(circuit, plan, own);
            // What the person did shows nowhere: then nobody can tell.
            if (!Shows(circuit, truth)) return;
            Follow(circuit, truth, person, begun, 12 - begun.Count, sure: 2, plan.Steps.Select(s => s.Placement).Except(begun));
        }

        /// <summary>
        /// What a person takes first: in each position what closes there and in fewest others, then a second one.
        /// </summary>
        private static List<Placement> FirstReadings(BenchCircuit circuit, RingOutPlan plan, int own)
        {
            var cache = new ReadingCache(new Meter());
            var sound = Explained.Of(circuit, Explanation.Sound, cache);
            var stands = plan.Steps.Select(s => s.Placement.Stand).Distinct().ToList();
            var closing = plan.Steps.Where(s => s.Expected.Kind != ReadingKind.Open).Select(s => s.Placement).ToList();
            var each = closing.GroupBy(p => p.Stand)
                .Select(g => g.OrderBy(p => stands.Count(s => sound.Read(p with { Stand = s }).Kind != ReadingKind.Open)).ToList()).ToList();
            var most = each.Count == 0 ? 0 : each.Max(g => g.Count);
            return [.. Enumerable.Range(0, most).SelectMany(i => each.Where(g => g.Count > i).Select(g => g[i])).Take(own)];
        }

        private void Follow(BenchCircuit circuit, Explanation truth, SimulatedPerson person, List<Placement> begun, int most, double sure = 0.95, IEnumerable<Placement>? goOn = null)
        {
            var before = Process.GetCurrentProcess().TotalProcessorTime;
            var (result, added, groups, noted) = person.Follow(begun, most, sure, goOn);
            var each = (Process.GetCurrentProcess().TotalProcessorTime - before).TotalMilliseconds / (added + 1);
            var rank = SimulatedPerson.RankOf(result, truth);
            if (circuit.Accessible.Length <= 38) _slowest37 = Math.Max(_slowest37, each);
            else if (circuit.Accessible.Length <= 62) _slowest61 = Math.Max(_slowest61, each);
            _cases++;
            if (rank == 1) _first++;
            if (truth.Mistake?.Kind is { } kind) _kinds[kind] = _kinds.GetValueOrDefault(kind) is var old ? (old.Cases + 1, old.First + (rank == 1 ? 1 : 0)) : default;
            if (rank == 1 || IsSameRun(truth, result.Ranking[0].Members[0])) _firstOrSameRun++;
            if (rank is >= 1 and <= 3) _third++;
            if (added <= Math.Ceiling(Math.Log2(Math.Max(1, groups))) + 2) _settled++;
            _added += added;
            if (rank != 1) _missed.Add($"  rank {rank}: {truth.Words} <- {result.Ranking[0].Words} ({result.Ranking[0].Share:0.00}); {Told(circuit, truth, result.Ranking[0].Members[0], noted)}");
        }

        /// <summary>How many of the readings a sound unit cannot give, and how many tell the truth from what stands first.</summary>
        private static string Told(BenchCircuit circuit, Explanation truth, Explanation first, BenchReadings noted)
        {
            var cache = new ReadingCache(noted.Meter);
            var placements = noted.Readings.Select(r => ReadingPlacement.Of(circuit, r)).OfType<Placement>().ToList();
            var real = Explained.Of(circuit, truth, cache);
            int Differing(Explanation other) => Explained.Of(circuit, other, cache) is var read ? placements.Count(p => real.Read(p).DiffersFrom(read.Read(p))) : 0;
            return $"of {placements.Count} readings {Differing(Explanation.Sound)} differ from sound, {Differing(first)} from the first; {circuit.Accessible.Length} contacts, {circuit.Actuators.Length} actuators";
        }

        /// <summary>Whether the person is sent to count the same run anew, though its first contact is not settled yet.</summary>
        private static bool IsSameRun(Explanation truth, Explanation first) =>
            truth.Mistake is { Kind: MistakeKind.Shifted } real && first is { Faults.IsEmpty: true, Mistake: { Kind: MistakeKind.Shifted } named }
            && real.Contacts.Zip(named.Contacts).Select((p, i) => (p.First, p.Second, Own: i)).Where(p => p.First != p.Own && p.Second != p.Own).ToList() is { Count: > 0 } both
            && both.TrueForAll(p => p.First == p.Second);

        private static bool Shows(BenchCircuit circuit, Explanation truth)
        {
            var cache = new ReadingCache(new Meter());
            var (sound, real) = (Explained.Of(circuit, Explanation.Sound, cache), Explained.Of(circuit, truth, cache));
            return StandFinder.Stands(circuit).Any(s => sound.Look(s) != real.Look(s));
        }

        public void Print()
        {
            foreach (var missed in _missed) Console.WriteLine(missed);
            foreach (var (kind, (cases, first)) in _kinds) Console.WriteLine($"  {kind}: {first} of {cases}");
            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{name}: {_cases} cases, first {Share(_first)}, or a run of it with another beginning {Share(_firstOrSameRun)}, among three {Share(_third)}, settled within the bound and two {Share(_settled)}, {(double)_added / Math.Max(1, _cases):0.0} measurements added; slowest diagnosis of up to 37 contacts {_slowest37:0} ms of processor time, up to 61 {_slowest61:0} ms"));
        }

        private string Share(int count) => string.Create(CultureInfo.InvariantCulture, $"{100.0 * count / Math.Max(1, _cases):0.0} %");
    }
}
