using Schematic.Analysis.Circuits;
using Schematic.Model;

namespace Schematic.Tests.Analysis.Positions;

/// <summary>What each rule must find, written as plain sentences over the states that were tried.</summary>
internal sealed class RuleOracle
{
    private readonly Panel _panel;
    private readonly Simulator _sim;
    private readonly Circuit _circuit;
    private readonly List<Simulator.Look> _looks;
    private readonly bool _hasShort;

    public RuleOracle(Panel panel, Simulator sim, Circuit circuit)
    {
        (_panel, _sim, _circuit) = (panel, sim, circuit);
        _looks = [.. sim.Lasting.Values.Select(l => l.Look)];
        _hasShort = _looks.Any(l => l.IsShorted);
        IsStuck = Stuck().Any();
    }

    /// <summary>Whether a lock sticks: what it keeps away is then not reported as missing, and nothing is expected of it here.</summary>
    public bool IsStuck { get; }

    /// <summary>
    /// Whether some load is fed and gets too little in every state: what it would move idles then, and the finding about the
    /// load tells it.
    /// </summary>
    public bool HasWeakLoad => !_hasShort && _sim.Loads.Any(load =>
        !_looks.Any(l => l.IsAttracted(load)) && _looks.Any(l => !l.IsShorted && l.Fraction(load) >= LoadLimits.PartFraction));

    /// <summary>What is left to the finding about a load that is too weak.</summary>
    public static bool IsLeftToWeakLoads(string finding) =>
        finding.Split(' ')[0] is "load-never-energised" or "lock-never-released";

    /// <summary>What the proof may or may not say of things that never come about while a lock sticks.</summary>
    public static bool IsLeftOpenByStuckLocks(string finding) =>
        finding.Split(' ')[0] is "claim-proves-nothing" or "input-never-changes" or "load-never-energised" or "contact-never-closes" or "contact-never-opens";

    private IEnumerable<Simulator.Look> Working => _looks.Where(l => !l.IsShorted && l.IsOn);

    /// <summary>What lasts, and what shows in passing because a pole joins two throws.</summary>
    private IEnumerable<Simulator.Look> AlsoInPassing => _looks.Concat(_sim.Moments.Where(m => !m.Opens).Select(m => m.Moment));

    public IEnumerable<string> Expected() =>
    [
        .. Shorts(), .. Tied(), .. Inputs(), .. Loads(), .. Contacts(),
        .. Ghosts(), .. Stuck().Select(s => $"lock-never-released {s.Actuator}").Distinct(), .. Expectations(), .. Never(),
    ];

    private IEnumerable<string> Shorts() => _sim.Supplies.Where((_, i) => AlsoInPassing.Any(l => l.IsShortedAt(i)))
        .Select(s => $"supply-shorted {s.Designator}");

    private IEnumerable<string> Tied()
    {
        if (_sim.Supplies.Count < 2) yield break;
        var (a, b) = (_sim.Supplies[0], _sim.Supplies[1]);
        bool Meet(Simulator.Look l, string one, string other) => l.Joined(a.At(one), b.At(other));
        // PS1 is the higher one.
        bool Drives(Simulator.Look l) => l.DownstreamOf(a.At("+")).Contains(l.Group(b.At("+")));
        if (AlsoInPassing.Any(l => !l.IsShorted && ((Drives(l) && Meet(l, "-", "-")) || (Meet(l, "+", "-") && Meet(l, "-", "+"))) && l.IsOn))
            yield return $"supplies-tied {a.Designator} {b.Designator}";
    }

