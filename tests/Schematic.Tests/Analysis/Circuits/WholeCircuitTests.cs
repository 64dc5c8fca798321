using System.Text;
using ApprovalTests;
using ApprovalTests.Namers;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;
using Xunit;
using static Schematic.Tests.Analysis.WholeWords;

namespace Schematic.Tests.Analysis.Circuits;

/// <summary>
/// What panels are as circuits, in full: nodes, contacts, elements with all their figures, inputs, limits, what is not traced, what can
/// carry no current. Read the kept text beside a change.
/// </summary>
public sealed class WholeCircuitTests
{
    public static TheoryData<string> Names => WholePanels.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void The_circuit_of_a_panel_reads(string name)
    {
        using var scenario = ApprovalResults.ForScenario(name);
        var context = WholePanels.Context(name);
        var circuit = new Circuit(context);
        var conditions = new ConditionalCircuit(circuit);
        var written = new StringBuilder();
        void Write(string line) => written.Append(line).Append('\n');

        Write($"{circuit.NodeCount} nodes");
        for (var node = 0; node < circuit.NodeCount; node++)
        {
            Write($"node {node}: {Words(circuit.TerminalsOf(node))} | contacts {Words(circuit.ContactsAt(node).Select(c => $"{c.Index}>{c.Other(node)}"))}"
                + $" | joints {Words(circuit.JointsAt(node).Select(c => $"{c.Index}>{c.Other(node)}"))} | elements {Words(circuit.ElementsAt(node).Select(e => $"{Words(e)}>{e.Other(node)}"))}");
        }

        foreach (var (terminal, node) in circuit.InnerNodes.OrderBy(n => n.Value)) Write($"inner {terminal}: {node}, found {circuit.NodeOf(terminal)}");
        foreach (var joint in circuit.Joints)
        {
            Write($"joint {joint.Index}: {joint.Common} ({joint.CommonNode}) to {joint.Throw} ({joint.ThrowNode}) \"{joint.Label}\" when {Words(joint.When)}"
                + $"{(joint.MakesBeforeBreak ? ", makes before it breaks" : "")}{(joint.IsInside ? $", inside, way {joint.Way?.ToString() ?? "-"}" : "")}{(joint.HiddenGroup > 0 ? $", group {joint.HiddenGroup}" : "")}"
                + $"{(joint.IsRelayContact ? ", of a relay" : "")}{(conditions.IsLive(joint) ? "" : ", dead")}");
        }

        foreach (var element in circuit.Elements)
        {
            Write($"{element.Kind} {element.Name}: {element.From} ({element.FromNode}) to {element.To} ({element.ToNode}), outer {element.Outer}, {Number(element.Ohms)} ohm"
                + $"{(element.OhmsRange is { } range ? $" {Number(range.Least)}..{Number(range.Most)} ohm" : "")}, counted {Number(element.CountedOhms)}, {Number(element.Volts)} V"
                + $"{(element.AreOhmsUnknown ? ", ohms unknown" : "")}{(element.Way is { } way ? $", way {way}" : "")}{(element.Gate is null ? "" : $", when {Words(element.Gate)}")}"
                + $"{(element.IsLoad ? ", load" : "")}{(element.IsOneWay ? ", one way" : "")}{(element.IsRatingKnown ? "" : ", rating unknown")}{(conditions.IsLive(element) ? "" : ", dead")}"
                + $"{(element.Source is { } source ? $", gives {Number(source.Volts)} V {Number(source.MinVolts)}..{Number(source.MaxVolts)}{(source.IsAlternating ? " alternating" : "")} limit {Number(source.LimitAmps)}" : "")}"
                + $"{(element.Scale is { } scale ? $", rated {Number(scale.Rated)} operates {Number(scale.Operates)} holds {Number(scale.Holds)} {(scale.IsCurrent ? "A" : "V")}" : "")}");
            if (element.IsLoad) Write($"  around it {Words(circuit.ContactsAround(element).Select(c => c.Index.ToString()))}, found by its name {ReferenceEquals(circuit.ElementOf(element.Name), element)}");
        }

        foreach (var input in circuit.Inputs)
            Write($"input {input.Terminal}: node {input.Node} ground {input.GroundNode}{(input.HasPull ? ", pulled" : "")}, low to {Number(LoadLimits.LowVolts(input.Input))} high from {Number(LoadLimits.HighVolts(input.Input))}");
        foreach (var limit in circuit.Limits) Write($"limit {limit.Part.Designator}: {limit.From} {limit.To} {Number(limit.Volts)} V{(limit.IsPolarised ? ", polarised" : "")}");
        Write($"protectors {Words(circuit.Protectors.Select(p => p.Designator))}, supplies {Words(circuit.Supplies.Select(Words))}, loads {Words(circuit.Loads.Select(Words))}");
        foreach (var open in circuit.Untraced)
        {
            Write($"untraced {open.Name}: {open.Terminal} ({open.Node}) in {open.Unit}, joints {Words(open.Joints.Select(j => $"{j.Index}>{j.ThrowNode}"))}, never with {Words(open.NeverWith)}"
                + $"{(open.HasOtherWays ? ", other ways" : "")}{(open.LeadsAnywhere ? ", leads anywhere" : "")}");
        }

        Approvals.Verify(written.ToString());
    }
}
