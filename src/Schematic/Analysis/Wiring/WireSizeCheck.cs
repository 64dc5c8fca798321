using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Analysis.Wiring;

/// <summary>
/// A wire outside the range of its contact's size. A thinner wire may be soldered into a larger contact, a thicker one into a
/// smaller is not recommended (a connector maker's selection guide for MIL-C-5015 types); a crimp holds inside its range only.
/// </summary>
public sealed class WireSizeCheck : ICheck
{
    private const string Rule = "wire-size";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Conflicts;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        foreach (var wire in context.Panel.Wires.Where(w => w.Gauge is not null))
        {
            foreach (var (end, span) in new[] { (wire.From, wire.FromSpan), (wire.To, wire.ToSpan) })
            {
                if (context.Part(end.Part) is Connector connector && Judge(wire, connector, end, span) is { } finding)
                    yield return finding;
            }
        }
    }

    private static Diagnostic? Judge(Wire wire, Connector connector, TerminalId contact, SourceSpan span)
    {
        if (connector.SizeOf(contact.Name) is not { } size || WireRange.Of(size, connector.Termination) is not { } range) return null;
        var isThick = range.IsTooThick(wire.Gauge!);
        if (!isThick && !range.IsTooThin(wire.Gauge!)) return null;
        var severity = isThick || connector.Termination != Termination.Solder ? Severity.Warning : Severity.Note;
        return new Diagnostic(
            Rule,
            severity,
            $"Wire {wire.Designator} is {wire.Gauge!.Text}, too {(isThick ? "thick" : "thin")} for {contact}: a size {size} contact usually takes {range.Text}.",
            span)
        {
            Subjects = [About.Wire(wire), About.Terminal(contact)],
            Help = isThick
                ? "Choose a thinner wire, a larger contact, or join a short thinner wire outside the connector; the part number of the contact decides."
                : severity == Severity.Note
                    ? "Solder holds a thin wire in a larger cup; support it with a sleeve."
                    : "Choose a thicker wire or a contact made for this one; the part number of the contact decides.",
            Related = [new RelatedSpan(connector.Span, $"{connector.Designator} is declared here")],
        };
    }
}
