using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Wiring;

/// <summary>Things that are declared and that nothing uses: parts, actuators, cores and screens of cables.</summary>
public sealed class UnusedCheck : ICheck
{
    private const string PartRule = "unused-part";
    private const string ActuatorRule = "unused-actuator";
    private const string CoreRule = "unused-core";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [PartRule, ActuatorRule, CoreRule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Gaps;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) =>
        Parts(context).Concat(Actuators(context.Panel)).Concat(context.Panel.Cables.SelectMany(c => Cores(context.Panel, c)));

    private static IEnumerable<Diagnostic> Parts(AnalysisContext context)
    {
        var mates = context.Panel.Parts.OfType<Connector>().Where(c => c.Mates is not null)
            .SelectMany(c => new[] { c.Designator, c.Mates! }).ToHashSet(StringComparer.Ordinal);
        return
            from part in context.Panel.Parts
            where !part.Terminals.Any(t => context.IsUsed(part.At(t.Name)))
                && !mates.Contains(part.Designator) && !IsAllSpare(part) && part.NotTraced.IsEmpty
            select new Diagnostic(PartRule, Severity.Warning, $"Nothing is connected to {part.Designator}.", part.Span)
            {
                Subjects = [About.Part(part)],
                Help = "Connect it, or leave it out.",
            };
    }

    private static bool IsAllSpare(Part part) => part.Terminals.All(t => part.Spares.Contains(t.Name)) && !part.Spares.IsEmpty;

    private static IEnumerable<Diagnostic> Actuators(Panel panel)
    {
        var used = panel.Parts.OfType<Switch>().Select(s => s.Actuator)
            .Concat(panel.Parts.OfType<Device>().SelectMany(d => d.Contacts).SelectMany(c => c.Throws).SelectMany(t => t.When.Leaves()).OfType<PositionCondition>().Select(p => p.Actuator))
            .Concat(panel.Actuators.Where(a => a.Keypad is not null).Select(a => a.Name))
            .Concat(panel.Locks.SelectMany(l => l.Release.Leaves().OfType<PositionCondition>().Select(c => c.Actuator).Append(l.Actuator)))
            .ToHashSet(StringComparer.Ordinal);
        return
            from actuator in panel.Actuators
            where !used.Contains(actuator.Name)
            select new Diagnostic(ActuatorRule, Severity.Warning, $"Actuator {actuator.Name} moves no contact and no lock.", actuator.Span)
            {
                Subjects = [About.Actuator(actuator.Name)],
                Help = "Name it in a switch, in poles or in a lock, or leave it out.",
            };
    }

    private static IEnumerable<Diagnostic> Cores(Panel panel, Cable cable)
    {
        var wired = panel.Wires.Where(w => w.Cable == cable.Designator).Select(w => w.Core).ToHashSet(StringComparer.Ordinal);
        var open = cable.Cores.Where(c => !wired.Contains(c)).ToImmutableArray();
        if (open.Length > 0)
        {
            var verb = open.Length == 1 ? "Core" : "Cores";
            yield return new Diagnostic(
                CoreRule, Severity.Note, $"{verb} {NameList.Compact(open)} of cable {cable.Designator} {(open.Length == 1 ? "is" : "are")} not connected.", cable.Span)
            {
                Subjects = [About.Cable(cable)],
                Help = "Insulate unused cores at both ends, or connect them.",
            };
        }

        if (cable.HasScreen && cable.Screen is null && cable.ScreenTerminal is null)
        {
            yield return new Diagnostic(CoreRule, Severity.Note, $"The screen of cable {cable.Designator} is not connected.", cable.Span)
            {
                Subjects = [About.Cable(cable)],
                Help = "Join it to ground at one end, where the source of the signal is.",
            };
        }
    }
}