    private IEnumerable<string> Inputs()
    {
        foreach (var input in _circuit.Inputs)
        {
            double? Volts(Simulator.Look look) => look.InputVolts(input.Terminal, input.Board.At("GND"));
            var isBeyond = _looks.Any(l => ProofAgreementTests.IsBeyond(l, input));
            if (AlsoInPassing.Any(l => ProofAgreementTests.IsBeyond(l, input))) yield return $"over-limit-input {input.Terminal}";
            if (!input.HasPull && Working.Any(l => Volts(l) is null) && Working.Any(l => Volts(l) is not null))
                yield return $"floating-input {input.Terminal}";
            if (_hasShort || isBeyond || IsStuck || IsStatedConstant(input) || !Meets(input.Node, e => e.Kind != ElementKind.Pull, boardsToo: true)) continue;
            var low = Working.Any(l => Volts(l) <= LoadLimits.LowVolts(input.Input));
            var high = Working.Any(l => Volts(l) >= LoadLimits.HighVolts(input.Input));
            var other = Working.Any(l => !(Volts(l) <= LoadLimits.LowVolts(input.Input)) && !(Volts(l) >= LoadLimits.HighVolts(input.Input)));
            if (new[] { low, high, other }.Count(x => x) == 1) yield return $"input-never-changes {input.Terminal}";
        }
    }

    private bool IsStatedConstant(InputPoint input) => _panel.Expectations.OfType<LevelExpectation>()
        .Any(e => e.Input == input.Terminal && e.When is AllCondition { Parts.IsEmpty: true });

    private IEnumerable<string> Loads()
    {
        foreach (var load in _sim.Loads)
        {
            var element = _circuit.ElementOf(load.Designator)!;
            var proper = _looks.Any(l => !l.IsShorted && l.IsDirect(load) && l.IsAttracted(load));
            var sneaks = _looks.Any(l => !l.IsShorted && !l.IsDirect(load) && l.Fraction(load) >= LoadLimits.PartFraction);
            if (proper && sneaks) yield return "sneak-path";
            if (_hasShort || IsStuck) continue;
            var isFed = _looks.Any(l => l.IsAttracted(load) || (!l.IsShorted && l.Fraction(load) >= LoadLimits.PartFraction));
            bool Hangs(int node) => Meets(node, e => e.Kind is ElementKind.Resistor or ElementKind.Diode, boardsToo: false);
            if (!isFed && (Hangs(element.FromNode) || Hangs(element.ToNode))) yield return $"load-never-energised {load.Designator}";
        }
    }

    private IEnumerable<string> Contacts()
    {
        if (IsStuck) yield break;
        foreach (var (a, b, when, _) in _sim.Contacts)
        {
            var isRelay = _panel.FindPart(a.Part) is Relay;
            if (!isRelay && !_looks.Any(l => l.Holds(when))) yield return $"contact-never-closes {a} {b}";
            else if (!isRelay && _looks.All(l => l.Holds(when))) yield return $"contact-never-opens {a} {b}";
            // Joined by wires for good is another rule's finding.
            else if (_circuit.NodeOf(a) != _circuit.NodeOf(b) && _looks.Where(l => !l.IsShorted && !l.Holds(when)).ToList() is { Count: > 0 } open && open.TrueForAll(l => l.Joined(a, b))) yield return $"contact-never-opens {a} {b}";
        }
    }

    /// <summary>Keypads with a key that is let go while others join its row and its column.</summary>
    private IEnumerable<string> Ghosts()
    {
        bool IsWired(TerminalId terminal) => _panel.Wires.Any(w => w.From == terminal || w.To == terminal);
        foreach (var keypad in _panel.Parts.OfType<Keypad>())
        {
            var keys = _sim.Contacts.Where(c => c.A.Part == keypad.Designator && IsWired(c.A) && IsWired(c.B) && _circuit.NodeOf(c.A) != _circuit.NodeOf(c.B));
            if (keys.Any(k => _looks.Any(l => !l.Holds(k.When) && l.Joined(k.A, k.B)))) yield return $"ghost-key {keypad.Designator}";
        }
    }

    private IEnumerable<ActuatorLock> Stuck() => _panel.Locks.Where(one =>
    {
        var index = _panel.Actuators.ToList().FindIndex(a => a.Name == one.Actuator);
        var here = _sim.Lasting.Values.Select(l => l.Look)
            .Where(l => one.Positions.Contains(_panel.Actuators[index].Positions[l.Positions[index]].Name)).ToList();
        return here.Count > 0 && !here.Any(l => l.Holds(one.Release));
    });

