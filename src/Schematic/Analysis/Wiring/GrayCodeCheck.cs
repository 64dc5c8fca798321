using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Wiring;

/// <summary>
/// Coded wheels and encoders that are said to be gray and are not: between two neighbouring positions more than one contact changes,
/// or none.
/// </summary>
public sealed class GrayCodeCheck : ICheck
{
    private const string Rule = "not-gray";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Gaps;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        foreach (var wheel in context.Panel.Parts.OfType<Switch>().Where(s => s.IsGray && s.Gang == s.Designator))
        {
            if (context.Panel.Actuators.FirstOrDefault(a => a.Name == wheel.Actuator) is not { } actuator) continue;
            var wrong = Steps(wheel, actuator).Where(s => s.Changing.Length != 1).ToImmutableArray();
            if (wrong.IsEmpty) continue;
            var (from, to, changing) = wrong[0];
            var more = wrong.Length - 1;
            yield return new Diagnostic(
                Rule, Severity.Note,
                $"{wheel.Designator} is said to be gray; from {from} to {to} {(changing.IsEmpty ? "no contact changes" : $"{NameList.Sentence(changing)} change at once")}{(more > 0 ? $", and {more} more {(more == 1 ? "step" : "steps")} likewise" : "")}.",
                wheel.Span)
            {
                Help = "Compare the pattern with the wheel, position by position, or take the word out.",
                Subjects = [About.Part(wheel), About.Actuator(actuator.Name)],
            };
        }
    }

    private static IEnumerable<(string From, string To, ImmutableArray<string> Changing)> Steps(Switch wheel, Actuator actuator)
    {
        var count = actuator.Positions.Length;
        for (var i = 0; i < (actuator.IsEndless && count > 2 ? count : count - 1); i++)
        {
            var (from, to) = (actuator.Positions[i].Name, actuator.Positions[(i + 1) % count].Name);
            yield return (from, to, [.. wheel.Pole.Throws.Where(t => IsClosed(t, from) != IsClosed(t, to)).Select(t => t.Terminal)]);
        }
    }

    private static bool IsClosed(Throw way, string position) => way.When is PositionCondition at && at.Positions.Contains(position);
}
