using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Analysis.Loads;
using Schematic.Analysis.Quantities;
using Schematic.Model;

namespace Schematic.Reports;

/// <summary>
/// What each lamp would become as an LED with a series resistor, and what that saves. An LED does not free the supply from
/// serving coils: while one needs 28 V the supply stays at 28 V.
/// </summary>
public static class LedSubstitution
{
    /// <summary>The current an indicator LED is given where its data are not known: 20 mA, as the calculator pages read use.</summary>
    public const double UsualAmps = 0.02;

    private static readonly ImmutableArray<ReportColumn> Columns =
    [
        new("lamp", "Lamp"),
        new("lamp_amps", "Lamp A", ColumnAlign.Right),
        new("supply_v", "At V", ColumnAlign.Right),
        new("led", "LED"),
        new("forward_v", "LED V", ColumnAlign.Right),
        new("exact_ohms", "Exact ohm", ColumnAlign.Right),
        new("ohms", "E24 ohm", ColumnAlign.Right),
        new("led_amps", "LED A", ColumnAlign.Right),
        new("watts", "W", ColumnAlign.Right),
        new("rating_w", "Buy W", ColumnAlign.Right),
        new("saves_amps", "Saves A", ColumnAlign.Right),
        new("saves_w", "Saves W", ColumnAlign.Right),
    ];

    /// <summary>Builds the table: one row for each lamp that is fed.</summary>
    public static ReportTable Build(AnalysisContext context)
    {
        return new ReportTable(
            "LEDs in place of lamps", Columns,
            [.. context.Worst.Loads.Where(l => l.Load.Part is Lamp && l.MostVolts is not null).Select(l => Row(l, MostOfSetting(context, l))).OfType<ImmutableArray<string>>()])
        {
            IsExtra = true,
            Notes =
            [
                $"R = (V - LED V) / 20 mA, the next higher value of {Sources.PreferredValues}; current, power and savings from the chosen value. W at the supply's highest setting; buy twice that or more.",
                "LED V at 20 mA: red, yellow, orange 2.0, green 2.1, white 3.2, blue 3.3 V (second-hand; yellow and orange from memory): the part's data decide. An LED stands about 5 V backwards (from memory): add a diode where the supply can reverse.",
            ],
        };
    }

    /// <summary>Forward voltage of an indicator LED by colour at 20 mA.</summary>
    public static double ForwardVolts(ColourCode? colour) => colour switch
    {
        ColourCode.GN => 2.1,
        ColourCode.WH or null => 3.2,
        ColourCode.BU => 3.3,
        _ => 2.0,
    };

    /// <summary>How far the supplies that the lamp hangs on can be set above what they are set to; any supply where none is joined to it.</summary>
    private static double MostOfSetting(AnalysisContext context, LoadLevel load)
    {
        var circuit = context.Positions.Circuit;
        if (circuit.Circuit.ElementOf(load.Name) is not { FromNode: >= 0, ToNode: >= 0 } lamp) return 1;
        var all = circuit.Rails.Where(r => r is { Supply: not null, IsPlus: true }).ToList();
        var joined = all.FindAll(r => !circuit.Tied(r, lamp.FromNode).IsNever || !circuit.Tied(r, lamp.ToNode).IsNever);
        return (joined.Count > 0 ? joined : all).Select(r => r.Supply!.Source!.MaxVolts / r.Supply.Source.Volts).DefaultIfEmpty(1).Max();
    }

    private static ImmutableArray<string>? Row(LoadLevel load, double mostOfSetting)
    {
        var lamp = (Lamp)load.Load.Part;
        var volts = Math.Round(load.MostVolts!.Value, 1);
        var led = new LedResistor(volts, volts * Math.Max(1, mostOfSetting), ForwardVolts(lamp.Colour), UsualAmps);
        if (!led.IsPossible) return null;
        var lampAmps = load.MostAmps!.Value;
        return
        [
            lamp.Designator, Figures.Plain(lampAmps), Figures.Plain(volts), lamp.Colour?.ToString() ?? "WH", Figures.Plain(led.ForwardVolts),
            Figures.Plain(Math.Round(led.ExactOhms, 1)), Figures.Plain(led.Ohms), Figures.Plain(led.Amps), Figures.Plain(led.Watts),
            double.IsFinite(led.PartRatingWatts) ? Figures.Plain(led.PartRatingWatts) : "", Figures.Plain(led.SavedAmps(lampAmps)),
            Figures.Plain(led.SavedWatts(lampAmps)),
        ];
    }
}
