using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>
/// Whether a load is meant to work in a case, or is only held, or gets a little that nobody meant for it. What the circuit
/// would do with ideal wires says what is meant; what the wires leave is then judged, however little it is.
/// </summary>
internal sealed class LoadStanding
{
    private readonly StateSpace _space;
    private readonly Dictionary<string, (Diagram Meant, Diagram Kept, bool WorksSomewhere, bool IsDecided)> _known = new(StringComparer.Ordinal);
    private readonly Dictionary<SwitchingCase, int[]> _states = new(ReferenceEqualityComparer.Instance);

    public LoadStanding(StateSpace space) => _space = space;

    /// <summary>Whether the circuit feeds a load so that it should work, given what it gets behind the wires.</summary>
    public bool IsFed(Element load, SwitchingCase state, double volts, double amps)
    {
        var known = Of(load);
        var fraction = LoadLimits.FedFraction(load, volts, amps);
        if (!known.IsDecided) return fraction >= LoadLimits.LampFraction;
        if (Holds(known.Meant, state)) return true;
        return !known.WorksSomewhere && fraction >= LoadLimits.PartFraction;
    }

    /// <summary>Whether a coil that works elsewhere gets no more here than holds it: an economy circuit.</summary>
    public bool IsHeld(Element load, SwitchingCase state)
    {
        if (load.Kind != ElementKind.Coil) return false;
        var known = Of(load);
        return known.WorksSomewhere && !Holds(known.Meant, state) && HoldVolts(load) is not null && Holds(known.Kept, state);
    }

    /// <summary>The voltage down to which a coil that has operated is held; null for one of which it is not known.</summary>
    public static double? HoldVolts(Element load) =>
        load.Part.Winding is { } coil && (load.Part is Relay or Device || coil.ReleasesVolts is not null) ? LoadLimits.ReleaseVolts(coil) : null;

    private (Diagram Meant, Diagram Kept, bool WorksSomewhere, bool IsDecided) Of(Element load)
    {
        if (_known.TryGetValue(load.Name, out var known)) return known;
        var circuit = _space.Circuit;
        return _known[load.Name] = (
            circuit.IdealAttracted(load), KeptOf(circuit, load), _space.CanReach(circuit.Store.Or(circuit.Attracted(load), circuit.Energised(load))), circuit.IsDecided(load));
    }

    private static Diagram KeptOf(ConditionalCircuit circuit, Element load) => HoldVolts(load) is not { } least ? Diagram.Never
        : circuit.Where(circuit.CasesOf(load), c => Math.Abs(c.Volts ?? 0) >= least);

    private bool Holds(Diagram condition, SwitchingCase state)
    {
        if (condition.IsAlways || condition.IsNever || state.When.IsAlways) return condition.IsAlways;
        if (!_states.TryGetValue(state, out var values))
            _states[state] = values = _space.Circuit.Store.Pick(state.When, _space.Circuit.Variables.RestValues);
        return _space.Circuit.Store.Holds(condition, values);
    }
}
