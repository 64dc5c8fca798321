using CsCheck;
using Schematic.Model;
using Schematic.Text;
using static Schematic.Tests.Analysis.PanelBuilder;

namespace Schematic.Tests.Analysis.Positions;

/// <summary>Random small circuits: everything hangs on a few joints, so that something happens in most of them.</summary>
internal static class RandomPanels
{
    /// <summary>Circuits of up to twelve actuators; the large ones are rare because trying every state takes long.</summary>
    public static Gen<PanelBuilder> All { get; } =
        from actuators in Gen.Frequency((200, Gen.Int[1, 3]), (60, Gen.Int[4, 5]), (8, Gen.Int[6, 7]), (1, Gen.Const(12)))
        from seed in Gen.Int[0, int.MaxValue - 1]
        select Build(actuators, new Random(seed), new Random(seed ^ 0x5bd1e995));

    private static PanelBuilder Build(int actuators, Random random, Random varying)
    {
        var builder = new PanelBuilder();
        var joints = random.Next(3, 8);
        for (var i = 0; i < joints; i++) builder.Add(new Splice($"SP{i}", SourceSpan.None), "1");
        string Joint() => $"SP{random.Next(joints)}:1";
        bool Chance(double p) => random.NextDouble() < p;

        var names = new List<(string Name, string[] Positions)>();
        for (var i = 0; i < actuators; i++)
        {
            string[] positions = random.Next(5) switch
            {
                0 when actuators < 6 => ["a", "b", "c"],
                1 => ["a", "b>a"],
                2 when actuators < 6 => ["d>b", "b*", "c"],
                _ => ["a", "b"],
            };
            if (positions.Length == 3 && Chance(0.3)) builder.Endless($"A{i}", positions);
            else builder.Actuator($"A{i}", positions);
            names.Add(($"A{i}", [.. positions.Select(p => p[..1])]));
        }

        var hasSupply = Chance(0.9);
        if (hasSupply) builder.Supply("PS1");
        if (hasSupply && Chance(0.2)) builder.Switched();
        if (hasSupply) builder.Wire("PS1:+", "SP0:1").Wire("PS1:-", "SP1:1");
        if (hasSupply && Chance(0.15))
        {
            builder.Supply("PS2", 12);
            if (Chance(0.3)) builder.Switched();
            builder.Wire("PS2:+", Joint()).Wire("PS2:-", Chance(0.7) ? "SP1:1" : Joint());
        }

        var relays = actuators > 7 ? 0 : random.Next(4);
        for (var i = 0; i < relays; i++)
        {
            var isDelayed = Chance(0.25);
            string[] contacts = isDelayed ? ["15", "16", "18"] : ["11", "12", "14"];
            var ways = isDelayed ? random.Next(3) : 0;
            if (isDelayed) builder.TimeDelay($"K{i}", ways != 1 ? 5 : null, ways != 0 ? 3 : null, 700 + 130 * i);
            else builder.Relay($"K{i}", ohms: 700 + 130 * i, sets: 1);
            if (Chance(0.25)) builder.BridgingRelay();
            if (isDelayed && Chance(0.3)) contacts = [.. contacts, "21", "22", "24"];
            builder.Wire($"K{i}:A1", Joint()).Wire($"K{i}:A2", Chance(0.5) ? "SP1:1" : Joint());
            foreach (var terminal in contacts)
                if (Chance(0.8)) builder.Wire($"K{i}:{terminal}", Joint());
        }

        for (var i = 0; i < random.Next(1, actuators + 4); i++)
        {
            var (name, positions) = names[random.Next(names.Count)];
            if (Chance(0.5)) builder.Make($"S{i}", name, [.. positions.Where(_ => Chance(0.5))]).Wire($"S{i}:1", Joint()).Wire($"S{i}:2", Joint());
            else if (Chance(0.2))
            {
                builder.Coded($"S{i}", name, [.. new[] { "Q1", "Q2" }.Select(q => (q, positions.Where(_ => Chance(0.5)).ToArray()))])
                    .Wire($"S{i}:C", Joint()).Wire($"S{i}:Q1", Joint()).Wire($"S{i}:Q2", Joint());
            }
            else
            {
                builder.Pole($"S{i}", name, positions);
                if (actuators < 6 && Chance(0.2)) builder.Bridging();
                builder.Wire($"S{i}:C", Joint());
                foreach (var position in positions)
                    if (Chance(0.8)) builder.Wire($"S{i}:{position}", Joint());
            }
        }

        if (actuators <= 2 && Chance(0.08))
        {
            builder.Keypad("KB1", 2, 2);
            foreach (var terminal in new[] { "R1", "R2", "C1", "C2" })
                if (Chance(0.85)) builder.Wire($"KB1:{terminal}", Joint());
        }

        // An input that a diode alone leads to floats by the figures and is lifted by any meter: a test of its own.
        var hasDiodes = Chance(0.3);
        for (var i = 0; i < random.Next(4); i++) builder.Lamp($"DS{i}", 24, 0.04 + 0.007 * i).Wire($"DS{i}:X1", Joint()).Wire($"DS{i}:X2", Joint());
        for (var i = 0; i < random.Next(2); i++) builder.Resistor($"R{i}", 310 + 210 * i).Wire($"R{i}:1", Joint()).Wire($"R{i}:2", Joint());
        for (var i = 0; i < (hasDiodes ? random.Next(1, 3) : 0); i++) builder.Diode($"D{i}").Wire($"D{i}:A", Joint()).Wire($"D{i}:K", Joint());
        if (Chance(0.15)) builder.Led("LD1").Wire("LD1:A", Joint()).Wire("LD1:K", Joint());
        if (Chance(0.3)) builder.Motor("M1", amps: 0.6).Wire("M1:1", Joint()).Wire("M1:2", Joint());
        if (actuators < 6) AddVarying(builder, () => $"SP{varying.Next(joints)}:1", varying);
        if (Chance(0.3)) builder.Solenoid("L1", ohms: 47).Wire("L1:A1", Joint()).Wire("L1:A2", Joint());
        if (Chance(0.7))
        {
            var inputs = Enumerable.Range(1, random.Next(1, 3)).Select(i => Input($"IN{i}", hasDiodes || Chance(0.5))).ToArray();
            builder.Board("B1", inputs).Wire("B1:GND", Chance(0.7) ? "SP1:1" : Joint());
            foreach (var input in inputs) builder.Wire($"B1:{input.Terminal}", Joint());
        }

        AddStatements(builder, names, random);
        return builder;
    }

