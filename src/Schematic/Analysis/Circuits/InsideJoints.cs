using System.Collections.Immutable;
using System.Globalization;
using Schematic.Model;

namespace Schematic.Analysis.Circuits;

/// <summary>
/// Parts of which an element is there only while they stand in one way, or while a condition holds: a resistance that varies is a
/// selector switch with a resistor in each of its ways. The switch gets a contact for each of them, and between contact and element
/// there is a terminal inside the part that nobody can reach. The proof and the worst cases then treat it as any switch.
/// </summary>
internal sealed class InsideJoints
{
    private readonly Func<TerminalId, int> _nodeOf;
    private readonly Dictionary<TerminalId, int> _terminals = [];
    private readonly int _nodes;

    /// <summary>Takes the elements of a panel apart.</summary>
    /// <param name="read">The elements as the parts give them.</param>
    /// <param name="nodeOf">The node of a terminal.</param>
    /// <param name="nodes">How many nodes there are without the inner ones.</param>
    public InsideJoints(IEnumerable<Element> read, Func<TerminalId, int> nodeOf, int nodes)
    {
        (_nodeOf, _nodes) = (nodeOf, nodes);
        var (elements, contacts) = (ImmutableArray.CreateBuilder<Element>(), ImmutableArray.CreateBuilder<Contact>());
        foreach (var element in read)
        {
            if (element is { Way: null, Gate: null })
            {
                elements.Add(element);
                continue;
            }

            // No resistance at all is a joint: a wiper at the end of its track.
            var inner = element.Ohms != 0 ? Inner(element.Part) : element.To;
            contacts.Add(Joint(element, inner));
            if (element.Ohms != 0) elements.Add(element with { From = inner, FromNode = nodeOf(inner) is >= 0 and var node ? node : _terminals[inner] });
        }

        (Elements, Contacts) = (elements.ToImmutable(), contacts.ToImmutable());
    }

    /// <summary>The elements, those that are not always there behind their contacts.</summary>
    public ImmutableArray<Element> Elements { get; }

    /// <summary>The contacts inside parts.</summary>
    public ImmutableArray<Contact> Contacts { get; }

    /// <summary>The terminals inside parts with their nodes.</summary>
    public IReadOnlyDictionary<TerminalId, int> Terminals => _terminals;

    private TerminalId Inner(Part part)
    {
        var inner = part.At("~" + _terminals.Count.ToString(CultureInfo.InvariantCulture));
        _terminals.Add(inner, _nodes + _terminals.Count);
        return inner;
    }

    private Contact Joint(Element element, TerminalId to) =>
        new(0, element.Part, element.Outer, to, "", element.Gate ?? new AllCondition([], element.Part.Span), element.Part.Span)
        {
            CommonNode = _nodeOf(element.Outer),
            ThrowNode = _terminals.TryGetValue(to, out var node) ? node : _nodeOf(to),
            Way = element.Way,
            IsInside = true,
        };
}
