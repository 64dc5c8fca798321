using System.Collections.Frozen;
using Schematic.Model;

namespace Schematic.Analysis;

/// <summary>
/// A panel together with the results that several checks need; each is computed once, when first asked for. The context is
/// for one run on one thread.
/// </summary>
public sealed class AnalysisContext
{
    private readonly Lazy<FrozenDictionary<string, Part>> _parts;
    private readonly Lazy<Connectivity> _connectivity;
    private readonly Lazy<ILookup<TerminalId, Wire>> _wiresAt;
    private readonly Lazy<ILookup<TerminalId, Net>> _netsAt;
    private readonly Lazy<ILookup<TerminalId, Attachment>> _attachmentsAt;

    /// <summary>Prepares the analysis of <paramref name="panel"/>.</summary>
    public AnalysisContext(Panel panel)
    {
        Panel = panel;
        _parts = new(() => panel.Parts.DistinctBy(p => p.Designator).ToFrozenDictionary(p => p.Designator, StringComparer.Ordinal));
        _connectivity = new(() => new Connectivity(panel));
        _wiresAt = new(() => panel.Wires
            .SelectMany(w => w.From == w.To ? new[] { (w.From, Wire: w) } : [(w.From, w), (w.To, w)])
            .ToLookup(p => p.From, p => p.Wire));
        _netsAt = new(() => panel.Nets
            .SelectMany(n => n.Members.Select(m => m.Terminal).Distinct().Select(t => (Terminal: t, Net: n)))
            .ToLookup(p => p.Terminal, p => p.Net));
        _attachmentsAt = new(() => panel.Attachments.ToLookup(a => a.Contact));
    }

    /// <summary>What is analysed.</summary>
    public Panel Panel { get; }

    /// <summary>What is joined to what while nothing is switched.</summary>
    public Connectivity Connectivity => _connectivity.Value;

    /// <summary>The part with that designator, or null.</summary>
    public Part? Part(string designator) => _parts.Value.GetValueOrDefault(designator);

    /// <summary>The wires that end on a terminal; a wire with both ends there counts once.</summary>
    public IEnumerable<Wire> WiresAt(TerminalId terminal) => _wiresAt.Value[terminal];

    /// <summary>The nets that name a terminal.</summary>
    public IEnumerable<Net> NetsAt(TerminalId terminal) => _netsAt.Value[terminal];

    /// <summary>What the made unit has on a contact.</summary>
    public IEnumerable<Attachment> AttachmentsAt(TerminalId contact) => _attachmentsAt.Value[contact];
}
