using System.Collections.Immutable;
using Schematic.Bench.Faults;
using Schematic.Bench.Readings;
using Schematic.Bench.RingOut;

namespace Schematic.Bench.Diagnosis;

/// <summary>
/// Finds what is behind readings: every explanation is given its chance beforehand and the likelihood of all readings (model-based
/// diagnosis after Reiter 1987 and de Kleer, Williams 1987, from memory). Pairs of faults are made of those that
/// each explain a reading, are ranked by what they can explain at best, and the best are read exactly.
/// </summary>
public sealed class Diagnoser
{
    /// <summary>Pairs of faults that are read exactly.</summary>
    private const int MostPairsRead = 600;

    /// <summary>Below this many faults all pairs are read.</summary>
    private const int FewFaults = 60;

    /// <summary>Explanations that are ranked and grouped.</summary>
    private const int MostRanked = 60;

    /// <summary>Mistakes less likely than this, all together, are not worth a placement.</summary>
    private const double LeastMistakes = 5e-4;

    /// <summary>So far behind the first, as a logarithm, an explanation is left away.</summary>
    private const double LeftBehind = 12;

    private readonly BenchCircuit _circuit;
    private readonly Meter _meter;
    private readonly BenchReadings _noted;
    private readonly long _mostTried;
    private readonly ReadingCache _cache;
    private readonly ImmutableArray<(NotedReading Noted, Placement Placement)> _readings;
    private readonly Explained _sound;
    private readonly double[] _soundFit;
    private readonly List<(Explanation Explanation, double[] Fit, double Score)> _all = [];

    private Diagnoser(BenchCircuit circuit, BenchReadings readings, long mostTried)
    {
        (_circuit, _meter, _noted, _mostTried) = (circuit, readings.Meter, readings, mostTried);
        _cache = new ReadingCache(_meter);
        _readings =
        [
            .. from noted in readings.Taken
               let placement = ReadingPlacement.Of(circuit, noted)
               where placement is not null
               select (noted, placement),
        ];
        _sound = Explained.Of(circuit, Explanation.Sound, _cache);
        _soundFit = Fit(_sound);
    }

    /// <summary>What the readings mean.</summary>
    /// <param name="circuit">What lay on the bench.</param>
    /// <param name="readings">What was noted.</param>
    /// <param name="mostTried">So many readings are tried before the choice of the next one looks at no further position.</param>
    public static DiagnosisResult Diagnose(BenchCircuit circuit, BenchReadings readings, long mostTried = MeasurementChooser.MostTried) =>
        new Diagnoser(circuit, readings, mostTried).Run();

    private DiagnosisResult Run()
    {
        Add(Explanation.Sound, _soundFit);
        var faults = FaultCatalogue.All(_circuit);
        var fits = faults.Select(f => Fit(_sound.With([f]))).ToArray();
        for (var i = 0; i < faults.Length; i++) Add(new Explanation([faults[i]], null), fits[i]);
        AddMistakes(faults, fits);
        AddPairs(faults, fits);
        var ranking = Ranked();
        var (next, isCutShort) = Next([.. ranking.Select(g => g.Group)]);
        return new DiagnosisResult(_circuit, [.. ranking.Select(g => g.Group)])
        {
            UsedReadings = _readings.Length,
            Readings = [.. _readings.Select(r => r.Noted)],
            Doubts = [.. Doubts()],
            Slips = ranking[0].Group.Members[0].IsSound ? [.. Slips(ranking[0].Group.Against)] : [],
            ExcludedShare = faults.IsEmpty ? 1 : fits.Count(f => f.Sum() < _soundFit.Sum() + Likelihood.Against) / (double)faults.Length,
            Next = next,
            IsNextCutShort = isCutShort,
        };
    }

    /// <summary>
    /// What to measure next: while the readings are those of a sound unit, what tells mistakes of the person apart; else what tells the explanations apart.
    /// </summary>
    private (NextMeasurement? Next, bool IsCutShort) Next(ImmutableArray<ExplanationGroup> ranking)
    {
        ImmutableArray<Placement> taken = [.. _readings.Select(r => r.Placement)];
        var chooser = new MeasurementChooser(_circuit, taken, _mostTried);
        var groups = ranking.Select(g => (Explained: Explaining(g.Members[0]), g.Share)).ToList();
        var best = _all.Max(a => a.Score);
        var total = _all.Sum(a => Math.Exp(a.Score - best));
        var standing = _all.Where(a => a.Explanation is { Faults.IsEmpty: true, Mistake: not null } && a.Score > best - LeftBehind)
            .OrderByDescending(a => a.Score).Select(a => (a.Explanation.Mistake, Share: Math.Exp(a.Score - best) / total)).ToList();
        if (ranking[0].IsPass && standing.Sum(m => m.Share) > LeastMistakes
            && chooser.ChooseOfPerson(_sound, [.. standing.Select(m => (_sound.With(m.Mistake), m.Share))], groups) is { } asked) return (asked, chooser.IsCutShort);
        var shown = ranking.SelectMany(g => g.Members).Select(m => m.Mistake).ToHashSet();
        var chosen = chooser.Choose(groups, [.. standing.Where(m => !shown.Contains(m.Mistake)).Select(m => (_sound.With(m.Mistake), m.Share))]);
        return (chosen, chooser.IsCutShort);
    }

