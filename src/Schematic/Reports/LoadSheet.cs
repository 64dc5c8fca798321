using System.Collections.Immutable;
using System.Globalization;
using Schematic.Analysis;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.Loads;
using Schematic.Analysis.Quantities;
using Schematic.Model;

namespace Schematic.Reports;

/// <summary>
/// What everything carries at worst, with the position that causes it and the margin that is left: supplies, loads, fuses,
/// contacts, wires. Below each table stand the formulas and sources of its figures.
/// </summary>
public static class LoadSheet
{
    /// <summary>The tables that have rows; none for a panel without a supply.</summary>
    public static ImmutableArray<ReportTable> Build(AnalysisContext context)
    {
        if (!context.Panel.Parts.Any(p => p is Supply)) return [];
        var worst = context.Worst;
        ReportTable[] tables =
        [
            Supplies(context, worst), Loads(context, worst), Protectors(worst), Contacts(worst), Wires(context, worst),
            LedSubstitution.Build(context),
        ];
        return [.. tables.Where(t => !t.Rows.IsEmpty)];
    }

    /// <summary>
    /// What a pack prints beside the bars of use against limit: the loads, and lamps that could be LEDs. The bars show supplies,
    /// fuses, contacts and the most loaded wires.
    /// </summary>
    public static ImmutableArray<ReportTable> BuildPrinted(AnalysisContext context)
    {
        if (!context.Panel.Parts.Any(p => p is Supply)) return [];
        var worst = context.Worst;
        var loads = Loads(context, worst);
        loads = loads with
        {
            Notes = [.. loads.Notes, CaseNote(worst), $"Left out here: the tables of supplies, fuses, contacts and wires with their sources; \"schematic load\" prints them, the bars of Load on {NameList.Sentence(worst.Supplies.Select(s => s.Supply.Designator))} show the most loaded."],
        };
        ReportTable[] tables = [loads, LedSubstitution.Build(context)];
        return [.. tables.Where(t => !t.Rows.IsEmpty)];
    }

    private static ReportTable Supplies(AnalysisContext context, WorstCases worst) => new(
        "Load sheet: supplies",
        [
            new("supply", "Supply"),
            new("setting_v", "Set to V", ColumnAlign.Right),
            new("from_v", "Serves from V", ColumnAlign.Right),
            new("to_v", "to V", ColumnAlign.Right),
            new("recommended_v", "Advised V", ColumnAlign.Right),
            new("amps", "A at most", ColumnAlign.Right),
            new("limit_amps", "Limit A", ColumnAlign.Right),
            new("use_percent", "Use %", ColumnAlign.Right),
            new("inrush_amps", "Lamps cold A", ColumnAlign.Right),
            new("fuse_amps", "Fuse A", ColumnAlign.Right),
            new("position", "When"),
        ],
        [.. worst.Supplies.Select(SupplyRow)])
    {
        Notes = [.. SupplyNotes(context, worst)],
    };

    private static ImmutableArray<string> SupplyRow(SupplyLoad load) =>
    [
        load.Supply.Designator, load.Supply.MaxVolts == 0 ? "?" : Figures.Plain(load.Supply.Volts), Rounded(load.Setting.Lowest.Volts, 2),
        Rounded(load.Setting.Highest.Volts, 2), load.Setting.Recommended is { } advised ? Figures.Plain(advised) : "none",
        Rounded(load.Amps.Value, 3), load.Supply.LimitAmps is { } limit ? Figures.Plain(limit) : "", Percent(load.Share),
        Rounded(load.PeakAmps.Value, 2), load.Protector.Amps is { } fuse ? Figures.Plain(fuse) : "none", load.Amps.Position,
    ];

