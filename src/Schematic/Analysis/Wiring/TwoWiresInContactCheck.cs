using System.Collections.Immutable;
using System.Globalization;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Wiring;

/// <summary>
/// More wires on one terminal than it takes. One wire to a crimp contact is the rule of the trade, and so is one to a solder
/// cup or a spring clamp (common practice, no source). Three at any other terminal: MIL-R-19309D, 3.3.9.1, says no more than
/// three at one terminal of a relay. A terminal strip states its own number, else three as well; a splice takes any. Leads of
/// components, jumper bars and screens take the room of a wire.
/// </summary>
public sealed class TwoWiresInContactCheck : ICheck
{
    private const string ContactRule = "two-wires-in-contact";
    private const string TerminalRule = "crowded-terminal";
    private const int MostAtTerminal = 3;

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [ContactRule, TerminalRule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Conflicts;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var fastenings = new Fastenings(context);
        return from part in context.Panel.Parts
               from terminal in part.Terminals
               let all = fastenings.At(part.At(terminal.Name)).ToImmutableArray()
               where all.Length > 1
               let finding = part is Connector connector
                   ? OnContact(connector, part.At(terminal.Name), all)
                   : OnTerminal(part, part.At(terminal.Name), all)
               where finding is not null
               select finding;
    }

    private static Diagnostic? OnContact(Connector connector, TerminalId contact, ImmutableArray<Fastening> all) =>
        connector.Termination switch
        {
            Termination.Crimp => Report(
                ContactRule, Severity.Error, contact, all, "a crimp contact takes one",
                "Join the wires in a splice or on a terminal strip and lead one wire to the contact."),
            Termination.Solder => Report(
                ContactRule, Severity.Warning, contact, all, "a solder cup takes one well",
                "Join the wires in a splice or on a terminal strip and lead one wire to the contact."),
            Termination.Clamp => Report(
                ContactRule, Severity.Warning, contact, all, "a spring clamp takes one",
                "Use a jumper, a splice or a twin ferrule that the clamp is made for."),
            Termination.Screw => all.Length <= MostAtTerminal ? null : Report(
                ContactRule, Severity.Warning, contact, all, "a screw takes three at most", "Spread the wires over jumpered terminals."),
            _ => Report(
                ContactRule, Severity.Warning, contact, all, "a contact takes one",
                $"Join the wires in a splice, or state on {connector.Designator} how wires are fastened: solder, crimp, screw or clamp."),
        };

    private static Diagnostic? OnTerminal(Part part, TerminalId terminal, ImmutableArray<Fastening> all)
    {
        var most = part.WiresPerTerminal;
        if (all.Length <= most) return null;
        var limit = part is TerminalStrip
            ? $"each terminal of {part.Designator} takes {most.ToString(CultureInfo.InvariantCulture)}"
            : "three at one terminal is the most";
        return Report(
            TerminalRule, Severity.Warning, terminal, all, limit,
            "Spread the wires over jumpered terminals of a strip, or join some of them in a splice.");
    }

    private static Diagnostic Report(
        string rule, Severity severity, TerminalId terminal, ImmutableArray<Fastening> all, string limit, string help)
    {
        var last = all[^1];
        var areWires = all.All(f => f.Kind == FasteningKind.Wire);
        return new Diagnostic(
            rule,
            severity,
            $"{all.Length.ToString(CultureInfo.InvariantCulture)} {(areWires ? "wires end" : "things are fastened")} on {terminal} ({NameList.Sentence(all.Select(f => f.Words))}): {limit}.",
            last.Span)
        {
            Subjects = [About.Terminal(terminal), .. all.Select(f => f.Wire is { } wire ? About.Wire(wire) : f.Device is { } device ? About.Terminal(device) : null).OfType<Subject>()],
            Help = help,
            Related = [.. all.SkipLast(1).Take(3).Select(f => new RelatedSpan(f.Span, $"{(f.Kind == FasteningKind.Wire ? $"wire {f.Name} ends" : $"{f.Words} is fastened")} there too"))],
        };
    }
}
