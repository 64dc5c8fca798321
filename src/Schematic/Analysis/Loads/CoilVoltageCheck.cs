using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>A coil that gets less than it needs: too little even cold, or enough cold and too little when it is warm.</summary>
public sealed class CoilVoltageCheck : ICheck
{
    private const string ColdRule = "coil-below-operate";
    private const string WarmRule = "coil-weak-when-warm";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [ColdRule, WarmRule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Quantities;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) => LoadWords.IsMatterOfSetting(context)
        ? []
        : context.Worst.Loads.Where(l => l.Load.Kind == ElementKind.Coil && CanOperate(context, l))
            .Select(l => Find(context, l)).OfType<Diagnostic>();

    /// <summary>A coil that no position energises even with ideal wires is a finding of its own.</summary>
    private static bool CanOperate(AnalysisContext context, LoadLevel coil) =>
        context.Positions.States.CanReach(context.Positions.Circuit.Attracted(coil.Load));

    private static Diagnostic? Find(AnalysisContext context, LoadLevel coil)
    {
        if (coil.LeastVolts is not { } least || coil.Need.ColdVolts is not { } cold || coil.Need.HotVolts is not { } warm) return null;
        if (least.Value < cold - 1e-6)
        {
            return new Diagnostic(
                ColdRule,
                LoadWords.ErrorUnlessBound(context),
                $"{coil.Name} gets {ValueText.Volts(least.Value)}; it surely operates only from {ValueText.Volts(cold)}.",
                coil.Load.Part.Span)
            {
                Help = "Raise the supply, shorten or thicken the wires, or take a coil for this voltage.",
                Trace = LoadWords.Trace(least),
            };
        }

        if (least.Value >= warm - 1e-6) return null;
        return new Diagnostic(
            WarmRule,
            Severity.Warning,
            $"{coil.Name} gets {ValueText.Volts(least.Value)}: enough cold ({ValueText.Volts(cold)}), too little when warm ({ValueText.Volts(warm)}).",
            coil.Load.Part.Span)
        {
            Help = "Raise the supply towards the rated voltage, or be sure that the coil never gets warm before it has to operate.",
            Trace = LoadWords.Trace(least, $"a warm winding has more resistance: {ValueText.Volts(cold)} x (234.5 + T) / 254.5 with 60 degrees above the surroundings"),
        };
    }
}