    private static void AddVarying(PanelBuilder builder, Func<string> joint, Random random)
    {
        if (random.Next(5) == 0) builder.Potentiometer("RP1", 470).Wire("RP1:1", joint()).Wire("RP1:2", joint()).Wire("RP1:3", joint());
        if (random.Next(5) == 0) builder.Varying("RV1", random.Next(3) == 0 ? 0 : 53, 1900).Wire("RV1:1", joint()).Wire("RV1:2", joint());
    }

    private static void AddStatements(PanelBuilder builder, List<(string Name, string[] Positions)> names, Random random)
    {
        Condition Position()
        {
            var (name, positions) = names[random.Next(names.Count)];
            return At(name, positions[random.Next(positions.Length)]);
        }

        Condition When() => random.Next(10) switch
        {
            0 => new AllCondition([Position(), new SupplyCondition("PS1", false, SourceSpan.None)], SourceSpan.None),
            1 => new AnyCondition([Position(), new SupplyCondition("PS1", true, SourceSpan.None)], SourceSpan.None),
            2 => builder.Panel.Parts.OfType<Relay>().FirstOrDefault(r => r.HasDelay) is { } timer ? Delayed(timer.Designator, random.Next(2) == 0) : Always,
            3 or 4 => new AnyCondition([Position(), Position()], SourceSpan.None),
            5 or 6 => new AllCondition([Position(), Position()], SourceSpan.None),
            _ => Position(),
        };

        bool Passing() => names.Count < 6 && random.Next(6) == 0;

        var panel = builder.Panel;
        var loads = panel.Parts.Where(p => p is Lamp or Relay or Solenoid or Led or Consumer).ToList();
        if (random.Next(3) == 0)
        {
            var (name, positions) = names[random.Next(names.Count)];
            var release = loads.Count > 0 && random.Next(2) == 0 ? Energised(loads[random.Next(loads.Count)].Designator) : Position();
            builder.Lock(name, positions[random.Next(positions.Length)], release);
        }

        if (loads.Count > 0)
            builder.Expect(new EnergisedExpectation(loads[random.Next(loads.Count)].Designator, random.Next(2) == 0, When(), SourceSpan.None) { IsInPassing = Passing() });
        builder.Expect(new ContinuityExpectation(Id("SP0:1"), Id("SP2:1"), random.Next(2) == 0, When(), SourceSpan.None) { IsInPassing = Passing() });
        if (panel.Parts.OfType<Board>().FirstOrDefault() is { } board)
            builder.Expect(new LevelExpectation(board.At("IN1"), random.Next(2) == 0 ? InputLevel.Low : InputLevel.High, When(), SourceSpan.None) { IsInPassing = Passing() });
        builder.Expect(new NeverExpectation([Id("SP0:1")], [Id("SP2:1")], When(), SourceSpan.None));
    }
}