    /// <summary>What in the file speaks for another panel, or an older one.</summary>
    private IEnumerable<string> Doubts()
    {
        if (_noted.Print.Length > 0 && _noted.Print != PanelPrint.Of(_circuit.Panel))
            yield return "These readings were begun from another panel, or from this one before it was changed: what follows holds only if they belong to it.";
        var blank = _noted.Taken.Count() - _readings.Length;
        if (blank > 0) yield return $"{blank.ToString(System.Globalization.CultureInfo.InvariantCulture)} {(blank == 1 ? "reading is" : "readings are")} at contacts of which nothing is expected, not traced or not on the bench, and {(blank == 1 ? "does" : "do")} not count.";
    }

    private Explained Explaining(Explanation explanation) => _sound.With(explanation.Faults).With(explanation.Mistake);

    private void Add(Explanation explanation, double[] fit) => _all.Add((explanation, fit, explanation.LogChance + fit.Sum()));

    private double[] Fit(Explained explained)
    {
        var fit = new double[_readings.Length];
        for (var i = 0; i < fit.Length; i++)
            fit[i] = Likelihood.Of(_readings[i].Noted.Value!, explained.Read(_readings[i].Placement), _meter, explained.ExtraOhms);
        return fit;
    }

    /// <summary>Mistakes alone, and the likeliest of them together with each fault.</summary>
    private void AddMistakes(ImmutableArray<Fault> faults, double[][] fits)
    {
        var mistakes = MistakeCatalogue.All(_circuit).Concat(LeadMistakes()).Concat(UnitMistakes()).ToList();
        var scored = mistakes.Select(m => (Mistake: m, Fit: Fit(_sound.With(m)))).ToList();
        foreach (var (mistake, fit) in scored) Add(new Explanation([], mistake), fit);
        var best = scored.OrderByDescending(s => s.Fit.Sum() + Math.Log(s.Mistake.Chance)).Take(4)
            .Where(s => s.Fit.Sum() > _soundFit.Sum() && s.Fit.Any(f => f < Likelihood.Against)).ToList();
        if (best.Count == 0) return;
        foreach (var fault in faults)
        {
            var faulty = _sound.With([fault]);
            foreach (var (mistake, _) in best) Add(new Explanation([fault], mistake), Fit(faulty.With(mistake)));
        }
    }

    /// <summary>Leads that are in the readings show in every joint that should read next to nothing.</summary>
    private IEnumerable<Mistake> LeadMistakes()
    {
        var closed = _readings.Where(r => r.Noted.Value is { Kind: ReadingKind.Ohms, IsBeep: false }
            && _sound.Read(r.Placement) is { Kind: ReadingKind.Ohms, Value: < BenchCircuit.MostJointOhms }).Select(r => r.Noted.Value!.Number).Order().ToList();
        if (closed.Count < 2) yield break;
        var extra = closed[closed.Count / 2] - (_meter.IsZeroed ? 0 : _meter.LeadOhms);
        if (extra is < 0.5 or > 20) yield break;
        yield return new Mistake(MistakeKind.NotZeroed, 1e-2, $"the leads were not zeroed: every reading holds some {Model.ValueText.Ohms(extra)} too much") { LeadOhms = extra };
    }

    /// <summary>A unit that was noted wrong shows in every figure that should have been some ohms.</summary>
    private IEnumerable<Mistake> UnitMistakes()
    {
        var figures = _readings.Where(r => r.Noted.Value is { Kind: ReadingKind.Ohms, IsBeep: false }
            && _sound.Read(r.Placement) is { Kind: ReadingKind.Ohms, Value: > BenchCircuit.MostJointOhms }).ToList();
        if (figures.Count < 2) yield break;
        yield return new Mistake(MistakeKind.WrongUnit, 3e-3, "the figures were noted in kohm where the meter showed ohm: each is a thousand times too large") { Factor = 1e3 };
        yield return new Mistake(MistakeKind.WrongUnit, 3e-3, "the figures were noted in ohm where the meter showed kohm: each is a thousand times too small") { Factor = 1e-3 };
    }

