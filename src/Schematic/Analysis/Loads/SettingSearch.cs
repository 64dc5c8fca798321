using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>
/// Finds the settings of a supply that serve every load. The voltage at a load grows with the setting along a line with few
/// bends; the crossing with what the load needs is found on the line through both ends of the range, then drawn nearer by
/// solving the case that decides.
/// </summary>
internal sealed class SettingSearch
{
    private const int Refinements = 4;

    /// <summary>Where between the ends of the range it is looked whether a voltage grows along a straight line.</summary>
    private static readonly ImmutableArray<double> Between = [0.25, 0.5, 0.75];

    /// <summary>How far, in volts, a point may lie beside a line that counts as straight: the rounding of a solution.</summary>
    private const double Rounding = 1e-7;

    /// <summary>A load that changes less, in volts over the whole range, does not hang on the supply.</summary>
    private const double NoChange = 1e-3;

    private readonly WiredNetwork _network;
    private readonly IReadOnlyDictionary<Element, int> _placeOf;
    private readonly Supply _supply;
    private readonly double _low;
    private readonly double _high;
    private readonly ImmutableArray<CaseSolution> _atLow;
    private readonly ImmutableArray<CaseSolution> _atHigh;
    private readonly ImmutableArray<Lazy<ImmutableArray<CaseSolution>>> _between;
    private readonly ImmutableArray<CaseLook> _looks;
    private readonly ILookup<int, int> _casesOf;

    public SettingSearch(WiredNetwork network, IReadOnlyDictionary<Element, int> placeOf, LoadStanding standing, ImmutableArray<(SwitchingCase Case, NetworkPart? Part)> cases, Supply supply)
    {
        (_network, _placeOf, _supply) = (network, placeOf, supply);
        (_low, _high) = supply.IsAdjustable ? (supply.MinVolts, supply.MaxVolts) : (0.8 * supply.Volts, 1.2 * supply.Volts);
        var place = placeOf.First(p => p.Key.Kind == ElementKind.Supply && p.Key.Name == supply.Designator).Value;
        ImmutableArray<(SwitchingCase Case, NetworkPart? Part)> own = [.. cases.Where(c => c.Part is null || c.Part.Elements.BinarySearch(place) >= 0)];
        _atLow = [.. own.Select(c => network.Solve(c.Case, c.Part, At(_low)))];
        _atHigh = [.. own.Select(c => network.Solve(c.Case, c.Part, At(_high)))];
        _between = [.. own.Select(c => new Lazy<ImmutableArray<CaseSolution>>(() => [.. Between.Select(b => network.Solve(c.Case, c.Part, At(_low + (b * (_high - _low)))))]))];
        _casesOf = own.SelectMany((c, i) => (c.Part?.Elements ?? Enumerable.Range(0, network.Circuit.Elements.Length)).Select(e => (Element: e, Case: i)))
            .ToLookup(p => p.Element, p => p.Case);
        _looks = [.. _atHigh.Select(s => new CaseLook(network.Circuit, placeOf, standing, s))];
    }

    /// <summary>The range and a recommended setting; coils are judged warm or cold.</summary>
    public SupplySetting Find(double ambientCelsius, bool isWarm)
    {
        var lowest = new SettingBound(_supply.MinVolts, _supply.IsAdjustable ? $"{_supply.Designator} gives no less" : $"{_supply.Designator} is fixed");
        var highest = new SettingBound(_supply.MaxVolts, _supply.IsAdjustable ? $"{_supply.Designator} gives no more" : $"{_supply.Designator} is fixed");
        var wished = double.PositiveInfinity;
        foreach (var load in _network.Circuit.Elements.Where(e => e.IsLoad))
        {
            var need = LoadNeed.Of(load, ambientCelsius);
            if (Crossing(load, isWarm ? need.HotVolts : need.ColdVolts, weakest: true) is { } least && least > lowest.Volts)
                lowest = new SettingBound(least, $"{load.Name} needs {ValueText.Volts((isWarm ? need.HotVolts : need.ColdVolts)!.Value)}{(isWarm && need.HotVolts > need.ColdVolts ? " when warm" : "")}");
            if (Crossing(load, need.MostVolts, weakest: false) is { } most && most < highest.Volts)
                highest = new SettingBound(most, $"{load.Name} stands {ValueText.Volts(need.MostVolts!.Value)}");
            if (Crossing(load, need.RatedVolts, weakest: false) is { } rated) wished = Math.Min(wished, rated);
        }

        return new SupplySetting(lowest, highest, Recommended(lowest.Volts, highest.Volts, wished));
    }

