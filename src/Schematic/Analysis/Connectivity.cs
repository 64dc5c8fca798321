using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Analysis;

/// <summary>
/// What is joined to what while nothing is switched: once by what is made and plugged together alone, once more with the
/// stated nets, once more with the wires. Comparing them tells whether the wires do what the nets say.
/// </summary>
public sealed class Connectivity
{
    private readonly ImmutableArray<TerminalId> _terminals;
    private readonly Lazy<ConductorGraph> _byNets;
    private readonly Lazy<ConductorGraph> _byWires;
    private readonly Lazy<ConductorGraph> _whole;

    /// <summary>Reads the joints of a panel.</summary>
    public Connectivity(Panel panel)
    {
        _terminals =
        [
            .. panel.Parts.SelectMany(p => p.Terminals.Select(t => p.At(t.Name))),
            .. panel.Nets.SelectMany(n => n.Members.Select(m => m.Terminal)),
            .. panel.Wires.SelectMany(w => new[] { w.From, w.To }),
        ];
        FixedJoints = [.. Attachments(panel), .. Mates(panel), .. Jumpers(panel), .. Bars(panel), .. BoardGrounds(panel)];
        NetJoints = [.. panel.Nets.SelectMany(JointsOf)];
        WireJoints = [.. panel.Wires.Select(JointOf)];
        Fixed = new ConductorGraph(_terminals, FixedJoints);
        _byNets = new Lazy<ConductorGraph>(() => new ConductorGraph(_terminals, [.. FixedJoints, .. NetJoints]));
        _byWires = new Lazy<ConductorGraph>(() => new ConductorGraph(_terminals, [.. FixedJoints, .. WireJoints]));
        _whole = new Lazy<ConductorGraph>(
            () => new ConductorGraph(_terminals, [.. FixedJoints, .. WireJoints, .. NetJoints]));
    }

    /// <summary>Joints that are neither net nor wire: attachments, mates, jumpers, board grounds.</summary>
    public ImmutableArray<Joint> FixedJoints { get; }

    /// <summary>The stated nets, each as a star from its first member.</summary>
    public ImmutableArray<Joint> NetJoints { get; }

    /// <summary>Wires and cable cores.</summary>
    public ImmutableArray<Joint> WireJoints { get; }

    /// <summary>What is made and plugged together alone.</summary>
    public ConductorGraph Fixed { get; }

    /// <summary>As the nets say.</summary>
    public ConductorGraph ByNets => _byNets.Value;

    /// <summary>As the wires do.</summary>
    public ConductorGraph ByWires => _byWires.Value;

    /// <summary>
    /// Nets and wires together: what a builder ends up with who makes every net and fits every wire. Paths prefer wires.
    /// </summary>
    public ConductorGraph Whole => _whole.Value;

    /// <summary>The joint that a wire makes.</summary>
    public static Joint JointOf(Wire wire) => new(wire.From, wire.To, JointKind.Wire, wire.Designator, wire.Span);

    private static IEnumerable<Joint> Attachments(Panel panel) =>
        panel.Attachments.Select(a => new Joint(a.Device, a.Contact, JointKind.Attachment, "", a.Span));

    private static IEnumerable<Joint> Mates(Panel panel)
    {
        var done = new HashSet<(string, string)>();
        var connectors = new Dictionary<string, Connector>(StringComparer.Ordinal);
        foreach (var connector in panel.Parts.OfType<Connector>()) connectors.TryAdd(connector.Designator, connector);
        foreach (var half in connectors.Values.Where(c => c.Mates is not null))
        {
            if (!connectors.TryGetValue(half.Mates!, out var other) || other == half) continue;
            if (!done.Add((half.Designator, other.Designator)) || done.Contains((other.Designator, half.Designator))) continue;
            var names = other.Terminals.Select(t => t.Name).ToHashSet(StringComparer.Ordinal);
            foreach (var terminal in half.Terminals.Where(t => names.Contains(t.Name)))
                yield return new Joint(half.At(terminal.Name), other.At(terminal.Name), JointKind.Mate, "", half.Span);
        }
    }

    private static IEnumerable<Joint> Jumpers(Panel panel) =>
        from strip in panel.Parts.OfType<TerminalStrip>()
        from bar in strip.Jumpers
        from name in bar.Skip(1)
        select new Joint(strip.At(bar[0]), strip.At(name), JointKind.Jumper, strip.Designator, strip.Span);

    private static IEnumerable<Joint> Bars(Panel panel) =>
        from device in panel.Parts.OfType<Device>()
        from bar in device.Bars
        select new Joint(device.At(bar.From), device.At(bar.To), JointKind.Jumper, device.Designator, device.Span);

    private static IEnumerable<Joint> BoardGrounds(Panel panel) =>
        from board in panel.Parts.OfType<Board>()
        from name in board.Grounds.Skip(1)
        select new Joint(board.At(board.Grounds[0]), board.At(name), JointKind.BoardGround, board.Designator, board.Span);

    private static IEnumerable<Joint> JointsOf(Net net) =>
        net.Members.Skip(1).Select(m => new Joint(net.Members[0].Terminal, m.Terminal, JointKind.Net, net.Name, m.Span));
}
