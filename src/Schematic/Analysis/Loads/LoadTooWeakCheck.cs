using System.Collections.Immutable;
using System.Globalization;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.Quantities;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>A load that is fed and can never work, with all that follows from it; and a lamp that is lit but dim.</summary>
public sealed class LoadTooWeakCheck : ICheck
{
    private const string WeakRule = "load-too-weak";
    private const string DimRule = "lamp-dim";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [WeakRule, DimRule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Quantities;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) =>
    [
        .. context.Weak.All.Where(w => !LoadWords.IsMatterOfSetting(context, w.Load.Name)).Select(w => Weak(context, w)),
        .. context.Worst.Loads.Where(l => !context.Weak.Explains(l.Load) && !LoadWords.IsMatterOfSetting(context, l.Name)).Select(Dim).OfType<Diagnostic>(),
    ];

    /// <summary>What follows from a load that never works, a line each.</summary>
    internal static IEnumerable<FactStep> Consequences(WeakLoad weak)
    {
        if (weak.Load.Part is Relay { Poles.IsEmpty: false })
            yield return new FactStep($"so the contacts of {weak.Load.Name} stay as they are drawn") { Subjects = [About.Part(weak.Load.Part)] };
        foreach (var load in weak.Followers)
            yield return new FactStep($"so {load.Name} is never energised") { Subjects = [About.Part(load.Part)] };
        foreach (var group in weak.Locks.GroupBy(l => l.Lock.Actuator))
        {
            yield return new FactStep($"so {group.Key} is never released from {NameList.Sentence(group.Select(l => l.Position))}")
            {
                Subjects = [About.Actuator(group.Key)],
            };
        }
    }

    private static Diagnostic Weak(AnalysisContext context, WeakLoad weak) =>
        new(WeakRule, Severity.Error, Message(weak), weak.Load.Part.Span)
        {
            Help = Help(context, weak),
            Subjects = [About.Part(weak.Load.Part), .. weak.Followers.Select(l => About.Part(l.Part)), .. weak.Locks.Select(l => About.Actuator(l.Lock.Actuator)).Distinct()],
            Values = [About.Volts("gets at most", weak.Volts)],
            Trace = context.Positions.Trace(weak.Best, [Lost(weak), .. Consequences(weak)]),
        };

    private static string Message(WeakLoad weak) =>
        weak.Load.Part is Lamp { RatedVolts: { } rated }
            ? $"{weak.Load.Name} gets at most {ValueText.Volts(weak.Volts)} of its {ValueText.Volts(rated)}: {Light(weak.Volts, rated)}."
        : weak.Load.Part is Led led
            ? $"{weak.Load.Name} gets at most {ValueText.Amps(weak.Amps)} of its {ValueText.Amps(led.RatedAmps)}: too little to be seen."
        : weak.Load.Part is Optocoupler coupler
            ? $"The diode of {weak.Load.Name} gets at most {ValueText.Amps(weak.Amps)} in any position; it switches from {ValueText.Amps(LoadLimits.CouplerFraction * LoadLimits.RatedAmps(coupler))}{(coupler.RatedAmps is null ? " (assumed)" : "")}."
        : weak.Load.Part.Winding is { } coil
            ? $"{weak.Load.Name} gets at most {ValueText.Volts(weak.Volts)} in any position; it needs {ValueText.Volts(LoadLimits.OperateVolts(coil))} to operate{(coil.OperatesVolts is null ? " (assumed: 75 % of its rated voltage)" : "")}."
        : $"{weak.Load.Name} gets at most {ValueText.Volts(weak.Volts)} in any position.";

    private static string Light(double volts, double rated)
    {
        var percent = 100 * new LampRerating(volts / rated).Flux;
        return percent < 1 ? "less than 1 % of its light" : string.Create(CultureInfo.InvariantCulture, $"about {percent:0} % of its light");
    }

    /// <summary>What the load gets at best and where the rest stays.</summary>
    private static FactStep Lost(WeakLoad weak) => new(weak.Lost.IsEmpty
        ? $"{weak.Load.Name} then gets {ValueText.Volts(weak.Volts)}; nothing is lost on the way"
        : $"{weak.Load.Name} then gets {ValueText.Volts(weak.Volts)}; the rest is lost in {NameList.Sentence(weak.Lost.Select(l => $"{l.Name} ({ValueText.Volts(l.Volts)})"))}")
    {
        Subjects = [About.Part(weak.Load.Part)],
        Values = [About.Volts("gets", weak.Volts), .. weak.Lost.Select(l => About.Volts($"lost in {l.Name}", l.Volts))],
    };

    private static string Help(AnalysisContext context, WeakLoad weak)
    {
        if (weak.Lost.IsEmpty || weak.Lost[0].Volts < weak.Volts / 4)
            return $"Take a supply for {weak.Load.Name}, or a part for the voltage of this supply.";
        var (name, _) = weak.Lost[0];
        var taker = context.Part(name);
        return taker is null ? "Take thicker or shorter wires, or check the length that is stated."
            : taker is Resistor ? $"Take a smaller resistor than {name}."
            : taker is Supply ? $"Take a supply with less source resistance than {name}."
            : $"Give {weak.Load.Name} a feed of its own: {name} takes its volts.";
    }

    private static Diagnostic? Dim(LoadLevel level)
    {
        if (level.Load.Part is not Lamp { RatedVolts: { } rated } lamp || level.LeastVolts is not { } least) return null;
        if (least.Value >= (LoadNeed.LampLeast * rated) - DimTolerance) return null;
        return new Diagnostic(
            DimRule, Severity.Warning,
            $"{level.Name} gets {ValueText.Volts(least.Value)} of its {ValueText.Volts(rated)}: {Light(least.Value, rated)}.", lamp.Span)
        {
            Help = "Take a lamp for this voltage, or raise the supply, or see what lies in its way.",
            Subjects = [About.Part(lamp)],
            Values = [About.Volts("gets", least.Value), About.Volts("rated", rated)],
            Trace = LoadWords.Trace(least, $"light goes with the power 3.4 of the voltage ({Sources.LampRerating})"),
        };
    }

    /// <summary>Millivolts that stand-ins for ideal joints take are no fault.</summary>
    private const double DimTolerance = 0.01;
}
