using System.Collections.Immutable;
using System.Text.Json;
using Schematic.Analysis;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.Positions;
using Schematic.Analysis.States;
using Schematic.Model;
using Schematic.Tests.Analysis.Positions;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Page;

/// <summary>
/// The page is run in every state that can be reached, by its own script, and compared with the compiler; and with the plain simulator of
/// the proof's tests, which shares nothing with either.
/// </summary>
public class PageStateTests(PageBrowser browser) : IClassFixture<PageBrowser>
{
    /// <summary>
    /// Goes from rest through every move that the page allows, relays settling in every order, and writes down what the page shows in each
    /// state: by its data and, read back from the drawings and the panel at the side, to a person.
    /// </summary>
    private const string Explore = """
        () => {
          const page = window.schematicPage;
          const { data } = page;
          const restsFrom = start => {
            const seen = new Set([start.join()]), waiting = [start], rests = [];
            while (waiting.length > 0) {
              const at = waiting.pop(), pending = page.pendingCoils(at);
              if (pending.length === 0) rests.push(at);
              for (const coil of pending) {
                const next = at.slice();
                next[coil] = 1 - next[coil];
                if (!seen.has(next.join())) { seen.add(next.join()); waiting.push(next); }
              }
            }
            return rests;
          };
          const found = new Map([[data.rest.join(), data.rest]]);
          const open = [data.rest];
          while (open.length > 0) {
            const at = open.pop();
            for (const move of page.movesAt(at)) {
              const moved = at.slice();
              moved[move.v] = move.to;
              for (const next of restsFrom(moved)) {
                if (found.has(next.join())) continue;
                found.set(next.join(), next);
                open.push(next);
              }
            }
          }
          const drawnStates = key => [...document.querySelectorAll('#content svg g[data-role=symbol][data-owner]')]
            .filter(g => g.dataset.owner.split(' ').includes(key) && !g.dataset.pole).map(g => g.dataset.state ?? '');
          return [...found.values()].map(values => {
            page.stand(values);
            return {
              values, look: page.lookAt(values),
              loads: data.loads.map(l => ({ name: l.name, drawn: [...new Set(drawnStates(l.name))] })),
              told: [...document.querySelectorAll('#working li')].map(li => [li.querySelector('button').textContent, li.dataset.state]),
              lines: [...document.querySelectorAll('#content svg g[data-role=wire]')].map(g => [g.dataset.owner.split(' ')[0], g.dataset.state ?? '']),
              closed: [...document.querySelectorAll('#content svg g[data-pole]')].map(g => [g.dataset.pole, g.querySelector('.blade')?.dataset.state ?? '', g.dataset.throws]),
            };
          });
        }
        """;

    /// <summary>The simulator of the proof's tests knows neither alternating supplies nor what is not traced.</summary>
    private static readonly string[] BeyondTheSimulator = ["signal-lamp/signal-lamp.panel", "gate-desk/gate-desk.panel"];

    public static TheoryData<string> Examples => [.. PageBrowser.Examples];

    [BrowserTheory]
    [MemberData(nameof(Examples))]
    public async Task Page_compiler_and_simulator_agree_in_every_state_that_can_be_reached(string example)
    {
        await using var opened = await browser.OpenExample(example);
        var shown = await opened.Page.EvaluateAsync<JsonElement>(Explore);
        var proof = new AnalysisContext(PageBrowser.PanelOf(example)).Sized.Positions;
        var states = shown.EnumerateArray().ToDictionary(s => string.Join(',', Numbers(s.GetProperty("values"))));

        Assert.Equal(ReachableStates(proof, states.Values).Select(s => string.Join(',', s)).Order(StringComparer.Ordinal), states.Keys.Order(StringComparer.Ordinal));
        foreach (var state in states.Values) AssertLook(proof, state);
        Assert.Empty(opened.Complaints);
        if (!BeyondTheSimulator.Contains(example)) AssertSimulated(PageBrowser.PanelOf(example), proof, states);
    }

