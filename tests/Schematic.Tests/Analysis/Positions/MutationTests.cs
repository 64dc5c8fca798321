using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using ApprovalTests;
using Schematic.Analysis;
using Schematic.Binding;
using Schematic.Diagnostics;
using Schematic.Model;
using Xunit;

namespace Schematic.Tests.Analysis.Positions;

/// <summary>
/// The main example with one mistake in it: a wire left out, two wires exchanged at one end, a wire soldered to the next
/// contact of the plug. Every mistake must be caught, or be none because the same terminals are joined as before.
/// </summary>
public class MutationTests
{
    private static readonly ImmutableArray<ICheck> Checks = [.. PanelChecker.AllChecks.Where(c => c.Stage <= CheckStage.Positions)];

    [Fact]
    public void Every_mistake_in_the_main_example_is_caught_or_joins_the_same_terminals()
    {
        var panel = PanelLoader.LoadFile(Repository.PathOf("examples/lever-frame/lever.panel")).Panel;
        var report = new StringBuilder();
        Report(report, "With the nets stated, all checks of the wiring and of the positions", panel);
        Report(report, "Wires alone, no nets to compare them with: the proof over positions has to find it", panel with { Nets = [] });
        Approvals.Verify(report.ToString());
    }

    private static void Report(StringBuilder report, string title, Panel panel)
    {
        var known = Findings(panel).Select(f => f.Message).ToHashSet(StringComparer.Ordinal);
        report.Append(title).Append('\n');
        foreach (var kind in Mutants(panel).GroupBy(m => m.Kind))
        {
            var (caught, rules, missed, shown) = (0, new SortedDictionary<string, int>(StringComparer.Ordinal), new SortedDictionary<string, List<string>>(StringComparer.Ordinal), new List<string>());
            foreach (var mutant in kind)
            {
                var fresh = Findings(mutant.Panel).Where(f => !known.Contains(f.Message)).ToList();
                if (fresh.Count == 0)
                {
                    var reason = WhyHarmless(panel, mutant.Panel);
                    Assert.True(reason is not null, $"{mutant.Text}: nothing is found, and it does matter.");
                    if (!missed.TryGetValue(reason!, out var same)) missed[reason!] = same = [];
                    same.Add(mutant.Text);
                    continue;
                }

                caught++;
                foreach (var rule in fresh.Select(f => f.Rule).Distinct()) rules[rule] = rules.GetValueOrDefault(rule) + 1;
                var told = fresh.OrderByDescending(f => f.Severity).ThenByDescending(f => f.Trace.Length > 0).First();
                shown.Add($"      {mutant.Text}: {told.Rule}: {told.Message}" + string.Concat(told.Trace.Select(t => $"\n          {t}")));
            }

            var total = caught + missed.Values.Sum(m => m.Count);
            report.Append(CultureInfo.InvariantCulture, $"  {kind.Key}: {caught} of {total} caught\n");
            foreach (var (rule, count) in rules) report.Append(CultureInfo.InvariantCulture, $"    {rule}: {count}\n");
            foreach (var (reason, same) in missed)
                report.Append(CultureInfo.InvariantCulture, $"    harmless, {reason}: {same.Count} ({string.Join("; ", same)})\n");
            if (panel.Nets.IsEmpty && kind.Key != "two wires exchanged") report.Append("    told as\n").AppendJoin('\n', shown).Append('\n');
        }
    }

    private static List<Diagnostic> Findings(Panel panel) =>
        [.. PanelChecker.Check(panel, [], Checks).Where(f => f.Severity >= Severity.Warning || f.Rule == "net-not-wired")];

    private static IEnumerable<(string Kind, string Text, Panel Panel)> Mutants(Panel panel)
    {
        foreach (var wire in panel.Wires)
            yield return ("a wire left out", $"without {wire.Designator}", panel with { Wires = panel.Wires.Remove(wire) });

        for (var i = 0; i < panel.Wires.Length; i++)
        {
            for (var j = i + 1; j < panel.Wires.Length; j++)
            {
                var (one, other) = (panel.Wires[i], panel.Wires[j]);
                yield return ("two wires exchanged", $"{one.Designator} and {other.Designator}", panel with
                {
                    Wires = panel.Wires.SetItem(i, one with { To = other.To }).SetItem(j, other with { To = one.To }),
                });
            }
        }

        var plug = (Connector)panel.FindPart("P1")!;
        for (var i = 0; i < panel.Wires.Length; i++)
        {
            var wire = panel.Wires[i];
            foreach (var step in new[] { -1, 1 })
            {
                if (Moved(plug, wire.From, step) is { } from)
                    yield return ("a wire on the next contact", $"{wire.Designator} on {from} for {wire.From}", panel with { Wires = panel.Wires.SetItem(i, wire with { From = from }) });
                if (Moved(plug, wire.To, step) is { } to)
                    yield return ("a wire on the next contact", $"{wire.Designator} on {to} for {wire.To}", panel with { Wires = panel.Wires.SetItem(i, wire with { To = to }) });
            }
        }
    }

    private static TerminalId? Moved(Connector plug, TerminalId end, int step)
    {
        if (end.Part != plug.Designator) return null;
        var moved = plug.At((int.Parse(end.Name, CultureInfo.InvariantCulture) + step).ToString(CultureInfo.InvariantCulture));
        return plug.Terminals.Any(t => t.Name == moved.Name) ? moved : null;
    }

    /// <summary>
    /// Null where the devices are joined otherwise than before. A lamp, a coil or a plain contact may be turned end for end.
    /// </summary>
    private static string? WhyHarmless(Panel before, Panel after)
    {
        var expected = JoinsOf(before, null);
        if (JoinsOf(after, null).SetEquals(expected)) return "the same devices are joined as before";
        var turned = before.Parts.FirstOrDefault(p =>
            p is Lamp or Solenoid or Resistor or Fuse or Switch { Form: ContactForm.Make or ContactForm.Break }
            && JoinsOf(after, p).SetEquals(expected));
        return turned is null ? null : $"{turned.Designator} is only turned end for end";
    }

    /// <summary>All pairs of device terminals that wires join, one part being turned.</summary>
    private static HashSet<(TerminalId, TerminalId)> JoinsOf(Panel panel, Part? turned)
    {
        var joints = new Connectivity(panel).ByWires;
        TerminalId Turn(TerminalId t) => turned is null || t.Part != turned.Designator ? t
            : turned.At(turned.Terminals.Single(o => o.Name != t.Name).Name);
        return
        [
            .. from part in panel.Parts
               where part is not (Connector or TerminalStrip or Splice)
               from terminal in part.Terminals
               from other in joints.MembersWith(part.At(terminal.Name))
               where panel.FindPart(other.Part) is not (Connector or TerminalStrip or Splice)
               select (Turn(part.At(terminal.Name)), Turn(other)),
        ];
    }
}