    /// <summary>Two digits of a contact's name exchanged while it was written down.</summary>
    private IEnumerable<(NotedReading Noted, Model.TerminalId Written, Model.TerminalId Meant)> Slips(ImmutableArray<NotedReading> against) =>
        from reading in _readings
        where against.Contains(reading.Noted)
        from written in reading.Noted.Red.Concat(reading.Noted.Black)
        where written.Name.Length == 2 && written.Name[0] != written.Name[1]
        let meant = written with { Name = $"{written.Name[1]}{written.Name[0]}" }
        where _circuit.NumberOf(meant) >= 0
        let turned = reading.Noted with
        {
            Red = [.. reading.Noted.Red.Select(t => t == written ? meant : t)],
            Black = [.. reading.Noted.Black.Select(t => t == written ? meant : t)],
        }
        where ReadingPlacement.Of(_circuit, turned) is { } placement && Likelihood.Of(turned.Value!, _sound.Read(placement), _meter) > Likelihood.Against
        select (reading.Noted, written, meant);

    private void AddPairs(ImmutableArray<Fault> faults, double[][] fits)
    {
        if (_soundFit.All(f => f > Likelihood.Against)) return;
        var pairs = new List<(int One, int Other, double Bound)>();
        var useful = Enumerable.Range(0, faults.Length).Where(f => Explains(fits[f])).ToList();
        var partners = faults.Length <= FewFaults ? [.. Enumerable.Range(0, faults.Length)] : useful;
        foreach (var one in faults.Length <= FewFaults ? partners : useful)
        {
            foreach (var other in partners.Where(o => o > one))
                pairs.Add((one, other, Math.Log(faults[one].Chance) + Math.Log(faults[other].Chance) + AtBest(fits[one], fits[other])));
        }

        var most = faults.Length <= FewFaults ? pairs.Count : MostPairsRead;
        foreach (var (one, other, _) in pairs.OrderByDescending(p => p.Bound).Take(most))
        {
            var explanation = new Explanation([faults[one], faults[other]], null);
            Add(explanation, Fit(Explaining(explanation)));
        }
    }

    private bool Explains(double[] fit)
    {
        for (var i = 0; i < fit.Length; i++)
            if (fit[i] > _soundFit[i] + 3) return true;
        return false;
    }

    /// <summary>What two faults can explain together: where one of them changes a reading its own fit, where both do the better.</summary>
    private double AtBest(double[] one, double[] other)
    {
        var sum = 0.0;
        for (var i = 0; i < one.Length; i++)
        {
            var (changesOne, changesOther) = (Math.Abs(one[i] - _soundFit[i]) > 1e-9, Math.Abs(other[i] - _soundFit[i]) > 1e-9);
            sum += changesOne && changesOther ? Math.Max(Math.Max(one[i], other[i]), _soundFit[i]) : changesOne ? one[i] : changesOther ? other[i] : _soundFit[i];
        }

        return sum;
    }

    /// <summary>The likeliest explanations; those that no measurement tells apart are one.</summary>
    private List<(ExplanationGroup Group, double Score)> Ranked()
    {
        var best = _all.Max(a => a.Score);
        var total = _all.Sum(a => Math.Exp(a.Score - best));
        var kept = _all.Where(a => a.Score > best - LeftBehind).OrderByDescending(a => a.Score).Take(MostRanked).ToList();
        var stands = StandFinder.Stands(_circuit).Concat(_readings.Select(r => r.Placement.Stand)).Distinct().ToList();
        return [.. kept
            .GroupBy(a => LookOf(a.Explanation, stands))
            .Select(g => Smallest(g.OrderByDescending(a => a.Score).ToList()))
            .Select(g => (Group: GroupOf(g, Math.Min(1, g.Sum(a => Math.Exp(a.Score - best)) / total)), Score: g.Sum(a => Math.Exp(a.Score - best))))
            .OrderByDescending(g => g.Score)];
    }

    /// <summary>Leaves out what holds another explanation and more: whoever has an open joint need not look for a second fault.</summary>
    private static List<(Explanation Explanation, double[] Fit, double Score)> Smallest(List<(Explanation Explanation, double[] Fit, double Score)> members) =>
    [
        .. members.Where(m => !members.Exists(o => o.Explanation.Size < m.Explanation.Size
            && (o.Explanation.Mistake is null || o.Explanation.Mistake == m.Explanation.Mistake)
            && o.Explanation.Faults.All(m.Explanation.Faults.Contains))),
    ];

    private string LookOf(Explanation explanation, List<Stand> stands)
    {
        var explained = Explaining(explanation);
        return string.Join(' ', stands.Select(s => explained.Look(s).ToString("x", System.Globalization.CultureInfo.InvariantCulture)))
            + string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{explained.ExtraOhms:0.0} {explained.Factor}");
    }

    private ExplanationGroup GroupOf(List<(Explanation Explanation, double[] Fit, double Score)> members, double share)
    {
        var fit = members[0].Fit;
        var all = Enumerable.Range(0, fit.Length);
        return new ExplanationGroup(
            [.. members.Select(m => m.Explanation)], share,
            [.. all.Where(i => _soundFit[i] < Likelihood.Against && fit[i] > Likelihood.Against).Select(i => _readings[i].Noted)],
            [.. all.Where(i => fit[i] < Likelihood.Against).Select(i => _readings[i].Noted)]);
    }
}