    private static void AssertSimulated(Panel panel, PositionProof proof, Dictionary<string, JsonElement> states)
    {
        var simulator = new Simulator(JoinedByWiresAlone(panel));
        Assert.False(simulator.Chatters);

        var looks = simulator.Lasting.Values.ToDictionary(l => KeyOf(proof.Circuit.Variables, simulator, l.Look), l => l.Look);
        Assert.Equal(looks.Keys.Order(StringComparer.Ordinal), states.Keys.Order(StringComparer.Ordinal));
        foreach (var (key, look) in looks)
        {
            var loads = states[key].GetProperty("look").GetProperty("loads");
            var circuit = proof.Circuit.Circuit;
            foreach (var (load, i) in circuit.Loads.Select((l, i) => (l, i)))
                Assert.Equal(look.IsEnergised(simulator.Loads.Single(p => p.Designator == load.Name)), loads[i].GetProperty("on").GetBoolean());
            foreach (var (input, i) in circuit.Inputs.Select((x, i) => (x, i)))
                AssertLevel(look, input, states[key].GetProperty("look").GetProperty("inputs")[i].GetProperty("level").GetString()!);
            AssertLines(look, circuit, states[key]);
        }
    }

    /// <summary>A line that is drawn live is one that the simulator has at the supply's own voltage; one drawn as return at nought.</summary>
    private static void AssertLines(Simulator.Look look, Circuit circuit, JsonElement state)
    {
        if (circuit.Supplies.Count() != 1) return;
        var supply = circuit.Supplies.Single();
        foreach (var line in state.GetProperty("lines").EnumerateArray())
        {
            var terminal = new TerminalId(line[0].GetString()!.Split(':')[0], line[0].GetString()!.Split(':')[^1]);
            var drawn = line[1].GetString();
            Assert.Equal(drawn == "live", look.Joined(terminal, supply.From));
            Assert.Equal(drawn == "return", look.Joined(terminal, supply.To));
        }
    }

    private static void AssertLevel(Simulator.Look look, InputPoint input, string level)
    {
        var volts = look.InputVolts(input.Terminal, input.Board.At(input.Board.Grounds[0]));
        Assert.Equal(
            volts is null ? "floating" : volts <= LoadLimits.LowVolts(input.Input) ? "low" : volts >= LoadLimits.HighVolts(input.Input) ? "high" : "neither", level);
    }

    private static void AssertLook(PositionProof proof, JsonElement state)
    {
        var (circuit, store) = (proof.Circuit, proof.Circuit.Store);
        int[] values = [.. Numbers(state.GetProperty("values"))];
        var look = state.GetProperty("look");
        var told = state.GetProperty("told").EnumerateArray().ToDictionary(t => t[0].GetString()!, t => t[1].GetString()!);
        foreach (var (load, i) in circuit.Circuit.Loads.Select((l, i) => (l, i)))
        {
            var isOn = store.Holds(circuit.Energised(load), values);
            Assert.Equal(isOn, look.GetProperty("loads")[i].GetProperty("on").GetBoolean());
            var isOpen = !isOn && store.Holds(circuit.MayBeEnergised(load), values);
            Assert.Equal(isOpen, look.GetProperty("loads")[i].GetProperty("open").GetBoolean());
            var word = isOn ? "on" : isOpen ? "undecided" : "";
            Assert.Equal(word, told[load.Name]);
            Assert.Equal([word], state.GetProperty("loads")[i].GetProperty("drawn").EnumerateArray().Select(d => d.GetString()));
            AssertVolts(circuit.CasesOf(load).SingleOrDefault(c => store.Holds(c.When, values))?.Volts, look.GetProperty("loads")[i]);
        }

        foreach (var (input, i) in circuit.Circuit.Inputs.Select((x, i) => (x, i)))
        {
            var level = store.Holds(circuit.Reads(input, InputLevel.Low), values) ? "low" : store.Holds(circuit.Reads(input, InputLevel.High), values) ? "high" : null;
            if (level is not null) Assert.Equal(level, look.GetProperty("inputs")[i].GetProperty("level").GetString());
        }

        foreach (var (contact, i) in circuit.Circuit.Contacts.Select((c, i) => (c, i)))
            Assert.Equal(store.Holds(circuit.Closed(contact), values), look.GetProperty("contacts")[i].GetBoolean());
        // A potentiometer's wiper is a contact at the ends of its track and has no blade.
        var wipers = proof.Panel.Parts.OfType<Potentiometer>().Select(p => p.Designator).ToHashSet();
        foreach (var blade in state.GetProperty("closed").EnumerateArray().Where(b => !wipers.Contains(b[0].GetString()!.Split(':')[0])))
        {
            // A throw on which nothing hangs may not be drawn: the blade then tells of the others.
            var drawn = blade[2].GetString()!.Split(';').Select(t => t.Split(' ')[0]).ToHashSet();
            var isClosed = circuit.Circuit.Contacts.Any(c => c.Common.ToString() == blade[0].GetString() && drawn.Contains(c.Throw.ToString()) && store.Holds(circuit.Closed(c), values));
            Assert.Equal(isClosed ? "closed" : "open", blade[1].GetString());
        }
    }

