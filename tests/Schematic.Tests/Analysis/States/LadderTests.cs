using Schematic.Model;
using Schematic.Text;
using Xunit;
using static Schematic.Tests.Analysis.PanelBuilder;

namespace Schematic.Tests.Analysis.States;

/// <summary>
/// Relay circuits drawn as ladders: each coil is fed by some branches of contacts in series. The panel is wired from the
/// formulas; the formulas themselves are run through state by state. Which patterns of the relays come about, and by how few
/// moves, must be the same.
/// </summary>
public class LadderTests
{
    private const int Actuators = 8;
    private const int Relays = 4;

    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 20)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Patterns_of_relays_take_as_many_moves_as_running_the_formulas_takes(int seed)
    {
        var ladder = Ladder.Random(new Random(seed));
        var proof = ladder.Panel().Proof;
        var distances = ladder.Distances(out var chatters);
        Assert.Equal(chatters, proof.States.RestlessGroups().Any());
        if (chatters) return; // Moves beside a chattering relay are a matter of words.
        for (var pattern = 0; pattern < 1 << Relays; pattern++)
        {
            var witness = proof.States.Nearest(proof.Circuit.Compile(new AllCondition(
                [.. Enumerable.Range(0, Relays).Select(k => Energised($"K{k}", (pattern >> k & 1) == 1))], SourceSpan.None)));
            Assert.Equal(distances.TryGetValue(pattern, out var moves) ? moves : null, witness?.Moves.Length);
        }
    }

    /// <summary>For each relay its branches; a branch is contacts in series, each of an actuator or a relay, closed on or off.</summary>
    private sealed record Ladder((int Variable, bool On)[][][] Rungs)
    {
        public static Ladder Random(Random random) => new([.. Enumerable.Range(0, Relays).Select(_ =>
            Enumerable.Range(0, random.Next(1, 4)).Select(_ =>
                Enumerable.Range(0, random.Next(1, 4)).Select(_ => (random.Next(Actuators + Relays), random.Next(3) > 0)).ToArray()).ToArray())]);

        public PanelBuilder Panel()
        {
            var builder = new PanelBuilder().Supply("PS1");
            for (var a = 0; a < Actuators; a++) builder.Actuator($"A{a}", "off", "on");
            var uses = new int[Relays];
            var contacts = Rungs.SelectMany(r => r).SelectMany(b => b).Count(c => c.Variable >= Actuators);
            for (var k = 0; k < Relays; k++) builder.Relay($"K{k}", sets: contacts + 1).Wire($"K{k}:A2", "PS1:-");
            var switches = 0;
            for (var k = 0; k < Relays; k++)
            {
                foreach (var branch in Rungs[k])
                {
                    var at = "PS1:+";
                    foreach (var (variable, on) in branch)
                    {
                        var (from, to) = variable < Actuators ? Switch(variable, on) : Contact(variable - Actuators, on);
                        builder.Wire(at, from);
                        at = to;
                    }

                    builder.Wire(at, $"K{k}:A1");
                }
            }

            return builder;

            (string, string) Switch(int actuator, bool on)
            {
                var name = $"S{switches++}";
                builder.Make(name, $"A{actuator}", on ? "on" : "off");
                return ($"{name}:1", $"{name}:2");
            }

            (string, string) Contact(int relay, bool on)
            {
                var set = ++uses[relay];
                return ($"K{relay}:{set}1", $"K{relay}:{set}{(on ? 4 : 2)}");
            }
        }

        /// <summary>
        /// The fewest moves to each pattern of relays at rest. A state is a number: actuators in the low bits, relays above.
        /// </summary>
        public Dictionary<int, int?> Distances(out bool chatters)
        {
            var (found, seen) = (new Dictionary<int, int?>(), new HashSet<int>());
            var (frontier, everSettles) = (new List<int> { 0 }, true);
            for (var moves = 0; frontier.Count > 0; moves++)
            {
                var next = new List<int>();
                foreach (var start in frontier)
                {
                    var run = Run(start);
                    var atRest = run.Where(IsStable).ToList();
                    everSettles &= run.All(s => IsStable(s) || Run(s).Any(IsStable));
                    foreach (var state in atRest.Where(seen.Add))
                    {
                        found.TryAdd(state >> Actuators, moves);
                        for (var a = 0; a < Actuators; a++) next.Add(state ^ (1 << a));
                    }
                }

                frontier = [.. next.Distinct()];
            }

            chatters = !everSettles;
            return found;
        }

        private HashSet<int> Run(int start)
        {
            var seen = new HashSet<int> { start };
            var waiting = new Stack<int>(seen);
            while (waiting.TryPop(out var state))
                for (var k = 0; k < Relays; k++)
                    if (IsUnstable(state, k) && seen.Add(state ^ (1 << (Actuators + k)))) waiting.Push(state ^ (1 << (Actuators + k)));
            return seen;
        }

        private bool IsStable(int state) => !Enumerable.Range(0, Relays).Any(k => IsUnstable(state, k));

        private bool IsUnstable(int state, int relay) =>
            Bit(state, Actuators + relay) != Rungs[relay].Any(branch => branch.All(c => Bit(state, c.Variable) == c.On));

        private static bool Bit(int state, int bit) => (state >> bit & 1) == 1;
    }
}
