using Schematic.Model;

namespace Schematic.Analysis.Wiring;

/// <summary>
/// Everything that is fastened at the terminals of the harness: wires, leads of components, jumper bars, screens. A joint inside a
/// unit that was found made is none: nobody makes it again. So it is where both the device and the contact are on hand, and on a
/// connector that does not state what it mates, which is the unit's own half.
/// </summary>
public sealed class Fastenings
{
    private readonly ILookup<TerminalId, Fastening> _at;

    /// <summary>Reads them from a panel.</summary>
    public Fastenings(AnalysisContext context)
    {
        var panel = context.Panel;
        _at = WireEnds(panel).Concat(Leads(context)).Concat(Bars(panel)).Concat(Screens(panel)).ToLookup(f => f.At);
    }

    /// <summary>What is fastened at a terminal: wires in natural order, then leads, bars and screens.</summary>
    public IEnumerable<Fastening> At(TerminalId terminal) => _at[terminal].OrderBy(f => f.Kind).ThenBy(f => f.Name, NaturalOrder.Comparer);

    private static IEnumerable<Fastening> WireEnds(Panel panel) =>
        from wire in panel.Wires
        from end in wire.From == wire.To ? new[] { (At: wire.From, Span: wire.FromSpan) } : [(wire.From, wire.FromSpan), (wire.To, wire.ToSpan)]
        select new Fastening(FasteningKind.Wire, end.At, wire.Designator, end.Span) { Wire = wire };

    private static IEnumerable<Fastening> Leads(AnalysisContext context) =>
        from joint in context.Panel.Attachments
        where context.Part(joint.Device.Part) is { } device && context.Part(joint.Contact.Part) is { } carrier
            && !(device.OnHand && carrier.OnHand)
            && carrier is not Connector { Mates: null }
        select new Fastening(FasteningKind.Lead, joint.Contact, joint.Device.ToString(), joint.Span) { Device = joint.Device };

    private static IEnumerable<Fastening> Bars(Panel panel) =>
        from strip in panel.Parts.OfType<TerminalStrip>()
        from bar in strip.Jumpers
        where bar.Length > 1
        from name in bar.Distinct()
        select new Fastening(FasteningKind.Jumper, strip.At(name), strip.At(bar[0]).ToString(), strip.Span);

    private static IEnumerable<Fastening> Screens(Panel panel) =>
        from cable in panel.Cables
        where cable.ScreenTerminal is not null
        select new Fastening(FasteningKind.Screen, cable.ScreenTerminal!.Value, cable.Designator, cable.Span);
}
