using Schematic.Analysis.Loads;
using Schematic.Analysis.Positions;
using Schematic.Model;

namespace Schematic.Analysis;

/// <summary>
/// A panel together with the results that several checks need; each is computed once, when first asked for. The context is
/// for one run on one thread.
/// </summary>
public sealed class AnalysisContext
{
    private readonly Lazy<Dictionary<string, Part>> _parts;
    private readonly Lazy<Connectivity> _connectivity;
    private readonly Lazy<PositionProof> _positions;
    private readonly Lazy<WeakLoads> _weak;
    private readonly Lazy<WorstCases> _worst;
    private readonly Lazy<Assumptions> _assumptions;
    private readonly Lazy<ILookup<TerminalId, Wire>> _wiresAt;
    private readonly Lazy<ILookup<TerminalId, Net>> _netsAt;
    private readonly Lazy<ILookup<TerminalId, Attachment>> _attachmentsAt;
    private readonly Lazy<ILookup<TerminalId, Attachment>> _attachmentsOf;
    private readonly Lazy<ILookup<TerminalId, TerminalId>> _matesOf;
    private readonly Lazy<NetComparison> _nets;
    private readonly Lazy<AnalysisContext> _sized;

    /// <summary>Prepares the analysis of <paramref name="panel"/>.</summary>
    public AnalysisContext(Panel panel)
        : this(panel, null)
    {
    }

    private AnalysisContext(Panel panel, Lazy<PositionProof>? positions)
    {
        Panel = panel;
        _parts = new(() => panel.Parts.DistinctBy(p => p.Designator).ToDictionary(p => p.Designator, StringComparer.Ordinal));
        _connectivity = new(() => new Connectivity(panel));
        _positions = positions ?? new(() => new PositionProof(this));
        _weak = new(() => new WeakLoads(Positions));
        _worst = new(() => WorstCaseFinder.Find(this, Positions.States));
        _assumptions = new(() => new Assumptions(panel));
        _wiresAt = new(() => panel.Wires
            .SelectMany(w => w.From == w.To ? new[] { (w.From, Wire: w) } : [(w.From, w), (w.To, w)])
            .ToLookup(p => p.From, p => p.Wire));
        _netsAt = new(() => panel.Nets
            .SelectMany(n => n.Members.Select(m => m.Terminal).Distinct().Select(t => (Terminal: t, Net: n)))
            .ToLookup(p => p.Terminal, p => p.Net));
        _attachmentsAt = new(() => panel.Attachments.ToLookup(a => a.Contact));
        _attachmentsOf = new(() => panel.Attachments.ToLookup(a => a.Device));
        _matesOf = new(() => Connectivity.FixedJoints.Where(j => j.Kind == JointKind.Mate)
            .SelectMany(j => new[] { (j.From, j.To), (From: j.To, To: j.From) })
            .ToLookup(p => p.From, p => p.To));
        _nets = new(() => new NetComparison(this));
        _sized = new(() => panel.Wires.All(w => w.Gauge is not null)
            ? this
            : new AnalysisContext(panel with { Wires = [.. Worst.Wires.Select(w => w.Wire)] }, _positions));
    }

    /// <summary>What is analysed.</summary>
    public Panel Panel { get; }

    /// <summary>Stops the work when nobody waits for its result any more; the context is then of no use.</summary>
    public CancellationToken Cancelled { get; init; }

    /// <summary>What is joined to what while nothing is switched.</summary>
    public Connectivity Connectivity => _connectivity.Value;

    /// <summary>The panel in every position that can be reached.</summary>
    public PositionProof Positions => _positions.Value;

    /// <summary>The loads that are fed and can never work, with what follows.</summary>
    public WeakLoads Weak => _weak.Value;

    /// <summary>Currents, voltages and drops, the worst over all positions; wires without a gauge are given one.</summary>
    public WorstCases Worst => _worst.Value;

    /// <summary>What the program assumes where the panel states nothing.</summary>
    public Assumptions Assumptions => _assumptions.Value;

    /// <summary>
    /// The same panel with a gauge on every wire for which one could be chosen: what lists are made from. Itself when the file
    /// states every gauge. The proof is the same: it reckons with the gauge that is chosen.
    /// </summary>
    public AnalysisContext Sized => _sized.Value;

    /// <summary>How the wires and the made joints agree with the stated nets.</summary>
    public NetComparison Nets => _nets.Value;

    /// <summary>The part with that designator, or null.</summary>
    public Part? Part(string designator) => _parts.Value.GetValueOrDefault(designator);

    /// <summary>The wires that end on a terminal; a wire with both ends there counts once.</summary>
    public IEnumerable<Wire> WiresAt(TerminalId terminal) => _wiresAt.Value[terminal];

    /// <summary>The nets that name a terminal.</summary>
    public IEnumerable<Net> NetsAt(TerminalId terminal) => _netsAt.Value[terminal];

    /// <summary>What the made unit has on a contact.</summary>
    public IEnumerable<Attachment> AttachmentsAt(TerminalId contact) => _attachmentsAt.Value[contact];

    /// <summary>The contacts that a device's terminal is led to inside its unit.</summary>
    public IEnumerable<Attachment> AttachmentsOf(TerminalId device) => _attachmentsOf.Value[device];

    /// <summary>The contacts that meet this one in mated connectors; one, unless the mating is wrong.</summary>
    public IEnumerable<TerminalId> MatesOf(TerminalId contact) => _matesOf.Value[contact];

    /// <summary>Whether a wire or a screen ends on the terminal or a net names it: whether the harness reaches it.</summary>
    public bool IsInHarness(TerminalId terminal) =>
        WiresAt(terminal).Any() || NetsAt(terminal).Any() || Panel.Cables.Any(c => c.ScreenTerminal == terminal);

    /// <summary>Whether anything at all is on the terminal: harness or inside wiring.</summary>
    public bool IsUsed(TerminalId terminal) =>
        IsInHarness(terminal) || AttachmentsAt(terminal).Any() || AttachmentsOf(terminal).Any();
}