    private IEnumerable<string> Expectations()
    {
        foreach (var expectation in _panel.Expectations.Where(e => e is not NeverExpectation))
        {
            var asked = _looks.Where(l => IsAsked(l, expectation.When)).ToList();
            var text = expectation switch
            {
                LevelExpectation l => $"{l.Input} {(l.Level == InputLevel.Low ? "low" : "high")}",
                EnergisedExpectation e => $"{e.Part} {(e.Energised ? "energised" : "released")}",
                ContinuityExpectation c => $"{c.From} {(c.Closed ? "closed" : "open")} to {c.To}",
                _ => "",
            };
            var passing = _sim.Moments.Where(m => expectation.IsInPassing && IsAsked(m.Before, expectation.When) && IsAsked(m.After, expectation.When) && !m.Moment.IsShorted);
            if (asked.Any(l => !Fulfils(l, expectation)) || passing.Any(m => !Fulfils(m.Moment, expectation))) yield return $"expectation-fails {text}";
            else if (asked.Count == 0 && !IsStuck) yield return $"claim-proves-nothing {text}";
        }
    }

    /// <summary>Whether a claim speaks of a state: no supply is shorted, and those it does not name are on.</summary>
    private bool IsAsked(Simulator.Look look, Condition when) => !look.IsShorted && look.Holds(when)
        && _sim.Supplies.Where((_, i) => !look.On[i]).All(s => Names(when).Contains(s.Designator));

    private static IEnumerable<string> Names(Condition condition) => condition switch
    {
        AllCondition all => all.Parts.SelectMany(Names),
        AnyCondition any => any.Parts.SelectMany(Names),
        SupplyCondition supply => [supply.Supply],
        _ => [],
    };

    private bool Fulfils(Simulator.Look look, Expectation expectation) => expectation switch
    {
        LevelExpectation e => _circuit.Inputs.Single(i => i.Terminal == e.Input) is var input
            && look.InputVolts(input.Terminal, input.Board.At("GND")) is var volts
            && (e.Level == InputLevel.Low ? volts <= LoadLimits.LowVolts(input.Input) : volts >= LoadLimits.HighVolts(input.Input)),
        EnergisedExpectation e => look.IsEnergised(_panel.FindPart(e.Part)!) == e.Energised,
        ContinuityExpectation e => look.Joined(e.From, e.To) == e.Closed,
        _ => true,
    };

    private IEnumerable<string> Never()
    {
        foreach (var never in _panel.Expectations.OfType<NeverExpectation>())
        {
            bool Reaches(Simulator.Look l) => l.Reach(never.Sources[0], upstream: false).Contains(l.Group(never.Targets[0]));
            var asked = _looks.Where(l => IsAsked(l, never.When)).ToList();
            var passing = _sim.Moments.Where(m => !m.Opens && IsAsked(m.Before, never.When) && IsAsked(m.After, never.When) && !m.Moment.IsShorted);
            if (asked.Exists(Reaches) || passing.Any(m => Reaches(m.Moment))) yield return $"never-violated {never.Sources[0]}";
            else if (asked.Count == 0 && !IsStuck) yield return $"claim-proves-nothing never {never.Sources[0]} reaches {never.Targets[0]}";
        }
    }

    /// <summary>Whether a node could come to a supply, or to a board's ground, were all contacts closed.</summary>
    private bool Meets(int start, Func<Element, bool> mayCross, bool boardsToo)
    {
        var rails = _sim.Supplies.SelectMany(s => new[] { _circuit.NodeOf(s.At("+")), _circuit.NodeOf(s.At("-")) }).ToHashSet();
        if (boardsToo) rails.UnionWith(_circuit.Inputs.Select(i => i.GroundNode));
        var seen = new HashSet<int> { start };
        var waiting = new Stack<int>(seen);
        while (waiting.TryPop(out var node))
        {
            if (rails.Contains(node)) return true;
            foreach (var next in _circuit.ContactsAt(node).Select(c => c.Other(node))
                .Concat(_circuit.ElementsAt(node).Where(mayCross).Where(e => e.Kind != ElementKind.Supply).Select(e => e.Other(node))))
                if (seen.Add(next)) waiting.Push(next);
        }

        return false;
    }
}