    private static IEnumerable<string> SupplyNotes(AnalysisContext context, WorstCases worst)
    {
        foreach (var s in worst.Supplies)
        {
            if (s.Supply.MaxVolts == 0)
            {
                yield return $"{s.Supply.Designator} has no stated voltage: nothing is known of what it serves.";
                continue;
            }

            yield return !s.Supply.IsAdjustable && s.Setting.IsPossible
                ? $"{s.Supply.Designator} is fixed at {ValueText.Volts(s.Supply.Volts)}, which serves every load."
                : $"{s.Supply.Designator}: from {ValueText.Volts(s.Setting.Lowest.Volts)} because {s.Setting.Lowest.Reason}, to {ValueText.Volts(s.Setting.Highest.Volts)} because {s.Setting.Highest.Reason}."
                + (s.Setting.IsPossible ? "" : " No setting serves every load.");
            if (!worst.Uncounted.IsEmpty) continue;
            yield return $"Fuse for the feed of {s.Supply.Designator}: {s.Protector.Method}.";
        }

        yield return $"Coil: operate voltage cold as stated, else 75 % of rated (from memory); warm x (234.5 + T) / 254.5 with T = ambient + {CoilMargin.UsualRise:0} °C ({Sources.CopperTemperature}); at most 110 % of rated unless stated. Lamp: 0.8 to 1.1 of rated (common practice).";
        yield return $"Lamps cold: steady current plus V / (0.1 x hot resistance) for each lamp ({Sources.LampInrush}).";
        if (worst.Supplies.Any(s => s.Supply.IsAlternating) && worst.Outputs.Any(o => o.Part is BridgeRectifier))
            yield return "Behind a rectifier volts are effective values without a capacitor; one across the output lifts them towards the peak, 1.41 times the alternating voltage less the diodes. That is not counted.";
        if (worst.Supplies.Any(s => s.Supply.IsAlternating))
            yield return "Alternating supplies: volts and amperes are effective values, both half-waves solved with resistances alone; what the winding of a coil adds is not modelled, so state its ohms as what it takes at its voltage.";
        if (worst.Uncounted is { IsEmpty: false } open)
            yield return $"Not counted: the current of {NameList.Sentence(open)}, of which no resistance is known; supplies, fuses, contacts and wires may carry more by that.";
        if (context.Panel.Parts.Any(p => !p.NotTraced.IsEmpty || p is Device { UnknownPairs: var open } && open.Any()))
            yield return "Not counted: what may be joined inside units and devices that are not traced. Once traced, figures may rise by what is found there.";
        yield return CaseNote(worst);
    }

    private static string CaseNote(WorstCases worst) =>
        (worst.IsBound
            ? "Too many combinations to solve each: parts that meet only at the supply were solved apart, and the greatest sums that positions allow were taken, never too low. "
            : string.Create(CultureInfo.InvariantCulture, $"All {worst.CaseCount} electrically different combinations of positions were solved (nodal analysis{(worst.Wires.Any() ? " with the resistance of every wire" : "")}). "))
        + (worst.RegionsLeftOut > 0 ? "Some parts have too many combinations of their own: what they carry is bounded by all that could be on together, never too low. " : "")
        + "Contact and fuse resistance are not counted.";

    private static ReportTable Loads(AnalysisContext context, WorstCases worst) => new(
        "Load sheet: loads",
        [
            new("load", "Load"),
            new("what", "What"),
            new("amps", "A at most", ColumnAlign.Right),
            new("least_v", "Least V", ColumnAlign.Right),
            new("needs_v", "Needs V", ColumnAlign.Right),
            new("needs_warm_v", "Warm V", ColumnAlign.Right),
            new("margin_v", "Margin V", ColumnAlign.Right),
            new("most_v", "Most V", ColumnAlign.Right),
            new("stands_v", "Stands V", ColumnAlign.Right),
            new("drop_v", "Drop V", ColumnAlign.Right),
            new("allowed_drop_v", "Allowed V", ColumnAlign.Right),
            new("assumed", "Assumed"),
            new("position", "Least when"),
        ],
        [.. worst.Loads.Select(LoadRow)])
    {
        Notes = [.. LoadNotes(context, worst)],
    };

    private static ImmutableArray<string> LoadRow(LoadLevel load)
    {
        var margin = load.LeastVolts?.Value - (load.Need.HotVolts ?? load.Need.ColdVolts);
        return
        [
            load.Name, load.Load.Part.Description.Length > 0 ? load.Load.Part.Description : PartNames.Of(load.Load.Part),
            load.Load.AreOhmsUnknown ? "?" : Rounded(load.MostAmps?.Value, 3), Rounded(load.LeastVolts?.Value, 2), load.Load.IsLoad && load.Load.Part.IsRatingUnknown ? "?" : Marked(Rounded(load.Need.ColdVolts, 1), IsNeedAssumed(load)),
            load.Need.HotVolts > load.Need.ColdVolts ? Marked(Rounded(load.Need.HotVolts, 1), IsNeedAssumed(load)) : "", load.Load.AreOhmsUnknown && margin is not null ? "?" : Rounded(margin, 2),
            Rounded(load.MostVolts?.Value, 2), Marked(Rounded(load.Need.MostVolts, 1), !load.Need.MostIsStated), load.Load.AreOhmsUnknown && load.Drop is not null ? "?" : Rounded(load.Drop?.Value, 3),
            load.Drop is null || load.Load.AreOhmsUnknown ? "" : Rounded(load.AllowedDrop, 2), Assumed(load), load.LeastVolts?.Position ?? Unfed(load),
        ];
    }

    /// <summary>The words of the language that would state what the program assumes of a load.</summary>
    private static string Assumed(LoadLevel load) => load.Load.Part.Winding is not { } coil ? ""
        : string.Join(", ", new[] { coil.OperatesVolts is null && load.Need.ColdVolts is not null ? "operates" : "", coil.MaxVolts is null && load.Need.MostVolts is not null ? "max" : "" }.Where(w => w.Length > 0));

