using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Analysis.Positions;
using Schematic.Diagnostics;
using Schematic.Inserts;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Tests.Analysis;

/// <summary>Puts small panels together in a few lines, for tests of the analysis. Terminals are written "PS1:+".</summary>
internal sealed class PanelBuilder
{
    private readonly List<Actuator> _actuators = [];
    private readonly List<ActuatorLock> _locks = [];
    private readonly List<Part> _parts = [];
    private readonly List<Wire> _wires = [];
    private readonly List<Expectation> _expectations = [];

    public static Condition Always => new AllCondition([], SourceSpan.None);

    public Panel Panel => new()
    {
        Actuators = [.. _actuators], Locks = [.. _locks], Parts = [.. _parts], Wires = [.. _wires],
        Expectations = [.. _expectations],
    };

    public PositionProof Proof => new AnalysisContext(Panel).Positions;

    public static Condition At(string actuator, params string[] positions) =>
        new PositionCondition(actuator, [.. positions], SourceSpan.None);

    public static Condition Energised(string part, bool energised = true) =>
        new EnergisedCondition(part, energised, SourceSpan.None);

    public static Condition Delayed(string relay, bool operated = true) => new DelayedCondition(relay, operated, SourceSpan.None);

    public static TerminalId Id(string text) => new(text[..text.IndexOf(':')], text[(text.IndexOf(':') + 1)..]);

    /// <summary>Positions in order; the first is rest unless one carries "*"; "a>b" springs to b.</summary>
    public PanelBuilder Actuator(string name, params string[] positions)
    {
        var hasRest = positions.Any(p => p.EndsWith('*'));
        _actuators.Add(new Actuator(name, [.. positions.Select((p, i) =>
        {
            var parts = p.TrimEnd('*').Split('>');
            return new ActuatorPosition(parts[0], hasRest ? p.EndsWith('*') : i == 0, parts.Length > 1 ? parts[1] : null, SourceSpan.None);
        })], SourceSpan.None));
        return this;
    }

    public PanelBuilder Endless(string name, params string[] positions)
    {
        Actuator(name, positions);
        _actuators[^1] = _actuators[^1] with { IsEndless = true };
        return this;
    }

    public PanelBuilder Lock(string actuator, string position, Condition release)
    {
        _locks.Add(new ActuatorLock(actuator, [position], release, SourceSpan.None));
        return this;
    }

    /// <summary>A make contact on terminals 1 and 2, closed in these positions.</summary>
    public PanelBuilder Make(string name, string actuator, params string[] positions) => Add(
        new Switch(name, ContactForm.Make, actuator, new Pole("1", [new Throw("2", "", At(actuator, positions), SourceSpan.None)], SourceSpan.None), SourceSpan.None),
        "1", "2");

    /// <summary>A pole with common C and one throw for each position named.</summary>
    public PanelBuilder Pole(string name, string actuator, params string[] throws) => Add(
        new Switch(
            name, ContactForm.Rotary, actuator,
            new Pole("C", [.. throws.Select(t => new Throw(t, t, At(actuator, t), SourceSpan.None))], SourceSpan.None),
            SourceSpan.None),
        ["C", .. throws]);

    /// <summary>A coded wheel with common C; each output is closed in the positions named.</summary>
    public PanelBuilder Coded(string name, string actuator, params (string Output, string[] Positions)[] outputs) => Add(
        new Switch(
            name, ContactForm.Rotary, actuator,
            new Pole("C", [.. outputs.Select(o => new Throw(o.Output, o.Output, At(actuator, o.Positions), SourceSpan.None))], SourceSpan.None), SourceSpan.None)
        {
            Kind = SwitchKind.Coded,
        },
        ["C", .. outputs.Select(o => o.Output)]);

    /// <summary>The last pole makes before it breaks.</summary>
    public PanelBuilder Bridging()
    {
        var last = (Switch)_parts[^1];
        _parts[^1] = last with { Pole = last.Pole with { MakesBeforeBreak = true } };
        return this;
    }

