using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Analysis.Loads;

/// <summary>
/// Data that cannot all be true: an input that reads low above where it reads high, a coil that releases above where it
/// operates, one that stands less than it is rated for, an actuator without a second position that something waits for.
/// </summary>
public sealed class ContradictoryDataCheck : ICheck
{
    private const string Rule = "contradictory-data";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Conflicts;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var panel = context.Panel;
        return
        [
            .. panel.Parts.OfType<Board>().SelectMany(b => b.Inputs.Select(i => OfInput(b, i))).OfType<Diagnostic>().DistinctBy(d => (d.Span, d.Help)),
            .. panel.Parts.Select(p => p.Winding is { } coil ? OfCoil(p, coil) : null).OfType<Diagnostic>(),
            .. panel.Parts.OfType<Device>().Where(DeviceNetwork.IsImpossible).Select(d => Report(
                d.Span, About.Part(d), $"No resistances inside {d.Designator} give what is read between its terminals.",
                "Between three of them the largest reading is no more than the other two together: measure again, with one lead free.")),
            .. panel.Actuators.Where(a => a.Positions.Length == 1 && IsWaitedFor(panel, a)).Select(OfActuator),
            .. OfLimits(panel),
        ];
    }

    private static Diagnostic? OfInput(Board board, BoardInput input)
    {
        var name = board.At(input.Terminal);
        var (low, high) = (LoadLimits.LowVolts(input), LoadLimits.HighVolts(input));
        if (low >= high)
        {
            return Report(
                input.Span, About.Terminal(name), $"{name} reads low up to {ValueText.Volts(low)}{Assumed(input.LowVolts)} and high from {ValueText.Volts(high)}{Assumed(input.HighVolts)}.",
                "The lower level ends below where the higher begins: state both with 'low' and 'high'.");
        }

        if (input.MaxVolts is not { } most) return null;
        if (input.HighVolts > most)
            return Report(input.Span, About.Terminal(name), $"{name} reads high only from {ValueText.Volts(high)}, and stands {ValueText.Volts(most)} at most.", "Correct 'high' or 'max'.");
        return input.PullUpVolts > most
            ? Report(input.Span, About.Terminal(name), $"{name} is pulled up to {ValueText.Volts(input.PullUpVolts.Value)}, and stands {ValueText.Volts(most)} at most.", "Correct 'pull-up' or 'max'.")
            : null;
    }

    private static Diagnostic? OfCoil(Part part, CoilData coil)
    {
        var operates = LoadLimits.OperateVolts(coil);
        if (coil.ReleasesVolts >= operates)
        {
            return Report(
                part.Span, About.Part(part), $"{part.Designator} releases below {ValueText.Volts(coil.ReleasesVolts.Value)} and operates from {ValueText.Volts(operates)}{Assumed(coil.OperatesVolts)}.",
                "A coil lets go at less than it pulls in at: correct 'releases' or 'operates'.");
        }

        if (coil.RatedVolts is not { } rated) return null;
        if (coil.OperatesVolts > rated)
        {
            return Report(
                part.Span, About.Part(part), $"{part.Designator} is rated {ValueText.Volts(rated)} and operates only from {ValueText.Volts(coil.OperatesVolts.Value)}.",
                "A coil operates at no more than its rated voltage: correct one of the two.");
        }

        return coil.MaxVolts < rated
            ? Report(
                part.Span, About.Part(part), $"{part.Designator} is rated {ValueText.Volts(rated)} and stands {ValueText.Volts(coil.MaxVolts.Value)} at most.",
                "A coil stands at least what it is rated for: correct 'max' or the rated voltage.")
            : null;
    }

    private static Diagnostic OfActuator(Actuator actuator) => Report(
        actuator.Span, About.Actuator(actuator.Name), $"{actuator.Name} has one position alone, and something depends on it.",
        "Give it its other positions, or take away what waits for them: nothing ever moves it.");

    private static bool IsWaitedFor(Panel panel, Actuator actuator) =>
        panel.Parts.SelectMany(p => p.ContactSets).Any(s => s.Throws.Any(t => Names(t.When, actuator)))
        || panel.Locks.Any(l => l.Actuator == actuator.Name || Names(l.Release, actuator))
        || panel.Expectations.Any(e => Names(e.When, actuator));

    private static bool Names(Condition condition, Actuator actuator) =>
        condition.Leaves().OfType<PositionCondition>().Any(p => p.Actuator == actuator.Name);

    private static IEnumerable<Diagnostic> OfLimits(Panel panel)
    {
        var limits = panel.Limits;
        if (limits.AmbientCelsius < limits.InsulationCelsius) yield break;
        yield return Report(
            SourceSpan.None, null,
            FormattableString.Invariant($"The surroundings have {limits.AmbientCelsius:0.#} °C and the insulation stands {limits.InsulationCelsius:0.#} °C: no wire may carry anything."),
            "Correct 'ambient' or 'insulation' in 'limits'.");
    }

    private static string Assumed(double? stated) => stated is null ? " (assumed)" : "";

    private static Diagnostic Report(SourceSpan span, Subject? subject, string message, string help) =>
        new(Rule, Severity.Error, message, span) { Subjects = subject is null ? [] : [subject], Help = help };
}
