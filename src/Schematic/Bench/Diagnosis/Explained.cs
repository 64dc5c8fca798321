namespace Schematic.Bench.Diagnosis;

/// <summary>The circuit as an explanation has it, probed once for each stand.</summary>
internal sealed class Explained
{
    private readonly BenchCircuit _circuit;
    private readonly Mistake? _mistake;
    private readonly ReadingCache _cache;
    private readonly Dictionary<Stand, ProbedCircuit> _probed;

    private Explained(BenchCircuit circuit, Mistake? mistake, ReadingCache cache, Dictionary<Stand, ProbedCircuit> probed) =>
        (_circuit, _mistake, _cache, _probed) = (circuit, mistake, cache, probed);

    /// <summary>The circuit with the faults of an explanation.</summary>
    public static Explained Of(BenchCircuit sound, Explanation explanation, ReadingCache cache)
    {
        var circuit = explanation.Faults.Aggregate(sound, (c, f) => f.ApplyTo(c));
        return new Explained(circuit, explanation.Mistake, cache, []);
    }

    /// <summary>The same circuit measured with another mistake: what was probed is shared.</summary>
    public Explained With(Mistake? mistake) => new(_circuit, mistake, _cache, _probed);

    /// <summary>What the leads add besides, in ohms.</summary>
    public double ExtraOhms => _mistake?.LeadOhms ?? 0;

    /// <summary>What the meter shows when the person notes this placement.</summary>
    public Reading Read(Placement noted)
    {
        if (_mistake is null) return At(noted.Stand).Read(noted.Test, noted.Red, noted.Black);
        return At(_mistake.RealStand(noted.Stand)).Read(noted.Test, _mistake.RealContacts(noted.Red), _mistake.RealContacts(noted.Black));
    }

    /// <summary>What can be seen in a stand, all placements together, as one number.</summary>
    public ulong Look(Stand noted)
    {
        var stand = _mistake?.RealStand(noted) ?? noted;
        var seen = _mistake is null || _mistake.Contacts.IsEmpty ? _circuit : _circuit with { Accessible = _mistake.RealContacts(_circuit.Accessible) };
        return LookPrint.Of(seen, At(stand), _cache);
    }

    private ProbedCircuit At(Stand stand)
    {
        if (!_probed.TryGetValue(stand, out var probed)) _probed[stand] = probed = new ProbedCircuit(_circuit, stand, _cache);
        return probed;
    }
}