    /// <summary>The last relay's contacts that move at once make before they break.</summary>
    public PanelBuilder BridgingRelay()
    {
        var last = (Relay)_parts[^1];
        _parts[^1] = last with { Poles = [.. last.Poles.Select(p => p.IsDelayed ? p : p with { Pole = p.Pole with { MakesBeforeBreak = true } })] };
        return this;
    }

    /// <summary>The last supply can be switched off.</summary>
    public PanelBuilder Switched()
    {
        _parts[^1] = (Supply)_parts[^1] with { IsSwitched = true };
        return this;
    }

    /// <summary>A relay with as many changeover contact sets as told: 11 12 14, 21 22 24 ...</summary>
    public PanelBuilder Relay(string name, double volts = 24, double ohms = 800, int sets = 2) => Add(
        new Relay(name, new CoilData(volts, ohms), [.. Enumerable.Range(1, sets).Select(i => new RelayPole(
            ContactForm.Changeover,
            new Pole($"{i}1", [
                new Throw($"{i}2", "released", Energised(name, false), SourceSpan.None),
                new Throw($"{i}4", "operated", Energised(name), SourceSpan.None)], SourceSpan.None)))], SourceSpan.None),
        ["A1", "A2", .. Enumerable.Range(1, sets).SelectMany(i => new[] { $"{i}1", $"{i}2", $"{i}4" })]);

    /// <summary>
    /// A relay with a delayed changeover 15-16-18 and an instantaneous one 21-22-24; delays in seconds, null for none.
    /// </summary>
    public PanelBuilder TimeDelay(string name, double? on, double? off = null, double ohms = 800)
    {
        Throw To(string terminal, Condition when) => new(terminal, "", when, SourceSpan.None);
        return Add(
            new Relay(name, new CoilData(24, ohms), [
                new RelayPole(ContactForm.Changeover, new Pole("15", [To("16", Delayed(name, false)), To("18", Delayed(name))], SourceSpan.None)) { IsDelayed = true },
                new RelayPole(ContactForm.Changeover, new Pole("21", [To("22", Energised(name, false)), To("24", Energised(name))], SourceSpan.None)),
            ], SourceSpan.None)
            {
                OnDelay = on is { } s ? new Delay(s, s) : null,
                OffDelay = off is { } t ? new Delay(t, t) : null,
            },
            "A1", "A2", "15", "16", "18", "21", "22", "24");
    }

    /// <summary>A keypad of rows and columns, its keys numbered from 1 row by row, and the actuators of its keys.</summary>
    public PanelBuilder Keypad(string name, int rows, int columns)
    {
        var keypad = new Keypad(
            name, [.. Enumerable.Range(0, rows * columns).Select(i => new KeypadKey($"{i + 1}", $"R{(i / columns) + 1}", $"C{(i % columns) + 1}", SourceSpan.None))], SourceSpan.None);
        _actuators.AddRange(keypad.Hands);
        return Add(keypad, [.. keypad.Rows, .. keypad.Columns]);
    }

    public PanelBuilder Lamp(string name, double volts = 24, double amps = 0.04) =>
        Add(new Lamp(name, volts, amps, SourceSpan.None), "X1", "X2");

    public PanelBuilder Solenoid(string name, double volts = 24, double ohms = 40) =>
        Add(new Solenoid(name, new CoilData(volts, ohms), SourceSpan.None), "A1", "A2");

    public PanelBuilder Led(string name, double volts = 2, double amps = 0.02) =>
        Add(new Led(name, volts, amps, SourceSpan.None), "A", "K");

    public PanelBuilder Motor(string name, double volts = 24, double amps = 1.5) =>
        Add(new Consumer(name, ConsumerKind.Motor, volts, amps, SourceSpan.None), "1", "2");

    public PanelBuilder Diode(string name) => Add(new Diode(name, SourceSpan.None), "A", "K");

    public PanelBuilder Resistor(string name, double ohms) => Add(new Resistor(name, ohms, SourceSpan.None), "1", "2");

    public PanelBuilder Potentiometer(string name, double ohms) => Add(new Potentiometer(name, ohms, SourceSpan.None), "1", "2", "3");

