using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>The parts and their joints to the unit they sit in, while they are being collected.</summary>
internal sealed class PartList
{
    private readonly List<Part> _parts = [];
    private readonly List<Attachment> _attachments = [];
    private readonly List<Action> _later = [];
    private readonly Dictionary<string, ImmutableHashSet<string>.Builder> _notTraced = new(StringComparer.Ordinal);

    /// <summary>The parts in the order of the file; those not traced are known only when the joints are made.</summary>
    public IEnumerable<Part> Parts => _parts.Select(p => _notTraced.TryGetValue(p.Designator, out var open)
        ? p with { NotTraced = open.ToImmutable() }
        : p);

    public IReadOnlyList<Attachment> Attachments => _attachments;

    public void Add(Part part) => _parts.Add(part);

    /// <summary>Keeps the joints of a part for when all parts are known: a file may name a part before it declares it.</summary>
    public void AttachLater(Action attach) => _later.Add(attach);

    /// <summary>Completes a part when all are known.</summary>
    public void CompleteLater<T>(T part, Func<T, Part> complete) where T : Part
    {
        var place = _parts.Count - 1;
        _later.Add(() => _parts[place] = complete((T)_parts[place]));
    }

    /// <summary>Makes the joints kept for later.</summary>
    public void AttachAll()
    {
        foreach (var attach in _later) attach();
    }

    /// <summary>Joins a terminal to the contact at an index of a list; where that contact is not known there is no joint.</summary>
    public void Attach(TerminalId device, List<BoundTerminal> contacts, int index)
    {
        if (index >= contacts.Count) return;
        if (contacts[index].Terminal is { } contact) _attachments.Add(new Attachment(device, contact, contacts[index].Span));
        if (!contacts[index].IsNotTraced) return;
        if (!_notTraced.TryGetValue(device.Part, out var open))
            _notTraced.Add(device.Part, open = ImmutableHashSet.CreateBuilder<string>(StringComparer.Ordinal));
        open.Add(device.Name);
    }
}
