using System.Collections.Immutable;
using System.Globalization;
using Schematic.Analysis;
using Schematic.Analysis.Circuits;
using Schematic.Bench.Faults;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Bench.RingOut;

/// <summary>A ring-out as tables: what comes first, the steps, and what no measurement can tell.</summary>
public static class RingOutList
{
    private const string Box = "[_]";

    /// <summary>The tables in the order in which they are read.</summary>
    public static ImmutableArray<ReportTable> Build(RingOutPlan plan) => [Before(plan), Steps(plan), .. NotTold(plan)];

    /// <summary>What is done before a lead touches anything.</summary>
    public static ReportTable Before(RingOutPlan plan) => new(
        $"Before the ring-out of {SideWords(plan.Circuit)}",
        [new("order", "", ColumnAlign.Right), new("what", "What to do first")],
        [.. Cautions(plan.Circuit).Select((c, i) => ImmutableArray.Create(Number(i + 1), c))]);

    /// <summary>The steps.</summary>
    public static ReportTable Steps(RingOutPlan plan) => new(
        $"Ring-out of {SideWords(plan.Circuit)}",
        [
            new("step", "Step", ColumnAlign.Right),
            new("hold", "Hold these positions"),
            new("red", "Red lead"),
            new("black", "Black lead"),
            new("test", "Meter"),
            new("expected", "Expected", ColumnAlign.Right),
            new("limits", "Limits"),
            new("reading", "Reading"),
            new("done", "", ColumnAlign.Centre),
        ],
        [.. plan.Steps.Select((s, i) => Row(plan.Circuit, s, i))])
    {
        Notes = [.. Notes(plan)],
    };

    /// <summary>What no measurement at these contacts can tell; no table where there is nothing.</summary>
    public static IEnumerable<ReportTable> NotTold(RingOutPlan plan)
    {
        ImmutableArray<ImmutableArray<string>> rows =
        [
            .. AmongThemselves(plan).Select(w => ImmutableArray.Create("does not show", w)),
            .. plan.Hidden.Where(f => f.Kind != FaultKind.Exchange).Select(f => ImmutableArray.Create(IsByCoil(plan, f) ? "only with its coil" : "does not show", f.Words)),
            .. plan.Undecided.Select(f => ImmutableArray.Create("not found", f.Words)),
            .. plan.Alike.Where(g => !IsOnePair(plan.Circuit, g)).Select(g => ImmutableArray.Create("read alike", string.Join("; ", g.Select(f => f.Words)))),
        ];
        if (rows.IsEmpty) yield break;
        yield return new ReportTable(
            $"What no measurement at these contacts can tell: {SideWords(plan.Circuit)}",
            [new("kind", ""), new("faults", "Faults")], rows)
        {
            Notes = plan.Alike.Any(g => IsOnePair(plan.Circuit, g))
                ? ["Not listed: contacts that are joined for good are one to the meter, so which of them is bridged to something no reading tells. Look at them."]
                : [],
        };
    }

    /// <summary>Whether all of these are bridges between the same two things, at one or another of the contacts that are joined for good.</summary>
    private static bool IsOnePair(BenchCircuit circuit, ImmutableArray<Fault> faults)
    {
        if (!faults.All(f => f.Kind is FaultKind.Bridge or FaultKind.Frame)) return false;
        var sets = new PlaceSets(circuit.Terminals.Length);
        foreach (var joint in circuit.Joints)
            if (joint.IsSound) sets.Join(joint.From, joint.To);
        return faults.Select(f => (Math.Min(sets.Find(f.First), sets.Find(f.Second)), Math.Max(sets.Find(f.First), sets.Find(f.Second)))).Distinct().Take(2).Count() == 1;
    }

    /// <summary>
    /// Exchanges that do not show, those that are the same of all of some contacts together: "any two of J1:5..8 are exchanged".
    /// </summary>
    internal static IEnumerable<string> AmongThemselves(RingOutPlan plan)
    {
        var left = plan.Hidden.Where(f => f.Kind == FaultKind.Exchange).ToList();
        while (left.Count > 0)
        {
            var pairs = left.SelectMany(f => new[] { (f.First, f.Second), (f.Second, f.First) }).ToHashSet();
            var group = new List<int> { left[0].First, left[0].Second };
            foreach (var other in left.SelectMany(f => new[] { f.First, f.Second }).Distinct())
                if (!group.Contains(other) && group.TrueForAll(g => pairs.Contains((g, other)))) group.Add(other);
            var first = left[0];
            left.RemoveAll(f => group.Contains(f.First) && group.Contains(f.Second));
            yield return group.Count == 2 ? first.Words : $"any two of {TerminalText.Of(plan.Circuit, [.. group.Order()])} are exchanged";
        }
    }

