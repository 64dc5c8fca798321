using System.Collections.Immutable;
using System.Globalization;
using Schematic.Analysis.Quantities;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>A supply beyond its limit, at a setting that does not serve every load, without any such setting, or of dangerous voltage.</summary>
public sealed class SupplyCheck : ICheck
{
    private const string OverRule = "supply-over-limit";
    private const string SettingRule = "supply-setting";
    private const string NoSettingRule = "no-supply-setting";
    private const string VoltageRule = "above-extra-low-voltage";
    private const string UnsolvedRule = "loads-not-solved";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [OverRule, SettingRule, NoSettingRule, VoltageRule, UnsolvedRule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Quantities;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        if (context.Worst.RegionsLeftOut > 0 && context.Panel.Parts.OfType<Supply>().FirstOrDefault() is { } first)
            yield return Unsolved(first, context.Worst.RegionsLeftOut);
        foreach (var load in context.Worst.Supplies)
        {
            if (load.Supply.LimitAmps is { } limit && load.Amps.Value > limit + 1e-9) yield return Over(load, limit);
            if (Setting(context, load) is { } setting) yield return setting;
            if (load.Supply.MaxVolts > ExtraLowVoltage.LimitVolts(load.Supply.IsAlternating)) yield return Dangerous(load.Supply);
        }
    }

    private static Diagnostic Over(SupplyLoad load, double limit) => new(
        OverRule, LoadWords.ErrorIfShown(load.Amps.Shown > limit + 1e-9),
        $"{load.Supply.Designator} would have to give {ValueText.Amps(load.Amps.Value)}; its limit is {ValueText.Amps(limit)}.",
        load.Supply.Span)
    {
        Help = "Take a larger supply, or see that these loads are never on together.",
        Subjects = [About.Part(load.Supply)],
        Values = [About.Amps("gives", load.Amps.Value), About.Amps("limit", limit)],
        Trace =
        [
            .. LoadWords.Trace(load.Amps),
            .. load.Shares.Select(s => new FactStep($"{s.Load} takes {ValueText.Amps(s.Amps)}")
            {
                Subjects = [About.Part(s.Load)], Values = [About.Amps("takes", s.Amps)],
            }),
        ],
    };

    private static Diagnostic? Setting(AnalysisContext context, SupplyLoad load)
    {
        if (!load.Supply.IsAdjustable) return null;
        if (!load.ColdSetting.IsPossible)
        {
            return new Diagnostic(
                NoSettingRule, LoadWords.ErrorIfShown(!context.Worst.IsBound),
                $"No setting of {load.Supply.Designator} serves every load: {Bound(load.ColdSetting.Lowest, "at least")}, {Bound(load.ColdSetting.Highest, "at most")}.",
                load.Supply.Span)
            {
                Subjects = [About.Part(load.Supply)],
                Values = [About.Volts("at least", load.ColdSetting.Lowest.Volts), About.Volts("at most", load.ColdSetting.Highest.Volts)],
                Help = "Give one of these loads a supply of its own, a series resistor, or wires that lose less.",
            };
        }

        if (!load.Setting.IsPossible || load.Setting.Serves(load.Supply.Volts)) return null;
        var weak = context.Weak.All.Where(w => load.Feeds.Contains(w.Load.Name)).ToList();
        return new Diagnostic(
            SettingRule, weak.Count > 0 ? Severity.Error : Severity.Warning,
            $"{load.Supply.Designator} is set to {ValueText.Volts(load.Supply.Volts)}; every load is served from {Volts(load.Setting.Lowest.Volts)} to {Volts(load.Setting.Highest.Volts)}.",
            load.Supply.Span)
        {
            Help = $"Set it to {Volts(load.Setting.Recommended!.Value)}.",
            Subjects = [About.Part(load.Supply), .. weak.Select(w => About.Part(w.Load.Part))],
            Values =
            [
                About.Volts("set to", load.Supply.Volts), About.Volts("at least", load.Setting.Lowest.Volts),
                About.Volts("at most", load.Setting.Highest.Volts),
            ],
            Trace =
            [
                new FactStep(Bound(load.Setting.Lowest, "at least")), new FactStep(Bound(load.Setting.Highest, "at most")),
                .. weak.SelectMany(w => LoadTooWeakCheck.Consequences(w).Prepend(
                    new FactStep($"so {w.Load.Name} never works") { Subjects = [About.Part(w.Load.Part)] })),
            ],
        };
    }

    private static string Bound(SettingBound bound, string word) => $"{word} {Volts(bound.Volts)} because {bound.Reason}";

    private static string Volts(double volts) => volts.ToString("0.0#", CultureInfo.InvariantCulture) + " V";

    private static Diagnostic Unsolved(Supply supply, int regions) => new(
        UnsolvedRule, Severity.Warning,
        $"{(regions == 1 ? "A part" : $"{regions.ToString(CultureInfo.InvariantCulture)} parts")} of the circuit {(regions == 1 ? "has" : "have")} too many combinations of contacts: its figures on the load sheet are bounds, never too low.",
        supply.Span)
    {
        Subjects = [About.Part(supply)],
        Help = "What exceeds a limit by the bound alone is a warning: find these currents by hand, or describe the circuit in parts.",
    };

    private static Diagnostic Dangerous(Supply supply) => new(
        VoltageRule, Severity.Warning,
        $"{supply.Designator} gives {ValueText.Volts(supply.MaxVolts)}: above extra-low voltage ({ValueText.Volts(ExtraLowVoltage.LimitVolts(supply.IsAlternating))} {(supply.IsAlternating ? "AC" : "DC")}).",
        supply.Span)
    {
        Subjects = [About.Part(supply)],
        Values = [About.Volts("gives", supply.MaxVolts)],
        Help = "Such circuits can kill: local codes and licensed practice decide how they are built and by whom.",
    };
}
