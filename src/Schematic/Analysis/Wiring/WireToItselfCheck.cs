using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Wiring;

/// <summary>A wire whose two ends meet already, and two wires that do the same work.</summary>
public sealed class WireToItselfCheck : ICheck
{
    private const string SelfRule = "wire-to-itself";
    private const string DoubledRule = "doubled-wire";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [SelfRule, DoubledRule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Conflicts;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) => Idle(context).Concat(Doubled(context));

    private static IEnumerable<Diagnostic> Idle(AnalysisContext context)
    {
        foreach (var wire in context.Panel.Wires)
        {
            if (wire.From == wire.To)
            {
                yield return Report(wire, $"Both ends of wire {wire.Designator} are on {wire.From}.");
            }
            else if (context.Connectivity.Fixed.PathBetween(wire.From, wire.To) is { } path)
            {
                yield return Report(wire, $"Wire {wire.Designator} joins {wire.From} and {wire.To}, which are joined without it.")
                    with { Trace = [path.Step] };
            }
        }
    }

    private static Diagnostic Report(Wire wire, string message) => new(SelfRule, Severity.Error, message, wire.ToSpan)
    {
        Subjects = [About.Wire(wire), About.Terminal(wire.From), About.Terminal(wire.To)],
        Help = "Lead one end to the contact that was meant, or leave the wire out.",
    };

    private static IEnumerable<Diagnostic> Doubled(AnalysisContext context) =>
        from same in context.Panel.Wires.Where(w => w.From != w.To).GroupBy(w => w.From < w.To ? (w.From, w.To) : (w.To, w.From))
        let wires = same.ToImmutableArray()
        where wires.Length > 1
        select new Diagnostic(
            DoubledRule,
            Severity.Warning,
            $"Wires {NameList.Sentence(wires.Select(w => w.Designator))} run between the same two terminals, {same.Key.Item1} and {same.Key.Item2}.",
            wires[1].Span)
        {
            Subjects = [.. wires.Select(About.Wire)],
            Help = "Leave one out, or use one wire of a larger cross-section if the current asks for it.",
            Related = [new RelatedSpan(wires[0].Span, $"wire {wires[0].Designator}")],
        };
}
