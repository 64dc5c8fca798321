using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Wiring;

/// <summary>
/// What is not traced yet: one note for each connector or strip, however many contacts it has, and one for all devices whose
/// contacts are not known. It stops nothing; it keeps the list of what is left to measure in sight.
/// </summary>
public sealed class NotTracedCheck : ICheck
{
    private const string Rule = "not-traced";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Gaps;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var open = context.Panel.Parts.Where(p => !p.NotTraced.IsEmpty).ToLookup(p => p is Connector or TerminalStrip);
        return open[true].Select(OfContacts).Concat(OfDevices([.. open[false].Where(p => p is not FarEnd)]))
            .Concat(OfWires([.. open[false].OfType<FarEnd>()])).Concat(OfPositions([.. context.Panel.Parts.OfType<Switch>().Where(s => s.Pole.Throws.Any(t => t.When is UntracedCondition))]));
    }

    private static Diagnostic OfContacts(Part part)
    {
        var noun = part is Connector ? "Contact" : "Terminal";
        var (plural, verb) = part.NotTraced.Count == 1 ? ("", "is") : ("s", "are");
        return new Diagnostic(
            Rule, Severity.Note, $"{noun}{plural} {NameList.Compact(part.NotTraced)} of {part.Designator} {verb} not traced yet.", part.Span)
        {
            Subjects = [.. part.Terminals.Where(t => part.NotTraced.Contains(t.Name)).Select(t => About.Terminal(part.At(t.Name)))],
            Help = "When a meter has told what is on a contact, add the line that says it; 'not-traced rest' then shrinks by itself.",
        };
    }

    private static IEnumerable<Diagnostic> OfWires(ImmutableArray<FarEnd> ends)
    {
        if (ends.IsEmpty) yield break;
        yield return new Diagnostic(
            Rule, Severity.Note,
            $"Where the far {(ends.Length == 1 ? "end of wire" : "ends of wires")} {NameList.Sentence(ends.Select(e => e.Designator))} {(ends.Length == 1 ? "leads" : "lead")} is not traced yet.", ends[0].Span)
        {
            Subjects = [.. ends.Select(e => About.Terminal(e.At(FarEnd.TerminalName)))],
            Help = "Put the terminal in the place of the question mark when a meter has told it.",
        };
    }

    private static IEnumerable<Diagnostic> OfPositions(ImmutableArray<Switch> switches)
    {
        if (switches.IsEmpty) yield break;
        yield return new Diagnostic(
            Rule, Severity.Note, $"In which positions {NameList.Sentence(switches.Select(s => s.Designator))} {(switches.Length == 1 ? "is" : "are")} closed is not traced yet.", switches[0].Span)
        {
            Subjects = [.. switches.Select(About.Part)],
            Help = "Put the positions in the place of the question mark when a meter has told them.",
        };
    }

    private static IEnumerable<Diagnostic> OfDevices(ImmutableArray<Part> devices)
    {
        if (devices.IsEmpty) yield break;
        var ends = devices.Sum(d => d.NotTraced.Count);
        var (noun, verb) = ends == 1 ? ("terminal", "leads") : ("terminals", "lead");
        yield return new Diagnostic(
            Rule,
            Severity.Note,
            $"To which contact {ends.ToString(System.Globalization.CultureInfo.InvariantCulture)} {noun} of {NameList.Sentence(devices.Select(d => d.Designator))} {verb} is not traced yet.",
            devices[0].Span)
        {
            Subjects = [.. devices.SelectMany(d => d.Terminals.Where(t => d.NotTraced.Contains(t.Name)).Select(t => About.Terminal(d.At(t.Name))))],
            Help = "Put the contact in the place of the question mark when a meter has told it.",
            Related = [.. devices.DistinctBy(d => d.Span).Skip(1).Take(3).Select(d => new RelatedSpan(d.Span, $"{d.Designator} is declared here"))],
        };
    }
}
