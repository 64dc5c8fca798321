using System.Text;
using ApprovalTests;
using ApprovalTests.Namers;
using Schematic.Analysis;
using Schematic.Analysis.States;
using Schematic.Model;
using Xunit;
using static Schematic.Tests.Analysis.WholeWords;

namespace Schematic.Tests.Analysis.States;

/// <summary>
/// What panels are in every position, in full: what can stand how, when contacts close and supplies are shorted, what loads get and inputs
/// read, which moves there are, what can be reached and how, and where current goes. Read the kept text beside a change.
/// </summary>
public sealed class WholeProofTests
{
    public static TheoryData<string> Names => WholePanels.Names;

    [Theory]
    [MemberData(nameof(Names))]
    public void The_conditions_of_a_panel_read(string name)
    {
        using var scenario = ApprovalResults.ForScenario(name);
        var circuit = WholePanels.Context(name).Positions.Circuit;
        var written = new StringBuilder();
        void Write(string line) => written.Append(line).Append('\n');
        WriteVariables(Write, circuit);
        WriteJoints(Write, circuit);
        WriteLoads(Write, circuit);
        WriteInputs(Write, circuit);
        Approvals.Verify(written.ToString());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void The_moves_and_states_of_a_panel_read(string name)
    {
        using var scenario = ApprovalResults.ForScenario(name);
        var context = WholePanels.Context(name);
        var written = new StringBuilder();
        void Write(string line) => written.Append(line).Append('\n');
        WriteMoves(Write, context.Positions.States);
        WriteStates(Write, context.Positions.States);
        WriteStates(Write, context.Positions.SureStates);
        WriteQuestions(Write, context);
        Approvals.Verify(written.ToString());
    }

    private static void WriteVariables(Action<string> write, ConditionalCircuit circuit)
    {
        foreach (var (variable, i) in circuit.Variables.All.Select((v, i) => (v, i)))
        {
            write($"variable {i} {variable.Kind} {variable.Name}: {string.Join(' ', variable.Values.Select(v => $"'{v}'"))}, rest {variable.Rest}, size {variable.Size}, found {circuit.Variables.IndexOf(variable.Kind, variable.Name)}"
                + $"{(variable.IsPushToTurn ? ", push to turn" : "")}{(variable.IsOfPartThatVaries ? ", varies" : "")}{string.Concat(variable.Passings.Select(p => $", {p.Value} between {p.From} and {p.To} {p.Others}"))}");
        }

        write($"rest {string.Join(' ', circuit.Variables.RestValues)}; standing {Words(circuit, circuit.Standing)}; traced {Words(circuit, circuit.AllTraced)}");
    }

    private static void WriteJoints(Action<string> write, ConditionalCircuit circuit)
    {
        foreach (var joint in circuit.Circuit.Joints) write($"joint {joint.Index} {joint.Common} {joint.Throw}: {Words(circuit, circuit.Closed(joint))}");
        foreach (var rail in circuit.Rails)
        {
            write($"rail {rail.Index} {rail.Terminal} ({rail.Node}) of {rail.Supply?.Name ?? "a board"}{(rail.IsPlus ? ", plus" : "")}");
            for (var node = 0; node < circuit.Circuit.NodeCount; node++)
            {
                var (tied, through) = (circuit.Tied(rail, node), circuit.TiedThroughDiodes(rail, node));
                if (!tied.IsNever || !through.IsNever) write($"  {node}: {Words(circuit, tied)}{(through.IsNever ? "" : $"; through diodes {Words(circuit, through)}")}");
            }
        }

        foreach (var supply in circuit.Circuit.Supplies) write($"supply {supply.Name}: on {Words(circuit, circuit.IsOn(supply))}; shorted {Words(circuit, circuit.Shorted(supply))}");
        write($"any short {Words(circuit, circuit.AnyShort)}");
        for (var node = 0; node < circuit.Circuit.NodeCount; node++)
        {
            var joined = circuit.JoinedTo(node);
            var fixedBy = circuit.FixedThroughDiodes(node);
            var elsewhere = circuit.JoinedSomeOtherWay(node);
            if (joined.Count > 0 || fixedBy is not null || !elsewhere.IsNever || circuit.EndsJoints(node))
                write($"node {node}{(circuit.EndsJoints(node) ? " fixed" : "")}: {string.Join("; ", joined.Select(j => $"to {j.Node} {Words(circuit, j.When)}"))}{(fixedBy is { } feed ? $"; behind {feed.Count} diodes of {feed.Rail.Terminal}" : "")}{(elsewhere.IsNever ? "" : $"; elsewhere {Words(circuit, elsewhere)}")}");
        }

        foreach (var region in circuit.Regions)
        {
            write($"region nodes {string.Join(' ', region.Nodes)}, elements {Words(region.Elements.Select(Words))}, contacts {Words(region.Contacts.Select(c => c.Index.ToString()))}");
            var cases = circuit.CasesOf(region, circuit.Store.Not(circuit.AnyShort), 64, s => s);
            write(cases is { } all ? string.Join('\n', all.Select(c => $"  [{string.Join(' ', c.GroupOf)}] {Words(circuit, c.When)}")) : "  too many cases");
        }
    }

    private static void WriteLoads(Action<string> write, ConditionalCircuit circuit)
    {
        foreach (var load in circuit.Circuit.Loads)
        {
            write($"load {Words(load)}: energised {Words(circuit, circuit.Energised(load))}; may be {Words(circuit, circuit.MayBeEnergised(load))}; attracted {Words(circuit, circuit.Attracted(load))};"
                + $" ideally {Words(circuit, circuit.IdealAttracted(load))}; kept {Words(circuit, circuit.Kept(load))}; undecided {Words(circuit, circuit.Undecided(load))}; in doubt {Words(circuit, circuit.InDoubt(load))}"
                + $"{(circuit.IsDecided(load) ? "" : ", not decided")}{(circuit.IsToldApart(load) ? "" : ", not told apart")}");
            foreach (var line in Cases(circuit, circuit.CasesOf(load))) write(line);
        }
    }

    private static void WriteInputs(Action<string> write, ConditionalCircuit circuit)
    {
        foreach (var input in circuit.Circuit.Inputs)
        {
            write($"input {input.Terminal}: low {Words(circuit, circuit.Reads(input, InputLevel.Low))}; high {Words(circuit, circuit.Reads(input, InputLevel.High))};"
                + $" at every setting low {Words(circuit, circuit.ReadsAtEverySetting(input, InputLevel.Low))}; high {Words(circuit, circuit.ReadsAtEverySetting(input, InputLevel.High))}; undecided {Words(circuit, circuit.Undecided(input))}"
                + $"{(circuit.IsDecided(input) ? "" : ", not decided")}{(circuit.IsToldApart(input) ? "" : ", not told apart")}");
            foreach (var line in Cases(circuit, circuit.CasesOf(input))) write(line);
        }

        foreach (var limit in circuit.Circuit.Limits)
        {
            write($"limit {limit.From} {limit.To}");
            foreach (var line in Cases(circuit, circuit.CasesOf(limit))) write(line);
        }
    }

    private static void WriteMoves(Action<string> write, StateSpace states)
    {
        var circuit = states.Circuit;
        foreach (var (move, when) in states.Moves)
        {
            var variable = circuit.Variables.All[move.Variable];
            write($"{move.Kind} {variable.Name} {variable.Values[move.From]} to {variable.Values[move.To]} when {Words(circuit, when)}{string.Concat(states.PassingsOf(move).Select(p => $", passing {p.Value}"))}");
        }
    }

    private static void WriteStates(Action<string> write, StateSpace states)
    {
        var circuit = states.Circuit;
        write($"states{(states.IsDecided ? ", decided" : "")}, rest {Words(circuit, states.Rest)}, latches {Words(states.Latches)}");
        foreach (var coil in states.Coils)
        {
            write($"coil {circuit.Variables.All[coil.Variable].Name} ({circuit.Variables.All[coil.Variable].Kind}): operates {Words(circuit, coil.Operates)}; stays {Words(circuit, coil.Stays)}; may change {Words(circuit, coil.Changes)}; must {Words(circuit, coil.Leaves)}"
                + $"{(coil.IsDecided ? "" : ", not decided")}");
        }

        for (var i = 0; i < circuit.Variables.All.Length; i++)
        {
            var variable = circuit.Variables.All[i];
            for (var value = 0; value < variable.Size; value++)
            {
                var literal = circuit.Store.Literal(i, value);
                var nearest = states.Nearest(literal);
                write($"{Words(variable, value)}: {(states.CanReach(literal) ? "" : "not reached, ")}{Way(circuit, nearest)}, behind it {Words(states.VariablesBehind(literal).Select(v => circuit.Variables.All[v].Name))}, in {Words(circuit, states.Reachable(literal))}");
            }
        }

        foreach (var restless in states.RestlessGroups()) write($"restless {Words(circuit, restless)}, first {Restless(circuit, states, restless)}");
        foreach (var (relay, when) in states.Recurring())
        {
            var start = states.Nearest(when)!.State;
            write($"recurring {relay}: {Words(circuit, when)}, round {string.Join("; ", states.RoundOf(relay, when, start).Select(r => $"{circuit.Variables.All[r.Wait.Variable].Name} to {r.Wait.To}, {Words(circuit, r.Then)}"))}");
        }

        write($"given up {Words(states.GivenUp)}");
    }

    private static string Restless(ConditionalCircuit circuit, StateSpace states, Diagram restless) =>
        states.Nearest(restless) is { } witness && states.FirstUnstable(witness.State) is >= 0 and var coil ? $"{circuit.Variables.All[coil].Name} in {Words(circuit, witness.State)}" : "none";

    private static string Way(ConditionalCircuit circuit, Witness? witness) => witness is null ? "no way"
        : $"{string.Join(", ", MoveText.Steps(circuit.Variables, witness.Moves).Select(s => s.ToString()))} -> {Words(circuit, witness.State)}{(witness.IsFar ? " (far)" : "")}"
            + $"{(witness.InPassing is { } move ? $" {MoveText.Passing(circuit.Variables, move)}" : "")} [{MoveText.Describe(circuit.Variables, witness.State)}]";

    private static void WriteQuestions(Action<string> write, AnalysisContext context)
    {
        var (proof, circuit, states) = (context.Positions, context.Positions.Circuit, context.Positions.States);
        foreach (var input in circuit.Circuit.Inputs)
        {
            foreach (var level in new[] { InputLevel.Low, InputLevel.High })
            {
                var reads = circuit.Reads(input, level);
                write($"{input.Terminal} {level}: {Way(circuit, states.Nearest(reads))}; in passing {Way(circuit, states.NearestInPassing(reads, Diagram.Always, opensToo: true))}; joining {Way(circuit, states.NearestInPassing(reads, Diagram.Always, opensToo: false))}");
            }
        }

        write($"short: {Way(circuit, states.Nearest(circuit.AnyShort))}; in passing {Way(circuit, states.NearestInPassing(circuit.AnyShort, Diagram.Always, opensToo: false))}");
        foreach (var load in circuit.Circuit.Loads)
        {
            foreach (var isOn in new[] { true, false })
            {
                var condition = isOn ? circuit.Energised(load) : circuit.Store.Not(circuit.Energised(load));
                var nearest = states.Nearest(condition);
                write($"{Words(load)} {(isOn ? "on" : "off")}: {Way(circuit, nearest)}; in passing {Way(circuit, states.NearestInPassing(condition, Diagram.Always, opensToo: true))}");
                if (nearest is null) continue;
                foreach (var supply in circuit.Circuit.Supplies)
                {
                    write($"  {proof.Conducting(nearest.State, supply.From, load.From)?.ToString() ?? "no way to it"} | {proof.Conducting(nearest.State, load.To, supply.To)?.ToString() ?? "no way back"}"
                        + $" | joined {proof.Joined(nearest.State, supply.From, load.From)?.ToString() ?? "no"} | shorting {proof.Shorting(nearest.State, supply.From, load.From)?.ToString() ?? "no"}");
                }

                write($"  wanted {Words(circuit.OhmsWanted(nearest.State))}, {Number(circuit.VoltsIn(load, nearest.State))} V");
            }
        }
    }
}
