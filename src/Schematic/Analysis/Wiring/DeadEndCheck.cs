using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Analysis.Wiring;

/// <summary>A wire or net that ends on a contact behind which nothing is, or on a splice that leads nowhere.</summary>
public sealed class DeadEndCheck : ICheck
{
    private const string Rule = "dead-end";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Gaps;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        foreach (var pair in ConnectorPair.Of(context).Where(p => p.Halves.Any(h => IsDescribed(context, h))))
        {
            foreach (var name in pair.Names.Where(n => !pair.IsSpare(n) && !pair.IsNotTraced(n)))
            {
                var contacts = pair.ContactsAt(name).ToImmutableArray();
                if (contacts.Any(c => context.AttachmentsAt(c).Any()) || !contacts.Any(context.IsInHarness)) continue;
                if (contacts.Count(context.IsInHarness) > 1) continue; // The harness goes on at the other half.
                var (what, subject, span) = UserOf(context, contacts.First(context.IsInHarness));
                yield return new Diagnostic(
                    Rule,
                    Severity.Warning,
                    $"{what} leads to {contacts.First(context.IsInHarness)}, and nothing is connected to that contact inside the unit.",
                    span)
                {
                    Subjects = [subject, About.Terminal(contacts.First(context.IsInHarness))],
                    Help = "Look at the number again: the contact meant may be a neighbour. If the unit's inside is not known yet, say what is on the contact when you have found it.",
                    Related = [new RelatedSpan(pair.Main.Span, $"{pair.Main.Designator} is declared here")],
                };
            }
        }

        foreach (var splice in context.Panel.Parts.OfType<Splice>())
        {
            var at = splice.At(splice.Terminals[0].Name);
            var wires = context.WiresAt(at).ToImmutableArray();
            if (wires.Length != 1 || context.NetsAt(at).Any()) continue;
            yield return new Diagnostic(
                Rule, Severity.Warning, $"Wire {wires[0].Designator} ends in splice {splice.Designator}, and no other wire does.", wires[0].Span)
            {
                Subjects = [About.Wire(wires[0]), About.Part(splice)],
                Help = "Add the other wires of the splice, or lead the wire to its end.",
                Related = [new RelatedSpan(splice.Span, $"{splice.Designator} is declared here")],
            };
        }
    }

    private static bool IsDescribed(AnalysisContext context, Connector half) =>
        half.Terminals.Any(t => context.AttachmentsAt(half.At(t.Name)).Any());

    private static (string What, Subject Subject, SourceSpan Span) UserOf(AnalysisContext context, TerminalId contact)
    {
        if (context.WiresAt(contact).FirstOrDefault() is { } wire)
            return ($"Wire {wire.Designator}", About.Wire(wire), wire.From == contact ? wire.FromSpan : wire.ToSpan);
        if (context.NetsAt(contact).FirstOrDefault() is { } net)
            return ($"Net {net.Name}", About.Net(net), net.Members.First(m => m.Terminal == contact).Span);
        var cable = context.Panel.Cables.First(c => c.ScreenTerminal == contact);
        return ($"The screen of cable {cable.Designator}", About.Cable(cable), cable.Span);
    }
}