    /// <summary>Whether a contact of a relay would have to be moved by its coil to show it.</summary>
    internal static bool IsByCoil(RingOutPlan plan, Fault fault) => fault.Kind switch
    {
        FaultKind.Dead or FaultKind.Stuck => plan.Circuit.Contacts[fault.First].Source.IsRelayContact,
        FaultKind.Open => plan.Circuit.Joints[fault.First] is var joint && plan.Circuit.Contacts.Any(c => c.Source.IsRelayContact && (c.From == joint.To || c.To == joint.To || c.From == joint.From || c.To == joint.From)),
        _ => false,
    };

    /// <summary>What lies on the bench, in words.</summary>
    public static string SideWords(BenchCircuit circuit) => circuit.Side switch
    {
        BenchSide.Unit => $"the unit alone, at {PartWords(circuit)}",
        BenchSide.Harness => "the harness alone",
        _ => "all of it, plugged together",
    };

    /// <summary>The same in a title.</summary>
    internal static string ShortWords(BenchCircuit circuit) => circuit.Side switch
    {
        BenchSide.Unit => PartWords(circuit),
        BenchSide.Harness => "the harness",
        _ => "all of it",
    };

    /// <summary>What is said before anything is measured.</summary>
    public static IEnumerable<string> Cautions(BenchCircuit circuit)
    {
        if (circuit.Panel.Parts.OfType<Transformer>().Select(t => t.Designator).ToList() is { Count: > 0 } mains)
            yield return $"Pull the mains plug of {NameList.Sentence(mains)} and keep it in sight: fixed mains is for licensed people to cut off and lock. A winding gives a shock when a lead is lifted: keep fingers off.";
        yield return "Switch every supply off and take it off; prove dead with the meter at volts. Never measure resistance on a live circuit.";
        yield return "Let capacitors discharge, through a resistor and not through a blade, and measure that they are empty.";
        if (circuit.Side == BenchSide.Unit) yield return "Unplug the unit: nothing but the meter may be on its contacts.";
        if (circuit.PulledOff.Length > 0) yield return $"Pull {NameList.Sentence(circuit.PulledOff.Select(p => $"{p.Plug} off {p.From}"))}: the unit would be measured too.";
        if (circuit.Side != BenchSide.Unit && TakenOff(circuit) is { Length: > 0 } off) yield return $"Take the wires off {off}, or unplug {(off.Contains(' ', StringComparison.Ordinal) ? "them" : "it")}: what is inside would be measured too. Its terminals in the list are then the ends of their wires, those of one terminal clipped together. They go back last, by their labels: no measurement proves their places there.";
        yield return "Touch the leads together and note what the meter shows; zero it or take that off each reading. Keep fingers off the tips.";
        foreach (var one in circuit.Actuators.Where(a => a.IsPushToTurn)) yield return $"{one.Name} turns only while it is pushed: push it for each move.";
        foreach (var one in circuit.Panel.Locks.Where(l => !l.IsPush && circuit.Actuators.Any(a => a.Name == l.Actuator)))
            yield return $"{one.Actuator} is locked at {NameList.Sentence(one.Positions)}: release the lock by hand, or feed its coil with the leads lifted and prove dead again.";
        if (circuit.FrameNumber >= 0) yield return "frame: bare metal of the shell or the chassis.";
    }

    private static string PartWords(BenchCircuit circuit) => NameList.Sentence(
        circuit.Accessible.Where(t => t != circuit.FrameNumber).Select(t => circuit.Terminals[t].Part).Distinct());

    private static string TakenOff(BenchCircuit circuit) =>
        NameList.Sentence(circuit.Panel.Parts.Where(BenchCut.IsTakenOff).Select(p => p.Designator));

