using Schematic.Inserts;
using Schematic.Model;

namespace Schematic.Bench.Faults;

/// <summary>Which contacts stand beside each other on a connector's face or a terminal strip.</summary>
internal sealed class FaceNeighbours
{
    /// <summary>Contacts up to this many times the least distance apart are neighbours (own choice).</summary>
    private const double Reach = 1.35;

    private readonly Dictionary<TerminalId, ContactPosition> _place = [];
    private readonly Dictionary<string, double> _pitch = new(StringComparer.Ordinal);
    private readonly Dictionary<TerminalId, int> _order = [];

    public FaceNeighbours(BenchCircuit circuit)
    {
        foreach (var part in circuit.Panel.Parts)
        {
            if (part is Connector connector) Add(connector);
            else for (var i = 0; i < part.Terminals.Length; i++) _order[part.At(part.Terminals[i].Name)] = i;
        }
    }

    public bool AreNeighbours(TerminalId one, TerminalId other)
    {
        if (one.Part != other.Part) return false;
        if (_place.TryGetValue(one, out var here) && _place.TryGetValue(other, out var there))
            return here.DistanceTo(there) <= _pitch[one.Part] * Reach;
        return _order.TryGetValue(one, out var i) && _order.TryGetValue(other, out var j) && Math.Abs(i - j) == 1;
    }

    private void Add(Connector connector)
    {
        var contacts = connector.Insert.Contacts;
        foreach (var contact in contacts) _place[connector.At(contact.Name)] = contact;
        var least = double.PositiveInfinity;
        for (var i = 0; i < contacts.Length; i++)
            for (var j = i + 1; j < contacts.Length; j++) least = Math.Min(least, contacts[i].DistanceTo(contacts[j]));
        _pitch[connector.Designator] = least;
    }
}
