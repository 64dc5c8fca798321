using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>Turns terminal lists into terminals of known parts.</summary>
internal sealed class TerminalBinder(NameTable names, NameRanges ranges, BindingReporter report)
{
    /// <summary>
    /// The terminals of a list, ranges counted out, in order. What cannot be resolved is reported once. A contact that is not
    /// traced may stand where a device is joined to its unit, <paramref name="mayBeUnknown"/>, and nowhere else.
    /// </summary>
    public BoundTerminals Bind(Scope scope, IEnumerable<ContactSyntax> items, bool mayBeUnknown = false)
    {
        var found = new List<BoundTerminal>();
        var hasBrokenRange = false;
        WordSyntax? partName = null;
        Declared? part = null;
        foreach (var item in items)
        {
            var span = scope.At(item.Span);
            if (item.IsNotTraced)
            {
                if (!mayBeUnknown) report.UnknownHere(span);
                found.Add(new BoundTerminal(null, span) { IsNotTraced = mayBeUnknown });
                continue;
            }

            if (item.Part is not null)
            {
                partName = item.Part;
                part = names.ResolvePart(scope, item.Part);
            }
            else if (partName is null)
            {
                report.MissingValue(
                    span, $"`{item.From.Text}` does not say of which part it is a contact.",
                    $"Write the part before it: J1:{item.From.Text}.");
            }

            var contacts = ranges.Expand(item.From, item.To, scope, part?.TerminalNames ?? default);
            hasBrokenRange |= contacts.Count == 0;
            var known = part is null ? new string?[contacts.Count] : names.Contacts(scope, part, partName!, contacts, item.Span);
            found.AddRange(known.Select(c => new BoundTerminal(c is null ? null : new TerminalId(part!.FullName, c), span)));
        }

        return new BoundTerminals(found, hasBrokenRange);
    }

    /// <summary>The resolved terminals of a list.</summary>
    public ImmutableArray<TerminalId> BindAll(Scope scope, IEnumerable<ContactSyntax> items) =>
        [.. Bind(scope, items).Items.Where(t => t.Terminal is not null).Select(t => t.Terminal!.Value)];

    /// <summary>One terminal, or null when it is not there.</summary>
    public TerminalId? One(Scope scope, ContactSyntax? item) => item is null ? null : Bind(scope, [item]).Items[0].Terminal;
}