    /// <summary>Whether what it needs is assumed: a coil or another load of which the file does not say from where it works, and every lamp.</summary>
    private static bool IsNeedAssumed(LoadLevel load) => load.Load.Part is Lamp or Consumer { OperatesVolts: null } || load.Load.Part.Winding is { OperatesVolts: null };

    private static string Marked(string figure, bool isAssumed) => isAssumed && figure.Length > 0 ? ValueText.AssumedMark + figure : figure;

    private static string Unfed(LoadLevel load) => load switch
    {
        { HeldVolts: { } held } => $"held at {ValueText.Volts(held.Value)}",
        { Load.Part: Transformer } => "fed from outside this drawing",
        { MostVolts: { } most } => $"gets no more than {ValueText.Volts(most.Value)}",
        _ => "never fed",
    };

    private static IEnumerable<string> LoadNotes(AnalysisContext context, WorstCases worst)
    {
        if (worst.Uncounted is { IsEmpty: false } open)
            yield return $"No current is counted of {NameList.Sentence(open)}: no resistance is known.";
        if (worst.Loads.Any(l => Assumed(l).Length > 0))
            yield return $"{ValueText.AssumedMark} before a figure: assumed. Assumed: the word that would state it. 'operates' is taken as 75 % and 'max' as 110 % of the rated voltage.";
        yield return "Margin: least voltage less what the load needs, warm where that is more. Voltages with every supply at its setting.";
        var volts = worst.Supplies.Select(s => s.Supply.Volts).Distinct().Order();
        yield return $"Drop: wires from the supply to the load and back, in the position that loses most; {string.Join("; ", volts.Select(v => AllowableDrop.Method(context.Panel.Limits, v)))}.";
        foreach (var load in worst.Loads)
        {
            if (LampNote(load) is { } note) yield return note;
            if (load.HeldVolts is { } held && load.Load.Part.Winding is { } coil)
                yield return $"{load.Name} is held at {ValueText.Volts(held.Value)} or more; it surely releases below {ValueText.Volts(LoadLimits.ReleaseVolts(coil))}{(coil.ReleasesVolts is null ? " (assumed: 10 % of rated)" : "")}.";
        }
    }

    private static string? LampNote(LoadLevel load)
    {
        if (load.Load.Part is not Lamp { RatedVolts: { } rated } || load.MostVolts is not { } most) return null;
        var rerated = new LampRerating(most.Value / rated);
        if (!double.IsFinite(rerated.VoltShare) || Math.Abs(rerated.VoltShare - 1) < 0.02) return null;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{load.Name} at {rerated.VoltShare:0.00} of its voltage: light {rerated.Flux:0.00}, life {rerated.Life:0.00} of rated ({Sources.LampRerating}; r^3.4, r^-12). Its current is counted at its hot resistance.");
    }

    private static ReportTable Protectors(WorstCases worst) => new(
        "Load sheet: fuses and breakers",
        [
            new("protector", "Protector"),
            new("rated_amps", "Rated A", ColumnAlign.Right),
            new("amps", "A at most", ColumnAlign.Right),
            new("use_percent", "Use %", ColumnAlign.Right),
            new("thinnest_wire", "Weakest wire"),
            new("gauge", "Gauge"),
            new("wire_amps", "Wire carries A", ColumnAlign.Right),
            new("chart_amps", "Chart A", ColumnAlign.Right),
            new("fits_amps", "Fits A", ColumnAlign.Right),
            new("position", "When"),
        ],
        [.. worst.Protectors.Select(ProtectorRow)])
    {
        Notes =
        [
            $"Weakest wire: of the wires that a short could load through the protector, the one that may carry least; the protector must open before that ({Sources.ProtectorRule}).",
            $"Fits: the rating it has where that carries load / 0.75 (common practice) and guards the wire, else the next that does ({Sources.FuseRatings}). Chart: largest for that gauge in {Sources.ProtectorChart}, another basis than the bundle amperes, for comparison.",
        ],
    };

    private static ImmutableArray<string> ProtectorRow(ProtectorLoad load) =>
    [
        load.Part.Designator, load.RatedAmps is { } rated ? Figures.Plain(rated) : "?", Rounded(load.Amps.Value, 3), Percent(load.Share),
        load.Thinnest?.Designator ?? "", load.Thinnest is null ? "" : WireList.GaugeText(load.Thinnest), Rounded(load.Capacity?.Amps, 2),
        load.Thinnest?.Gauge?.Awg is { } awg && (load.Part is Fuse ? ProtectorChart.FuseAmps(awg) : ProtectorChart.BreakerAmps(awg)) is { } chart
            ? Figures.Plain(chart) : "",
        load.Choice.Amps is { } smallest ? Figures.Plain(smallest) : "none", load.Amps.Position,
    ];

