using System.Collections.Immutable;
using Schematic.Bench.Faults;

namespace Schematic.Bench.Diagnosis;

/// <summary>The circuit as an explanation has it, probed once for each stand.</summary>
internal sealed class Explained
{
    private readonly BenchCircuit _sound;
    private readonly ReadingCache _cache;
    private readonly Explained? _base;
    private readonly ImmutableArray<Fault> _faults;
    private readonly Mistake? _mistake;
    private readonly Dictionary<Stand, ProbedCircuit> _probed;

    private Explained(BenchCircuit sound, ReadingCache cache, Explained? without, ImmutableArray<Fault> faults, Mistake? mistake, Dictionary<Stand, ProbedCircuit> probed) =>
        (_sound, _cache, _base, _faults, _mistake, _probed) = (sound, cache, without, faults, mistake, probed);

    /// <summary>The circuit with the faults of an explanation.</summary>
    public static Explained Of(BenchCircuit sound, Explanation explanation, ReadingCache cache) =>
        new Explained(sound, cache, null, [], null, []).With(explanation.Faults).With(explanation.Mistake);

    /// <summary>The same circuit measured with another mistake: what was probed is shared.</summary>
    public Explained With(Mistake? mistake) => new(_sound, _cache, _base, _faults, mistake, _probed);

    /// <summary>The same circuit with more faults, made from what was probed without them.</summary>
    public Explained With(ImmutableArray<Fault> faults) =>
        faults.IsEmpty ? this : new Explained(_sound, _cache, _mistake is null ? this : With((Mistake?)null), faults, _mistake, []);

    /// <summary>How many times too large figures in ohms are noted.</summary>
    public double Factor => _mistake?.Factor ?? 1;

    /// <summary>What the leads add besides, in ohms.</summary>
    public double ExtraOhms => _mistake?.LeadOhms ?? 0;

    /// <summary>What the meter shows when the person notes this placement.</summary>
    public Reading Read(Placement noted)
    {
        if (_mistake is null) return Probed(noted.Stand).Read(noted.Test, noted.Red, noted.Black);
        return _mistake.Noted(Probed(_mistake.RealStand(noted.Stand)).Read(noted.Test, _mistake.RealContacts(noted.Red), _mistake.RealContacts(noted.Black)));
    }

    /// <summary>All that may be read in one stand, as it is noted.</summary>
    public ProbedStand At(Stand noted) => new(Probed(_mistake?.RealStand(noted) ?? noted), _mistake, EndsOfFaults);

    /// <summary>The mistake that it was measured with, or null.</summary>
    public Mistake? Mistake => _mistake;

    /// <summary>The terminals of what is wrong.</summary>
    private IEnumerable<int> EndsOfFaults => _faults.SelectMany(f => new[] { f.Ends(_sound).One, f.Ends(_sound).Other });

    /// <summary>What can be seen in a stand, all placements together, as one number.</summary>
    public ulong Look(Stand noted)
    {
        var stand = _mistake?.RealStand(noted) ?? noted;
        var seen = _mistake is null || _mistake.Contacts.IsEmpty ? _sound : _sound with { Accessible = _mistake.RealContacts(_sound.Accessible) };
        return LookPrint.Of(seen, Probed(stand), _cache);
    }

    private ProbedCircuit Probed(Stand stand)
    {
        if (_probed.TryGetValue(stand, out var probed)) return probed;
        return _probed[stand] = _base is null
            ? new ProbedCircuit(_sound, stand, _cache)
            : _faults.Aggregate(_base.Probed(stand), (p, f) => p.With(f));
    }
}
