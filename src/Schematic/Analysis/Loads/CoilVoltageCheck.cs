using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Analysis.States;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>
/// A coil that works in some positions and in others, meant to feed it too, gets less than it needs to operate: too little even
/// cold, or enough cold and too little when it is warm. A coil that is only held there needs less, and is judged by that.
/// </summary>
public sealed class CoilVoltageCheck : ICheck
{
    private const string ColdRule = "coil-below-operate";
    private const string WarmRule = "coil-weak-when-warm";
    private const string AssumedRule = "coil-works-if-assumed";
    private const double Tolerance = 1e-6;

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [ColdRule, WarmRule, AssumedRule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Quantities;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) => context.Worst.Loads
        .Where(l => l.Load.Kind == ElementKind.Coil && !context.Weak.Explains(l.Load) && !LoadWords.IsMatterOfSetting(context, l.Name))
        .Select(l => Find(context, l)).OfType<Diagnostic>();

    private static Diagnostic? Find(AnalysisContext context, LoadLevel coil)
    {
        if (coil.Need.ColdVolts is not { } cold || coil.Need.HotVolts is not { } warm) return null;
        if (Failing(context, coil.Load) is { } witness)
        {
            var volts = Math.Abs(context.Positions.Judge.VoltsIn(coil.Load, witness.State));
            return Below(coil, volts, cold, Severity.Error) with
            {
                Trace = context.Positions.Trace(witness, context.Positions.Explain(coil.Load, witness.State)),
            };
        }

        if (coil.LeastVolts is not { } least) return null;
        if (least.Value < cold - Tolerance)
            return Below(coil, least.Value, cold, LoadWords.ErrorIfShown(least.Shown < cold - Tolerance)) with { Trace = LoadWords.Trace(least) };
        if (least.Value >= warm - Tolerance) return OnAssumption(coil, least.Value, cold, warm);
        return new Diagnostic(
            WarmRule,
            Severity.Warning,
            $"{coil.Name} gets {ValueText.Volts(least.Value)}: enough cold ({ValueText.Volts(cold)}), too little when warm ({ValueText.Volts(warm)}).",
            coil.Load.Part.Span)
        {
            Help = "Raise the supply towards the rated voltage, or be sure that the coil never gets warm before it has to operate.",
            Subjects = [About.Part(coil.Load.Part)],
            Values = [About.Volts("gets", least.Value), About.Volts("operates warm", warm)],
            Trace = LoadWords.Trace(least, $"a warm winding has more resistance: {ValueText.Volts(cold)} x (234.5 + T) / 254.5 with 60 degrees above the surroundings"),
        };
    }

    /// <summary>A coil that works, cold and warm, if what was assumed of it is true: silence would pass the assumption for a fact.</summary>
    private static Diagnostic? OnAssumption(LoadLevel coil, double least, double cold, double warm) =>
        coil.Load.Part.Winding is not { OperatesVolts: null } ? null : new Diagnostic(
            AssumedRule,
            Severity.Note,
            $"{coil.Name} gets {ValueText.Volts(least)} at least and works, cold from {ValueText.AssumedMark}{ValueText.Volts(cold)} and warm from {ValueText.AssumedMark}{ValueText.Volts(warm)}, if it is a usual coil.",
            coil.Load.Part.Span)
        {
            Help = $"Raise a supply slowly from zero, note where it pulls in, and state it: 'operates {ValueText.Volts(cold)}' or what you find.",
            Subjects = [About.Part(coil.Load.Part)],
            Values = [About.Volts("gets", least), About.Volts("operates", cold), About.Volts("operates warm", warm)],
        };

    /// <summary>
    /// The nearest state in which a released coil would operate on ideal wires and does not on its own. One that has operated
    /// before is held there.
    /// </summary>
    private static Witness? Failing(AnalysisContext context, Element coil)
    {
        var (circuit, states) = (context.Positions.Circuit, context.Positions.States);
        if (!circuit.IsDecided(coil)) return null;
        var failing = circuit.Store.AndNot(circuit.IdealAttracted(coil), circuit.Attracted(coil));
        if (circuit.Variables.IndexOf(StateVariableKind.Coil, coil.Name) is >= 0 and var variable)
            failing = circuit.Store.And(failing, circuit.Store.Literal(variable, 0));
        return failing.IsNever ? null : states.Nearest(failing);
    }

    private static Diagnostic Below(LoadLevel coil, double volts, double cold, Severity severity) => new(
        ColdRule, severity, $"{coil.Name} gets {ValueText.Volts(volts)}; it surely operates only from {ValueText.Volts(cold)}.", coil.Load.Part.Span)
    {
        Subjects = [About.Part(coil.Load.Part)],
        Values = [About.Volts("gets", volts), About.Volts("operates", cold)],
        Help = "Raise the supply, shorten or thicken the wires, or take a coil for this voltage.",
    };
}