    private static ReportTable Contacts(WorstCases worst) => new(
        "Load sheet: switching contacts",
        [
            new("contact", "Contact"),
            new("loads", "Switches"),
            new("amps", "A at most", ColumnAlign.Right),
            new("needed_amps", "Needs rating A", ColumnAlign.Right),
            new("peak_amps", "Lamps cold A", ColumnAlign.Right),
            new("rated_amps", "Rated A", ColumnAlign.Right),
            new("use_percent", "Use %", ColumnAlign.Right),
            new("position", "When"),
        ],
        [.. worst.Contacts.Select(ContactRow)])
    {
        Notes =
        [
            $"Needs rating: current x 8 for lamps, 4 for coils, 2 for others at 28 V; x 5, 2, 1 at 12 V ({Sources.SwitchDerating}); several loads added, which is our choice. Ratings are resistive, direct current.",
            $"Silver contacts should not switch under {SwitchDerating.LeastVolts:0} V or {SwitchDerating.LeastAmps} A unless rated for it (same paragraph): ask for gold contacts at board inputs.",
        ],
    };

    private static ImmutableArray<string> ContactRow(ContactLoad load) =>
    [
        $"{load.Contact.Common} – {load.Contact.Throw}", load.Loads.IsEmpty ? "board inputs" : NameList.Compact(load.Loads),
        Rounded(load.Amps.Value, 4), Rounded(load.RequiredAmps.Value, 3), Rounded(load.PeakAmps.Value, 3),
        load.Rating is { } rating ? Figures.Plain(rating.Amps) : "", Percent(load.Share), load.Amps.Position,
    ];

    private static ReportTable Wires(AnalysisContext context, WorstCases worst) => new(
        "Load sheet: wires",
        [
            new("wire", "Wire"),
            new("gauge", "Gauge"),
            new("amps", "A at most", ColumnAlign.Right),
            new("may_carry_amps", "May carry A", ColumnAlign.Right),
            new("use_percent", "Use %", ColumnAlign.Right),
            new("drop_mv", "Drop mV", ColumnAlign.Right),
            new("heat_mw", "Heat mW", ColumnAlign.Right),
            new("celsius", "Copper °C", ColumnAlign.Right),
            new("position", "When"),
        ],
        [.. worst.Wires.Select(WireRow)])
    {
        Notes = [.. WireNotes(context, worst)],
    };

    private static ImmutableArray<string> WireRow(WireLoad load) =>
    [
        load.Wire.Designator, WireList.GaugeText(load.Wire), Rounded(load.Amps.Value, 4), Rounded(load.Capacity?.Amps, 2),
        Percent(load.Share), load.Ohms > 0 ? Rounded(load.DropVolts * 1000, 1) : "", load.Ohms > 0 ? Rounded(load.Watts * 1000, 1) : "",
        Rounded(load.Celsius, 0), load.Amps.Position,
    ];

    private static IEnumerable<string> WireNotes(AnalysisContext context, WorstCases worst)
    {
        foreach (var group in worst.Wires.Where(w => w.Capacity is not null)
            .GroupBy(w => (w.Wire.Gauge!.Text, w.Capacity!.Method, w.Capacity.Amps)).OrderBy(g => g.Key.Text, NaturalOrder.Comparer))
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"{group.Key.Text} may carry {group.Key.Amps:0.00} A: {group.Key.Method}.");
        }

        foreach (var source in worst.Wires.Select(w => w.Wire.Gauge).OfType<WireGauge>().GroupBy(CopperWire.Source).OrderBy(g => g.Key, StringComparer.Ordinal))
            yield return $"Resistance of {string.Join(", ", source.Select(g => g.Text).Distinct().Order(NaturalOrder.Comparer))}: {source.Key}.";
        yield return $"Copper: T = ambient + (insulation - ambient) x root(A / may carry), the conservative form of FAA AC 43.13-1B example 2 (from memory); resistance x (234.5 + T) / 254.5 ({Sources.CopperTemperature}). Drop = ohms x A, heat = ohms x A².";
        foreach (var chosen in worst.Wires.Where(w => w.SizingMethod is not null))
            yield return $"{chosen.Wire.Designator} was sized, the return counted: {chosen.SizingMethod}; {AllowableDrop.Method(context.Panel.Limits, worst.Supplies.Max(s => s.Supply.Volts))}.";
    }

    // All decimals stand, so that the points of a column stand below one another.
    private static string Rounded(double? value, int decimals) => value is { } number && double.IsFinite(number)
        ? (Math.Round(number, decimals) + 0.0).ToString($"F{decimals}", CultureInfo.InvariantCulture)
        : "";

    private static string Percent(double? share) => share is { } value && double.IsFinite(value) ? Rounded(value * 100, 1) : "";
}
