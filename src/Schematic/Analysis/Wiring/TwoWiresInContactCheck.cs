using System.Collections.Immutable;
using System.Globalization;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Wiring;

/// <summary>
/// More wires on one terminal than it takes. One wire to a crimp contact is the rule of the trade, and so is one to a solder
/// cup or a spring clamp (common practice, no source). Three at any other terminal: MIL-R-19309D, 3.3.9.1, says no more than
/// three at one terminal of a relay. A terminal strip states its own number; a splice takes any.
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
    public IEnumerable<Diagnostic> Run(AnalysisContext context) =>
        from part in context.Panel.Parts
        from terminal in part.Terminals
        let wires = context.WiresAt(part.At(terminal.Name)).ToImmutableArray()
        where wires.Length > 1
        let finding = part is Connector connector
            ? OnContact(connector, part.At(terminal.Name), wires)
            : OnTerminal(part, part.At(terminal.Name), wires)
        where finding is not null
        select finding;

    private static Diagnostic? OnContact(Connector connector, TerminalId contact, ImmutableArray<Wire> wires) =>
        connector.Termination switch
        {
            Termination.Crimp => Report(
                ContactRule, Severity.Error, contact, wires, "a crimp contact takes one",
                "Join the wires in a splice or on a terminal strip and lead one wire to the contact."),
            Termination.Solder => Report(
                ContactRule, Severity.Warning, contact, wires, "a solder cup takes one well",
                "Join the wires in a splice or on a terminal strip and lead one wire to the contact."),
            Termination.Clamp => Report(
                ContactRule, Severity.Warning, contact, wires, "a spring clamp takes one",
                "Use a jumper, a splice or a twin ferrule that the clamp is made for."),
            Termination.Screw => wires.Length <= MostAtTerminal ? null : Report(
                ContactRule, Severity.Warning, contact, wires, "a screw takes three at most", "Spread the wires over jumpered terminals."),
            _ => Report(
                ContactRule, Severity.Warning, contact, wires, "a contact takes one",
                $"Join the wires in a splice, or state on {connector.Designator} how wires are fastened: solder, crimp, screw or clamp."),
        };

    private static Diagnostic? OnTerminal(Part part, TerminalId terminal, ImmutableArray<Wire> wires)
    {
        var most = part switch
        {
            Splice => int.MaxValue,
            TerminalStrip strip => strip.WiresPerTerminal,
            _ => MostAtTerminal,
        };
        if (wires.Length <= most) return null;
        var limit = part is TerminalStrip
            ? $"each terminal of {part.Designator} takes {most.ToString(CultureInfo.InvariantCulture)}"
            : "three at one terminal is the most";
        return Report(
            TerminalRule, Severity.Warning, terminal, wires, limit,
            "Spread the wires over jumpered terminals of a strip, or join some of them in a splice.");
    }

    private static Diagnostic Report(
        string rule, Severity severity, TerminalId terminal, ImmutableArray<Wire> wires, string limit, string help)
    {
        var last = wires[^1];
        return new Diagnostic(
            rule,
            severity,
            $"{wires.Length.ToString(CultureInfo.InvariantCulture)} wires end on {terminal} ({NameList.Sentence(wires.Select(w => w.Designator))}): {limit}.",
            last.From == terminal ? last.FromSpan : last.ToSpan)
        {
            Help = help,
            Related = [.. wires.SkipLast(1).Take(3).Select(w => new RelatedSpan(w.From == terminal ? w.FromSpan : w.ToSpan, $"wire {w.Designator} ends there too"))],
        };
    }
}
