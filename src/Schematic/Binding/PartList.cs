using Schematic.Model;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>The parts and their joints to the unit they sit in, while they are being collected.</summary>
internal sealed class PartList
{
    private readonly List<Part> _parts = [];
    private readonly List<Attachment> _attachments = [];
    private readonly List<Action> _later = [];

    public IReadOnlyList<Part> Parts => _parts;

    public IReadOnlyList<Attachment> Attachments => _attachments;

    public void Add(Part part) => _parts.Add(part);

    /// <summary>Keeps the joints of a part for when all parts are known: a file may name a part before it declares it.</summary>
    public void AttachLater(Action attach) => _later.Add(attach);

    /// <summary>Makes the joints kept for later.</summary>
    public void AttachAll()
    {
        foreach (var attach in _later) attach();
    }

    /// <summary>Joins a terminal to the contact at an index of a list; where that contact is not known there is no joint.</summary>
    public void Attach(TerminalId device, List<(TerminalId? Terminal, SourceSpan Span)> contacts, int index)
    {
        if (index < contacts.Count && contacts[index].Terminal is { } contact)
            _attachments.Add(new Attachment(device, contact, contacts[index].Span));
    }
}
