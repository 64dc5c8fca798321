using System.Collections.Immutable;
using Schematic.Analysis.Circuits;
using Schematic.Model;

namespace Schematic.Analysis.Loads;

/// <summary>
/// The wires that a short could load through a fuse, a breaker or a supply's plus: all that is reached from there over wires,
/// mated contacts and switching contacts in any position, but not through loads, other protectors or supplies.
/// </summary>
internal sealed class GuardedWires
{
    private readonly ILookup<TerminalId, (TerminalId Other, string? Wire)> _steps;
    private readonly HashSet<TerminalId> _supplyEnds;
    private readonly Dictionary<Part, ImmutableHashSet<string>> _behind = new(ReferenceEqualityComparer.Instance);

    public GuardedWires(AnalysisContext context, Circuit circuit)
    {
        var joints = context.Connectivity.Whole.Joints
            .Select(j => (j.From, j.To, Wire: j.Kind == JointKind.Wire ? j.Name : null))
            .Concat(circuit.Contacts.Where(c => !c.IsInside).Select(c => (From: c.Common, To: c.Throw, Wire: (string?)null)));
        _steps = joints.SelectMany(j => new[] { (At: j.From, Other: j.To, j.Wire), (At: j.To, Other: j.From, j.Wire) })
            .ToLookup(s => s.At, s => (s.Other, s.Wire));
        _supplyEnds = [.. circuit.Supplies.SelectMany(s => new[] { s.From, s.To })];
    }

    /// <summary>The wires behind a protector: those of the side that does not lead to a supply; both sides where that is not one.</summary>
    public ImmutableHashSet<string> Behind(Part protector)
    {
        if (!_behind.TryGetValue(protector, out var wires)) _behind[protector] = wires = Find(protector);
        return wires;
    }

    /// <summary>The wires that one protector for a whole supply would have to guard: to the next protectors, and behind each.</summary>
    public IReadOnlySet<string> OfWholeFeed(Element supply, IEnumerable<Part> protectors)
    {
        var wires = Of(supply).ToHashSet(StringComparer.Ordinal);
        foreach (var protector in protectors) wires.UnionWith(Behind(protector));
        return wires;
    }

    private ImmutableHashSet<string> Find(Part protector)
    {
        var one = From(protector.At(protector.Terminals[0].Name));
        var other = From(protector.At(protector.Terminals[1].Name));
        if (one.MeetsSupply != other.MeetsSupply) return one.MeetsSupply ? other.Wires : one.Wires;
        return one.Wires.Union(other.Wires);
    }

    /// <summary>The wires between a supply's plus and the next protectors or loads.</summary>
    public ImmutableHashSet<string> Of(Element supply) => From(supply.From).Wires;

    private (ImmutableHashSet<string> Wires, bool MeetsSupply) From(TerminalId start)
    {
        var wires = ImmutableHashSet.CreateBuilder<string>(StringComparer.Ordinal);
        var seen = new HashSet<TerminalId> { start };
        var waiting = new Queue<TerminalId>(seen);
        var meetsSupply = false;
        while (waiting.TryDequeue(out var at))
        {
            if (_supplyEnds.Contains(at) && at != start)
            {
                meetsSupply = true;
                continue;
            }

            foreach (var (other, wire) in _steps[at])
            {
                if (wire is not null) wires.Add(wire);
                if (seen.Add(other)) waiting.Enqueue(other);
            }
        }

        return (wires.ToImmutable(), meetsSupply);
    }
}
