using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Wiring;

/// <summary>
/// Contacts that nothing is on, and contacts of a made unit that the harness leaves open, unless they are declared spare. The
/// contacts of one connector are reported together: a forgotten list of spares is one cause.
/// </summary>
public sealed class FloatingContactCheck : ICheck
{
    private const string Rule = "floating-contact";
    private const string LaterRule = "not-wired-yet";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule, LaterRule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Gaps;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) =>
        ConnectorPair.Of(context).SelectMany(p => OfConnector(context, p))
            .Concat(context.Panel.Parts.OfType<TerminalStrip>().SelectMany(s => OfStrip(context, s)));

    private static IEnumerable<Diagnostic> OfConnector(AnalysisContext context, ConnectorPair pair)
    {
        var names = pair.Names.ToImmutableArray();
        if (!names.Any(n => pair.ContactsAt(n).Any(context.IsUsed))) yield break; // An unused connector has a rule of its own.
        var harnessComes = names.Any(n => pair.ContactsAt(n).Any(context.IsInHarness));
        var open = names.Where(n => !pair.IsSpare(n) && !pair.IsNotTraced(n)).ToLookup(n => OpennessOf(context, pair, n, harnessComes));

        var empty = open[Openness.Empty].ToImmutableArray();
        if (empty.Length > 0)
        {
            var list = NameList.Compact(empty);
            var (noun, verb) = empty.Length == 1 ? ("Contact", "has") : ("Contacts", "have");
            yield return Report(pair.Main, $"{noun} {list} of {pair.Main.Designator} {verb} nothing on {(empty.Length == 1 ? "it" : "them")}.", empty);
        }

        var left = open[Openness.Left].ToImmutableArray();
        if (left.Length > 0)
        {
            var devices = left.SelectMany(n => pair.ContactsAt(n).SelectMany(context.AttachmentsAt)).ToImmutableArray();
            var list = NameList.Compact(left);
            var (noun, verb) = left.Length == 1 ? ("Contact", "leads") : ("Contacts", "lead");
            var owners = NameList.Sentence(devices.Select(d => d.Device.Part).Distinct().Order(NaturalOrder.Comparer));
            yield return Report(
                pair.Main,
                $"{noun} {list} of {pair.Main.Designator} {verb} to {owners} inside the unit, and nothing outside is connected there.",
                left) with
            {
                // Most units are wired a contact at a time: what is not written yet is no fault.
                Rule = LaterRule,
                Severity = Severity.Note,
                Related = [new RelatedSpan(devices[0].Span, $"{devices[0].Device} is on {devices[0].Contact}")],
            };
        }
    }

    private static Openness OpennessOf(AnalysisContext context, ConnectorPair pair, string name, bool harnessComes)
    {
        if (pair.ContactsAt(name).Any(context.IsInHarness)) return Openness.Connected;
        var sidesWithDevice = pair.ContactsAt(name).Count(c => context.AttachmentsAt(c).Any());
        return sidesWithDevice switch
        {
            0 => Openness.Empty,
            1 when harnessComes => Openness.Left,
            _ => Openness.Connected,
        };
    }

    private static IEnumerable<Diagnostic> OfStrip(AnalysisContext context, TerminalStrip strip)
    {
        var jumpered = strip.Jumpers.SelectMany(j => j).ToHashSet(StringComparer.Ordinal);
        var names = strip.Terminals.Select(t => t.Name).ToImmutableArray();
        if (!names.Any(n => context.IsUsed(strip.At(n)))) yield break;
        var empty = names.Where(n => !jumpered.Contains(n) && !strip.Spares.Contains(n) && !strip.NotTraced.Contains(n) && !context.IsUsed(strip.At(n))).ToImmutableArray();
        if (empty.Length == 0) yield break;
        var list = NameList.Compact(empty);
        var (noun, verb) = empty.Length == 1 ? ("Terminal", "has") : ("Terminals", "have");
        yield return Report(strip, $"{noun} {list} of {strip.Designator} {verb} nothing on {(empty.Length == 1 ? "it" : "them")}.", empty);
    }

    private static Diagnostic Report(Part part, string message, ImmutableArray<string> contacts) =>
        new(Rule, Severity.Warning, message, part.Span)
        {
            Subjects = [.. contacts.Select(c => About.Terminal(part.At(c)))],
            Help = $"Connect {(contacts.Length == 1 ? "it" : "them")}, or write 'spare {NameList.Compact(contacts)}' in the block of {part.Designator} if {(contacts.Length == 1 ? "it is" : "they are")} left unused on purpose.",
        };

    private enum Openness
    {
        Connected,
        Empty,
        Left,
    }
}
