using System.Globalization;
using System.Text;
using ApprovalTests;
using ApprovalTests.Namers;
using Schematic.Analysis;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.Loads;
using Schematic.Diagnostics;
using Xunit;
using static Schematic.Tests.Analysis.WholeWords;

namespace Schematic.Tests.Analysis.Loads;

/// <summary>
/// What loads get and what is carried, in full: the worst of each figure with the position that shows it, the same found region by region
/// and as bounds, when each load works behind its wires, where volts are lost, and every word that is told. Read the kept text beside a change.
/// </summary>
public sealed class WholeLoadsTests
{
    public static TheoryData<string> Names => WholePanels.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void The_worst_of_a_panel_reads(string name)
    {
        using var scenario = ApprovalResults.ForScenario(name);
        var written = new StringBuilder();
        WriteWorst(line => written.Append(line).Append('\n'), WholePanels.Context(name).Worst);
        Approvals.Verify(written.ToString());
    }

    // With one case a region all the others are bounds; with enough of them their sums.
    [Theory]
    [MemberData(nameof(Names))]
    public void Sums_and_bounds_of_regions_read(string name)
    {
        using var scenario = ApprovalResults.ForScenario(name);
        var context = WholePanels.Context(name);
        var written = new StringBuilder();
        foreach (var most in new[] { 1024, 1 })
        {
            written.Append($"==== up to {most} cases a region\n");
            WriteRegions(line => written.Append(line).Append('\n'), context, most);
        }

        Approvals.Verify(written.ToString());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_judge_of_a_panel_reads(string name)
    {
        using var scenario = ApprovalResults.ForScenario(name);
        var context = WholePanels.Context(name);
        var written = new StringBuilder();
        WriteJudge(line => written.Append(line).Append('\n'), context);
        WriteWeak(line => written.Append(line).Append('\n'), context);
        Approvals.Verify(written.ToString());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void What_is_told_of_a_panel_reads(string name)
    {
        using var scenario = ApprovalResults.ForScenario(name);
        var findings = PanelChecker.Check(WholePanels.Panel(name));
        var written = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        new TextPrinter(TextTheme.Plain, 200).Print(findings, written);
        foreach (var finding in findings)
            written.Write($"{finding.Rule}: {string.Join(", ", finding.Subjects.Select(s => s.Name))} | {string.Join(", ", finding.Values.Select(v => $"{v.Name} {Number(v.Value)} {v.Unit}"))}\n");
        Approvals.Verify(written.ToString());
    }

    private static void WriteWorst(Action<string> write, WorstCases worst)
    {
        write($"{worst.CaseCount} cases{(worst.IsBound ? ", bound" : "")}, left out {worst.RegionsLeftOut}, uncounted {Words(worst.Uncounted)}");
        foreach (var wire in worst.Wires)
        {
            write($"wire {wire.Wire.Designator} {wire.Wire.Gauge?.Text ?? "no gauge"}{(wire.Wire.IsGaugeChosen ? " chosen" : "")}: {Told(wire.Amps)}, may carry {Number(wire.Capacity?.Amps)}, {Number(wire.Celsius)} degC, {Number(wire.Ohms)} ohm,"
                + $" {Number(wire.DropVolts)} V, {Number(wire.Watts)} W, share {Number(wire.Share)}{(wire.IsOver ? ", over" : "")}{(wire.SizingMethod is { } method ? $" | {method}" : "")}");
        }

        foreach (var contact in worst.Contacts.Concat(worst.Wipers))
            write($"contact {contact.Contact.Common} {contact.Contact.Throw}: {Told(contact.Amps)}, needs {Told(contact.RequiredAmps)}, cold {Told(contact.PeakAmps)}, for {Words(contact.Loads)}, share {Number(contact.Share)}");
        foreach (var part in worst.Protectors)
        {
            write($"protector {part.Part.Designator} {Number(part.RatedAmps)}: {Told(part.Amps)}, thinnest {part.Thinnest?.Designator ?? "-"} {Number(part.Capacity?.Amps)}, share {Number(part.Share)}"
                + $"{(part.IsTooLarge ? ", too large" : "")}, choice {Number(part.Choice.Amps)}");
        }

        foreach (var supply in worst.Supplies)
        {
            write($"supply {supply.Supply.Designator}: {Told(supply.Amps)}, cold {Told(supply.PeakAmps)}, share {Number(supply.Share)}, protector {Number(supply.Protector.Amps)}{(supply.IsWronglySet ? ", wrongly set" : "")}");
            write($"  shares {string.Join(", ", supply.Shares.Select(s => $"{s.Load} {Number(s.Amps)}"))}");
            foreach (var (word, setting) in new[] { ("warm", supply.Setting), ("cold", supply.ColdSetting) })
            {
                write($"  {word} {Number(setting.Lowest.Volts)} ({setting.Lowest.Reason}) to {Number(setting.Highest.Volts)} ({setting.Highest.Reason}), recommended {Number(setting.Recommended)}"
                    + $"{(setting.IsPossible ? "" : ", impossible")}{(setting.Serves(supply.Supply.Volts) ? ", served" : "")}");
            }

            write($"  feeds {Words(supply.Feeds.Order(StringComparer.Ordinal))}");
        }

        foreach (var load in worst.Loads)
        {
            write($"load {Words(load.Load)}: least {Told(load.LeastVolts)}, most {Told(load.MostVolts)}, {Told(load.MostAmps)} A, held {Told(load.HeldVolts)}, drop {Told(load.Drop)} of {Number(load.AllowedDrop)}"
                + $"{(load.IsForward ? ", forward" : "")}{(load.IsBackward ? ", backward" : "")}");
            write($"  rated {Number(load.Need.RatedVolts)}, cold {Number(load.Need.ColdVolts)}, hot {Number(load.Need.HotVolts)}, stands {Number(load.Need.MostVolts)}{(load.Need.MostIsStated ? " as stated" : "")}");
        }

        foreach (var output in worst.Outputs) write($"output {output.Part.Designator}: {Told(output.Amps)} A, forward {Told(output.Forward)}, backward {Told(output.Backward)}");
    }

    private static void WriteRegions(Action<string> write, AnalysisContext context, int most)
    {
        var proof = context.Positions;
        var circuit = proof.Circuit.Circuit;
        var network = new WiredNetwork(context, circuit, context.Panel.Wires, _ => context.Panel.Limits.AmbientCelsius);
        var placeOf = new Dictionary<Element, int>(ReferenceEqualityComparer.Instance);
        foreach (var element in circuit.Elements) placeOf.Add(element, placeOf.Count);
        var regions = new RegionCases(proof.States, network, most);
        write($"{regions.All.Count()} cases, left out {regions.LeftOut}");
        foreach (var region in regions.Regions)
        {
            write($"region{(region.IsComplete ? "" : " in part")}: wires {Words(region.Part.Wires.Select(w => context.Panel.Wires[w].Designator))}, protectors {Words(region.Part.Protectors.Select(p => circuit.Protectors[p].Designator))},"
                + $" contacts {Words(region.Part.Contacts.Select(c => c.ToString(CultureInfo.InvariantCulture)))}, elements {Words(region.Part.Elements.Select(e => circuit.Elements[e].Name))}, {region.Part.NodeCount} nodes");
            foreach (var state in region.Cases)
                write($"  {string.Concat(state.Closed.Select(c => c ? '1' : '0'))} {string.Concat(state.SuppliesOn.Select(c => c ? '1' : '0'))} when {Words(proof.Circuit, state.When)}");
        }

        var tally = new Tally(circuit, placeOf, new LoadStanding(proof.States), context.Panel.Wires.Length);
        regions.Add(tally, network, proof.Judge);
        void Peaks(string what, Peak[] peaks, Func<int, string> nameOf)
        {
            var seen = peaks.Select((p, i) => (Peak: p, Name: nameOf(i))).Where(p => p.Peak.Case is not null).ToList();
            if (seen.Count > 0) write($"{what}: {string.Join(", ", seen.Select(p => $"{p.Name} {Number(p.Peak.Value)}{(Number(p.Peak.Shown) == Number(p.Peak.Value) ? "" : $" (shown {Number(p.Peak.Shown)})")}"))}");
        }

        string Element(int i) => circuit.Elements[i].Name;
        string Contact(int i) => $"{circuit.Contacts[i].Common}-{circuit.Contacts[i].Throw.Name}";
        Peaks("wires", tally.Wires, i => context.Panel.Wires[i].Designator);
        Peaks("protectors", tally.Protectors, i => circuit.Protectors[i].Designator);
        Peaks("contacts", tally.ContactAmps, Contact);
        Peaks("contacts need", tally.ContactRequired, Contact);
        Peaks("contacts cold", tally.ContactPeak, Contact);
        Peaks("elements", tally.Elements, Element);
        Peaks("supplies cold", tally.SupplyPeak, Element);
        Peaks("most volts", tally.MostVolts, Element);
        Peaks("least volts", tally.LeastVolts, Element);
        Peaks("held volts", tally.HeldVolts, Element);
        Peaks("drops", tally.Drops, Element);
    }

    private static void WriteJudge(Action<string> write, AnalysisContext context)
    {
        var (circuit, judge) = (context.Positions.Circuit, context.Positions.Judge);
        foreach (var load in circuit.Circuit.Loads.Where(l => l.Ohms is not null && l.IsRatingKnown && circuit.CasesOf(l).All(c => c.Ranged.IsEmpty)))
        {
            var verdict = judge.Of(load);
            write($"{Words(load)}: works {Words(circuit, verdict.Attracted)}; stays {Words(circuit, verdict.Kept)}; in doubt {Words(circuit, verdict.Doubt)}; least {Number(judge.LeastVolts(load))} V");
            if (context.Positions.States.Nearest(circuit.IdealAttracted(load)) is not { } witness) continue;
            write($"  in {Words(circuit, witness.State)}: {Number(judge.VoltsIn(load, witness.State))} V {Number(judge.AmpsIn(load, witness.State))} A, lost {string.Join(", ", judge.LostIn(load, witness.State).Select(l => $"{l.Name} {Number(l.Volts)}"))}");
        }

        write($"elements at most {string.Join(", ", circuit.Circuit.Elements.Select((e, i) => $"{Words(e)} {Number(judge.MostAmps(i))}"))}");
        write($"wires at most {string.Join(", ", context.Panel.Wires.Select((w, i) => $"{w.Designator} {Number(judge.MostWireAmps(i))}"))}");
        write($"contacts at most {string.Join(", ", circuit.Circuit.Contacts.Select(c => $"{c.Common}-{c.Throw.Name} {Number(judge.MostContactAmps(c))}"))}");
        write($"protectors at most {string.Join(", ", circuit.Circuit.Protectors.Select((p, i) => $"{p.Designator} {Number(judge.MostProtectorAmps(i))}"))}");
    }

    private static void WriteWeak(Action<string> write, AnalysisContext context)
    {
        foreach (var weak in context.Weak.All)
        {
            write($"weak {weak.Load.Name}: {Number(weak.Volts)} V {Number(weak.Amps)} A in {Words(context.Positions.Circuit, weak.Best.State)}, lost {string.Join(", ", weak.Lost.Select(l => $"{l.Name} {Number(l.Volts)}"))},"
                + $" followers {Words(weak.Followers.Select(f => f.Name))}, locks {Words(weak.Locks.Select(l => $"{l.Lock.Actuator} {l.Position}"))}");
        }

        write($"explained {Words(context.Positions.Circuit.Circuit.Loads.Where(context.Weak.Explains).Select(l => l.Name))}, locks {Words(context.Panel.Locks.Where(context.Weak.Explains).Select(l => $"{l.Actuator} {string.Join(' ', l.Positions)}"))}");
    }

    private static string Told(Extreme? extreme) => extreme is null ? "-"
        : Number(extreme.Value) + (Number(extreme.Shown) == Number(extreme.Value) ? "" : $" (shown {Number(extreme.Shown)})") + (extreme.State is null ? "" : $" at {extreme.Position}");
}
