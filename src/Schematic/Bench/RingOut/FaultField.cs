using System.Collections.Immutable;
using Schematic.Bench.Faults;

namespace Schematic.Bench.RingOut;

/// <summary>The sound circuit and its faulty ones, each probed once for a stand when it is first asked for.</summary>
internal sealed class FaultField(BenchCircuit circuit, ImmutableArray<Fault> faults, ReadingCache cache)
{
    private readonly BenchCircuit[] _faulty = [.. faults.Select(f => f.ApplyTo(circuit))];
    private readonly Dictionary<Stand, (ProbedCircuit Sound, ProbedCircuit?[] Faulty)> _probed = [];

    public BenchCircuit Circuit => circuit;

    public ImmutableArray<Fault> Faults => faults;

    public ReadingCache Cache => cache;

    public ProbedCircuit Sound(Stand stand) => At(stand).Sound;

    public ProbedCircuit Faulty(Stand stand, int fault) => At(stand).Faulty[fault] ??= new ProbedCircuit(_faulty[fault], stand, cache);

    /// <summary>What can be seen of the sound circuit.</summary>
    public ulong SoundLook(Stand stand) => LookPrint.Of(circuit, Sound(stand), cache);

    /// <summary>What can be seen of a faulty one.</summary>
    public ulong Look(Stand stand, int fault) => LookPrint.Of(_faulty[fault], Faulty(stand, fault), cache);

    /// <summary>Whether the fault shows at a placement.</summary>
    public bool Shows(Placement placement, Reading expected, int fault) =>
        Faulty(placement.Stand, fault).Read(placement.Test, placement.Red, placement.Black).DiffersFrom(expected);

    /// <summary>Lets go of what was probed: a large unit in many stands holds much.</summary>
    public void Forget(Stand stand) => _probed.Remove(stand);

    private (ProbedCircuit Sound, ProbedCircuit?[] Faulty) At(Stand stand)
    {
        if (!_probed.TryGetValue(stand, out var at))
            _probed[stand] = at = (new ProbedCircuit(circuit, stand, cache), new ProbedCircuit?[faults.Length]);
        return at;
    }
}
