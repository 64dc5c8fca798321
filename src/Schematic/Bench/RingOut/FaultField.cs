using System.Collections.Immutable;
using Schematic.Bench.Faults;

namespace Schematic.Bench.RingOut;

/// <summary>The sound circuit and its faulty ones, each probed for a stand when it is first asked for.</summary>
internal sealed class FaultField(BenchCircuit circuit, ImmutableArray<Fault> faults, ReadingCache cache)
{
    private readonly Dictionary<Stand, (ProbedCircuit Sound, ProbedCircuit?[] Faulty)> _probed = [];
    private readonly Dictionary<Stand, ulong> _looks = [];
    private readonly Dictionary<string, int> _conditions = new(StringComparer.Ordinal);
    private readonly (int One, int Other)[] _ends = [.. faults.Select(f => f.Ends(circuit))];

    public BenchCircuit Circuit => circuit;

    public ImmutableArray<Fault> Faults => faults;

    /// <summary>The two terminals of what is wrong.</summary>
    public (int One, int Other) EndsOf(int fault) => _ends[fault];

    /// <summary>How many faulty circuits were probed: what the work is counted in, the same on every machine.</summary>
    public long Probed { get; private set; }

    public ProbedCircuit Sound(Stand stand) => At(stand).Sound;

    public ProbedCircuit Faulty(Stand stand, int fault)
    {
        var (sound, faulty) = At(stand);
        if (faulty[fault] is { } known) return known;
        Probed++;
        return faulty[fault] = sound.With(faults[fault]);
    }

    /// <summary>What can be seen of the sound circuit.</summary>
    public ulong SoundLook(Stand stand)
    {
        if (!_looks.TryGetValue(stand, out var look)) _looks[stand] = look = LookPrint.Of(circuit, Sound(stand), cache);
        return look;
    }

    /// <summary>What can be seen of a faulty one.</summary>
    public ulong Look(Stand stand, int fault) =>
        Faulty(stand, fault) is var faulty && ReferenceEquals(faulty, Sound(stand)) ? SoundLook(stand) : LookPrint.Of(circuit, faulty, cache);

    /// <summary>Whether the fault shows at a placement.</summary>
    public bool Shows(Placement placement, Reading expected, int fault)
    {
        var (sound, _) = At(placement.Stand);
        if (!IsTouched(sound, placement, fault)) return false;
        var faulty = Faulty(placement.Stand, fault);
        return !ReferenceEquals(faulty, sound) && faulty.Read(placement.Test, placement.Red, placement.Black).DiffersFrom(expected);
    }

    /// <summary>Lets go of what was probed: a large unit in many stands holds much.</summary>
    public void Forget(Stand stand) => _probed.Remove(stand);

    /// <summary>
    /// What could be seen of a circuit, switching contacts taken for devices of their own kind: a fault that looks like the sound
    /// circuit here looks like it in every stand.
    /// </summary>
    public ulong StandlessLook(BenchCircuit any)
    {
        var open = any with
        {
            Contacts = [],
            Elements = [.. any.Elements, .. any.Contacts.Where(c => c.Stuck is null).Select(c => new BenchElement(c.From, c.To, "", ConditionValue(c)))],
            Joints = [.. any.Joints, .. any.Contacts.Where(c => c.Stuck == true).Select(c => new BenchJoint(c.From, c.To, Analysis.JointKind.Jumper, "", BenchCircuit.ContactOhms))],
        };
        return LookPrint.Of(open, new ProbedCircuit(open, Stand.Rest(open.Actuators), cache), cache);
    }

    /// <summary>Contacts that follow the same positions are alike; a negative resistance is none that a device has.</summary>
    private ElementValue ConditionValue(BenchContact contact)
    {
        var words = PanelPrint.Words(contact.Source.When) + (PowerOff.MakesBeforeBreak(contact.Source) ? " early" : "");
        if (!_conditions.TryGetValue(words, out var number)) _conditions[words] = number = _conditions.Count;
        return new ElementValue(Analysis.Circuits.ElementKind.Resistor, -1 - number, 0, 1, 1);
    }

    /// <summary>A fault changes nothing between leads that are both on conductors which none of its ends belongs to.</summary>
    private bool IsTouched(ProbedCircuit sound, Placement placement, int fault)
    {
        var (one, other) = (sound.GroupOf(_ends[fault].One), sound.GroupOf(_ends[fault].Other));
        foreach (var terminal in placement.Red)
            if (sound.GroupOf(terminal) is var group && (group == one || group == other)) return true;
        foreach (var terminal in placement.Black)
            if (sound.GroupOf(terminal) is var group && (group == one || group == other)) return true;
        return false;
    }

    private (ProbedCircuit Sound, ProbedCircuit?[] Faulty) At(Stand stand)
    {
        if (!_probed.TryGetValue(stand, out var at))
            _probed[stand] = at = (new ProbedCircuit(circuit, stand, cache), new ProbedCircuit?[faults.Length]);
        return at;
    }
}