    /// <summary>The loads and resistors whose voltage follows the setting, by designator.</summary>
    public ImmutableHashSet<string> Feeds() =>
    [
        .. _network.Circuit.Elements.Where(e => e.IsLoad || e.Kind == ElementKind.Resistor)
            .Where(e => _casesOf[_placeOf[e]].Any(i => Math.Abs(_atHigh[i].ElementVolts(e) - _atLow[i].ElementVolts(e)) > NoChange))
            .Select(e => e.Name),
    ];

    /// <summary>The wished setting brought into the range, in tenths of a volt: rounded down where that stays inside, else up.</summary>
    private double? Recommended(double lowest, double highest, double wished)
    {
        if (lowest > highest + 1e-9) return null;
        if (!_supply.IsAdjustable) return _supply.Volts;
        var target = Math.Clamp(double.IsFinite(wished) ? wished : _supply.Volts, lowest, highest);
        var down = Math.Floor((target * 10) + 1e-6) / 10;
        var up = Math.Ceiling((target * 10) - 1e-6) / 10;
        return down >= lowest - 1e-9 ? down : up <= highest + 1e-9 ? up : target;
    }

    /// <summary>
    /// The setting at which a load has <paramref name="volts"/>: in the case that asks for the highest setting
    /// (<paramref name="weakest"/>), else in the one that reaches it first. Null when nothing depends on the setting.
    /// </summary>
    private double? Crossing(Element load, double? volts, bool weakest)
    {
        if (volts is not { } wanted) return null;
        var place = _placeOf[load];
        double? best = null;
        foreach (var i in _casesOf[place])
        {
            if (!_looks[i].IsFedAtAnySetting(place)) continue;
            if ((OnLine(load, wanted, i, weakest) ?? Refined(load, wanted, _atLow[i], _atHigh[i])) is not { } setting) continue;
            if (best is null || (weakest ? setting > best : setting < best)) best = setting;
        }

        return best;
    }

    /// <summary>
    /// The crossing on the line through both ends, where every point between lies on it: the many loads of a case then share its
    /// few solutions. Beyond the range only where the range decides and not the crossing; null where it has to be solved.
    /// </summary>
    private double? OnLine(Element load, double wanted, int place, bool weakest)
    {
        var (low, high) = (_atLow[place].LoadVolts(load), _atHigh[place].LoadVolts(load));
        if (high - low < NoChange) return null;
        var share = (wanted - low) / (high - low);
        if (weakest ? share > 1 : share < 0) return null;
        var isStraight = _between[place].Value.Zip(Between).All(p => Math.Abs(p.First.LoadVolts(load) - low - (p.Second * (high - low))) < Rounding);
        return isStraight ? _low + (share * (_high - _low)) : null;
    }

    private double? Refined(Element load, double wanted, CaseSolution atLow, CaseSolution atHigh)
    {
        var (x0, y0) = (_low, atLow.LoadVolts(load));
        var (x1, y1) = (_high, atHigh.LoadVolts(load));
        const double noSlope = 1e-6;
        for (var i = 0; i < Refinements && Math.Abs(y1 - wanted) > 1e-4; i++)
        {
            if (Math.Abs(y1 - y0) < noSlope * Math.Abs(x1 - x0)) return null;
            var next = x1 + ((wanted - y1) * (x1 - x0) / (y1 - y0));
            if (next <= 0) return null;
            (x0, y0) = (x1, y1);
            (x1, y1) = (next, _network.Solve(atHigh.Case, atHigh.Part, At(next)).LoadVolts(load));
        }

        return Math.Abs(y1 - y0) < noSlope * Math.Abs(x1 - x0) && Math.Abs(y1 - wanted) > 1e-2 ? null : x1;
    }

    private Dictionary<string, double> At(double volts) => new(StringComparer.Ordinal) { [_supply.Designator] = volts };
}