    /// <summary>What a load gets; of one that gets nothing defined the page tells nothing or nought.</summary>
    private static void AssertVolts(double? volts, JsonElement load)
    {
        var told = load.TryGetProperty("volts", out var shown) && shown.ValueKind == JsonValueKind.Number ? shown.GetDouble() : 0;
        Assert.Equal(Math.Round(volts ?? 0, 3), told, 3);
    }

    /// <summary>
    /// All states in which every actuator stands in a position and that can be reached, one by one; what is not known stays as the page
    /// supposes it: nobody moves it.
    /// </summary>
    private static IEnumerable<ImmutableArray<int>> ReachableStates(PositionProof proof, IEnumerable<JsonElement> shown)
    {
        var variables = proof.Circuit.Variables.All;
        ImmutableArray<int> supposed = [.. Numbers(shown.First().GetProperty("values"))];
        var reachable = proof.States.ReachableOver(variables.Select((_, i) => proof.Circuit.Store.Literal(i, 0)));
        IEnumerable<int> PlacesOf(StateVariable v, int i) => v.Kind == StateVariableKind.Unknown ? [supposed[i]] : Enumerable.Range(0, v.Values.Length);
        return variables.Select((v, i) => PlacesOf(v, i).ToList()).Aggregate<List<int>, IEnumerable<ImmutableArray<int>>>(
                [[]], (all, places) => all.SelectMany(s => places.Select(x => s.Add(x))))
            .Where(s => proof.Circuit.Store.Holds(reachable, s));
    }

    /// <summary>What nets, jumpers, mates, attachments and breakers join, as wires: all that the simulator understands.</summary>
    private static Panel JoinedByWiresAlone(Panel panel)
    {
        var connectivity = new AnalysisContext(panel).Connectivity;
        var joints = connectivity.FixedJoints.Concat(connectivity.WireJoints).Concat(connectivity.NetJoints).Select(j => (j.From, j.To))
            .Concat(panel.Parts.OfType<Breaker>().Select(b => (From: b.At(b.Ends.From), To: b.At(b.Ends.To))));
        return panel with { Wires = [.. joints.Select((j, i) => new Wire($"JOINT{i}", j.From, j.To, SourceSpan.None))] };
    }

    private static string KeyOf(StateVariables variables, Simulator simulator, Simulator.Look look)
    {
        var actuators = simulator.Panel.Actuators.Select(a => a.Name).ToList();
        var relays = simulator.Relays.Select(r => r.Designator).ToList();
        var supplies = simulator.Supplies.Select(s => s.Designator).ToList();
        return string.Join(',', variables.All.Select(v => v.Kind switch
        {
            StateVariableKind.Actuator => look.Positions[actuators.IndexOf(v.Name)],
            StateVariableKind.Coil => look.Coils[relays.IndexOf(v.Name)] ? 1 : 0,
            StateVariableKind.Supply => look.On[supplies.IndexOf(v.Name)] ? 1 : 0,
            _ => 0,
        }));
    }

    private static IEnumerable<int> Numbers(JsonElement array) => array.EnumerateArray().Select(n => n.GetInt32());
}