    private static ImmutableArray<string> Row(BenchCircuit circuit, RingOutStep step, int index) =>
    [
        Number(index + 1), step.Doing,
        TerminalText.Of(circuit, step.Placement.Red), TerminalText.Of(circuit, step.Placement.Black),
        MeterTestText.Words(step.Placement.Test),
        step.Expected.Text, step.Expected.Limits == step.Expected.Text ? "" : step.Expected.Limits, "", Box,
    ];

    private static IEnumerable<string> Notes(RingOutPlan plan)
    {
        yield return "Several contacts under one lead are clipped together. A position is held until the next one is named. Diode test: current from the red lead to the black one.";
        yield return $"{Number(plan.Steps.Length)} placements and {Number(plan.Moves)} {(plan.Moves == 1 ? "move" : "moves")} find {Number(plan.FoundCount)} of {Number(plan.FaultCount)} single faults; all pairs in all positions are {plan.AllPairs.ToString("N0", CultureInfo.InvariantCulture)} placements. No plan has fewer than {Number(plan.LowerBound)}.";
        yield return $"Limits: {LimitWords(plan.Circuit)}the meter's own error besides; wires, joints and closed contacts up to 2 ohm without the leads.";
        foreach (var note in Besides(plan)) yield return note;
        if (!plan.Undecided.IsEmpty) yield return Limit(plan);
        if (plan.IsRouteCutShort) yield return "Too many orders of the positions to compare them all: this is the best one found, and another may need fewer moves. What the steps find does not depend on it.";
        if (plan.IsCutDown) yield return "So many contacts: of bridges and exchanges only neighbours were counted. Every conductor is tested against every other all the same.";
    }

    /// <summary>How far from its figure each kind of device on the bench may read.</summary>
    internal static string LimitWords(BenchCircuit circuit)
    {
        bool Has(ElementKind kind) => circuit.Elements.Any(e => e.Value.Kind == kind);
        return (Has(ElementKind.Lamp) ? "a cold lamp a tenth of its hot resistance, and half to almost twice that; " : "")
            + (Has(ElementKind.Coil) ? "coils 13 % below to 15 % above; " : "")
            + (Has(ElementKind.Consumer) || Has(ElementKind.Supply) ? "bells, motors and windings from next to nothing to half more; " : "");
    }

    /// <summary>What the steps leave out, and how a person gets at it.</summary>
    internal static IEnumerable<string> Besides(RingOutPlan plan)
    {
        var circuit = plan.Circuit;
        if (!circuit.LeftOut.IsEmpty)
            yield return $"Left out because not traced yet: {TerminalText.Of(circuit.LeftOut)}. Measure each against all others clipped together, halve them where something passes, and put into the file what was found.";
        foreach (var end in circuit.LeadingAnywhere.Select(t => circuit.Terminals[t].Part))
            yield return $"Where wire {end} leads is not traced: nothing is expected between what it hangs on and the rest. Put its known end against all others clipped together, and halve them where it beeps.";
        var relays = plan.Hidden.Where(f => f.Kind is FaultKind.Dead or FaultKind.Stuck && IsByCoil(plan, f)).Select(f => circuit.Contacts[f.First].Source.Part.Designator).Distinct().ToList();
        if (relays.Count > 0)
            yield return $"With power off the coil of {NameList.Sentence(relays)} moves nothing: press the armature with a dry stick, or feed the coil alone, and measure the contacts that change.";
        var hands = plan.Steps.Select(s => StandText.HeldCount(s.Placement.Stand, circuit.Actuators)).DefaultIfEmpty().Max();
        if (hands > 2) yield return $"Up to {Number(hands)} things have to be held against their springs at once: tape or wedge them.";
    }

    /// <summary>What was not looked at to the end, in a sentence.</summary>
    internal static string Limit(RingOutPlan plan) =>
        $"Too many combinations of positions to look at them all: of {Number(plan.Undecided.Length)} {(plan.Undecided.Length == 1 ? "fault" : "faults")} it is not known whether any shows {(plan.Undecided.Length == 1 ? "it" : "them")}. Plan the ring-out part by part, or look at {(plan.Undecided.Length == 1 ? "it" : "them")} by eye: {string.Join("; ", plan.Undecided.Take(8).Select(f => f.Words))}{(plan.Undecided.Length > 8 ? "; and more" : "")}.";

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
