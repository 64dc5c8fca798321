using Schematic.Model;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>The parts and their joints to the unit they sit in, while they are being collected.</summary>
internal sealed class PartList
{
    private readonly List<Part> _parts = [];
    private readonly List<Attachment> _attachments = [];

    public IReadOnlyList<Part> Parts => _parts;

    public IReadOnlyList<Attachment> Attachments => _attachments;

    public void Add(Part part) => _parts.Add(part);

    /// <summary>Puts another version of a part in its place.</summary>
    public void Replace(int index, Part part) => _parts[index] = part;

    /// <summary>Joins a terminal to the contact at an index of a list; where that contact is not known there is no joint.</summary>
    public void Attach(TerminalId device, List<(TerminalId? Terminal, SourceSpan Span)> contacts, int index)
    {
        if (index < contacts.Count && contacts[index].Terminal is { } contact)
            _attachments.Add(new Attachment(device, contact, contacts[index].Span));
    }
}
