using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Reports;

/// <summary>
/// Looks up what contacts are for: their net, the device that the unit's maker joined them to, the far end of their wire. A
/// contact that says nothing itself borrows net and device from the contact it mates.
/// </summary>
public sealed class ContactUses
{
    private readonly Dictionary<string, Part> _parts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _mates = new(StringComparer.Ordinal);
    private readonly ILookup<TerminalId, Wire> _wires;
    private readonly ILookup<TerminalId, string> _nets;
    private readonly ILookup<TerminalId, TerminalId> _devices;

    /// <summary>Indexes a panel.</summary>
    public ContactUses(Panel panel)
    {
        foreach (var part in panel.Parts) _parts.TryAdd(part.Designator, part);
        foreach (var half in panel.Parts.OfType<Connector>().Where(c => c.Mates is not null))
        {
            _mates.TryAdd(half.Designator, half.Mates!);
            _mates.TryAdd(half.Mates!, half.Designator);
        }

        _wires = panel.Wires
            .SelectMany(w => w.From == w.To ? [(w.From, w)] : new[] { (w.From, w), (w.To, w) })
            .ToLookup(p => p.Item1, p => p.w);
        _nets = panel.Nets
            .SelectMany(n => n.Members.Select(m => m.Terminal).Distinct().Select(t => (t, n.Name)))
            .ToLookup(p => p.t, p => p.Name);
        _devices = panel.Attachments.ToLookup(a => a.Contact, a => a.Device);
    }

    /// <summary>The uses of all contacts of <paramref name="connector"/>, in the insert's order.</summary>
    public ImmutableArray<ContactUse> Of(Connector connector) =>
        [.. connector.Insert.Contacts.Select(c => UseOf(connector, c.Name))];

    private ContactUse UseOf(Connector connector, string contact)
    {
        var here = connector.At(contact);
        return new ContactUse(contact, PurposeOf(here), [.. _wires[here]], IsSpare(connector, here))
        {
            IsNotTraced = connector.NotTraced.Contains(contact)
                || (_mates.TryGetValue(connector.Designator, out var mate) && (_parts.GetValueOrDefault(mate)?.NotTraced.Contains(contact) ?? false)),
        };
    }

    /// <summary>Spare here, or spare on the half it mates while nothing is known of it here.</summary>
    private bool IsSpare(Connector connector, TerminalId here) =>
        connector.Spares.Contains(here.Name)
        || (_mates.TryGetValue(connector.Designator, out var mate) && _parts.GetValueOrDefault(mate) is Connector other
            && other.Spares.Contains(here.Name) && !_wires.Contains(here) && !_devices.Contains(here) && !_nets.Contains(here));

    private string PurposeOf(TerminalId here)
    {
        TerminalId? there = _mates.TryGetValue(here.Part, out var mate) ? new TerminalId(mate, here.Name) : null;
        var nets = OwnOrMates(_nets, here, there);
        var devices = OwnOrMates(_devices, here, there).Select(DeviceWords).ToList();
        var net = string.Join(", ", nets.Distinct(StringComparer.Ordinal));
        if (devices.Count > 0) return net.Length > 0 ? $"{net}: {string.Join(", ", devices)}" : string.Join(", ", devices);
        if (net.Length > 0) return net;
        if (_wires.Contains(here)) return FarEnds(here);
        return there is { } mated && _wires.Contains(mated) ? $"{FarEnds(mated)} via {mated.Part}" : "";
    }

    private string FarEnds(TerminalId end) =>
        string.Join(", ", _wires[end].Select(w => $"to {(w.From == end ? w.To : w.From)}"));

    private static IEnumerable<T> OwnOrMates<T>(ILookup<TerminalId, T> facts, TerminalId here, TerminalId? there) =>
        facts.Contains(here) || there is null ? facts[here] : facts[there.Value];

    private string DeviceWords(TerminalId device)
    {
        var part = _parts.GetValueOrDefault(device.Part);
        var words = part?.ContactSets.Select(s => PoleWords(s, device.Name)) ?? [];
        var role = (part is Switch ? words.FirstOrDefault() : words.FirstOrDefault(w => w == "common")) ?? "";
        var name = part is Switch && role.Length > 0 ? device.Part : device.ToString();
        return string.Join(' ', new[] { name, role, part?.Description ?? "" }.Where(w => w.Length > 0));
    }

    private static string PoleWords(Pole pole, string terminal)
    {
        if (pole.Throws.Length > 1 && pole.Common == terminal) return "common";
        return pole.Throws.FirstOrDefault(t => t.Terminal == terminal)?.Label ?? "";
    }
}