    public PanelBuilder Rectifier(string name) => Add(new BridgeRectifier(name, SourceSpan.None), "AC1", "AC2", "+", "-");

    public PanelBuilder Transistor(string name) => Add(new TransistorOutput(name, SourceSpan.None), "C", "E");

    /// <summary>A resistor that has any value of a range, at any time.</summary>
    public PanelBuilder Varying(string name, double least, double most) => Add(
        new RangedResistor(name, RangedResistorKind.Resistor, new ResistanceEnd(least, "at its least"), new ResistanceEnd(most, "at its most"), SourceSpan.None), "1", "2");

    public PanelBuilder Fuse(string name) => Add(new Fuse(name, 2, SourceSpan.None), "1", "2");

    public PanelBuilder Supply(string name, double volts = 24, double ohms = 0) =>
        Add(new Supply(name, volts, SourceSpan.None) { SourceOhms = ohms }, "+", "-");

    public PanelBuilder Board(string name, params BoardInput[] inputs) =>
        Add(new Board(name, [.. inputs], ["GND"], SourceSpan.None), [.. inputs.Select(i => i.Terminal), "GND"]);

    public static BoardInput Input(string name, bool pullUp = true, double? max = 5.5) =>
        new(name, max, SourceSpan.None) { PullUpVolts = pullUp ? 5 : null, PullUpOhms = pullUp ? 10_000 : 0 };

    /// <summary>A connector with contacts of these names, seven at most.</summary>
    public PanelBuilder Connector(string name, params string[] contacts) =>
        Add(new Connector(name, new SpiralInsert(7) { Rings = [1, 6] }.Build().Arrangement!, SourceSpan.None), contacts);

    /// <summary>Wires a chain of terminals together, each pair with a wire of its own.</summary>
    public PanelBuilder Wire(params string[] terminals)
    {
        for (var i = 1; i < terminals.Length; i++)
            _wires.Add(new Wire($"W{_wires.Count + 1}", Id(terminals[i - 1]), Id(terminals[i]), SourceSpan.None));
        return this;
    }

    public PanelBuilder Expect(Expectation expectation)
    {
        _expectations.Add(expectation);
        return this;
    }

    /// <summary>Of these terminals of a part it is not known what they are joined to inside their unit.</summary>
    public PanelBuilder NotTraced(string part, params string[] terminals)
    {
        var place = _parts.FindIndex(p => p.Designator == part);
        _parts[place] = _parts[place] with { NotTraced = [.. terminals] };
        return this;
    }

    /// <summary>Changes parts.</summary>
    public PanelBuilder Change(Func<Part, Part> change)
    {
        for (var i = 0; i < _parts.Count; i++) _parts[i] = change(_parts[i]);
        return this;
    }

    /// <summary>It is not known from which voltage the last part works.</summary>
    public PanelBuilder Unrated()
    {
        _parts[^1] = _parts[^1] switch
        {
            Lamp lamp => lamp with { RatedVolts = null, ColdOhms = lamp.HotOhms / 10 },
            Relay relay => relay with { Coil = new CoilData(null, relay.Coil.Ohms) },
            Solenoid solenoid => solenoid with { Coil = new CoilData(null, solenoid.Coil.Ohms) },
            var other => throw new InvalidOperationException($"{other.Designator} has no rating to take away."),
        };
        return this;
    }

    public PanelBuilder Add(Part part, params string[] terminals)
    {
        _parts.Add(part with { Terminals = [.. terminals.Select(t => new Terminal(t, SourceSpan.None))] });
        return this;
    }

    /// <summary>What one check finds.</summary>
    public ImmutableArray<Diagnostic> Find(ICheck check) => [.. check.Run(new AnalysisContext(Panel))];

    /// <summary>What all checks over positions find.</summary>
    public ImmutableArray<Diagnostic> FindAll()
    {
        var context = new AnalysisContext(Panel);
        return [.. PanelChecker.AllChecks.Where(c => c.Stage == CheckStage.Positions).SelectMany(c => c.Run(context))];
    }
}
