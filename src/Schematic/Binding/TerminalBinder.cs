using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Model;
using Schematic.Text;

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
        var all = items.ToList();
        for (var i = 0; i < all.Count; i++)
        {
            var item = all[i];
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
                // One finding for a run of names without a part: `X 1` and `X1-1` were meant as one terminal.
                if (found.Count == 0 || all[i - 1].Part is not null) report.NoPart(span, item.From.Text, MeantTerminal(scope, all, i));
            }

            var contacts = ranges.Expand(item.From, item.To, scope, part?.TerminalNames ?? default);
            hasBrokenRange |= contacts.Count == 0;
            var known = part is null ? new string?[contacts.Count] : names.Contacts(scope, part, partName!, contacts, item.Span);
            found.AddRange(known.Select(c => new BoundTerminal(c is null ? null : new TerminalId(part!.FullName, c), span)));
        }

        return new BoundTerminals(found, hasBrokenRange);
    }

    /// <summary>The terminal that a name without a part seems to be: a part and the contact after it, or both joined by a dash.</summary>
    private string? MeantTerminal(Scope scope, List<ContactSyntax> all, int index)
    {
        var name = all[index].From.Text;
        for (var dash = name.LastIndexOf('-'); dash > 0; dash = name.LastIndexOf('-', dash - 1))
        {
            if (names.Find(scope, name[..dash]) is not null) return $"{name[..dash]}:{name[(dash + 1)..]}";
        }

        return index + 1 < all.Count && all[index + 1] is { Part: null, IsNotTraced: false } contact && !char.IsAsciiDigit(name[0])
            ? $"{name}:{contact.From.Text}"
            : null;
    }

    /// <summary>
    /// The terminals of a device's joints to its unit, <paramref name="count"/> of them where all are given. A question mark at the
    /// end stands for all that follow as well.
    /// </summary>
    public BoundTerminals BindJoints(Scope scope, IEnumerable<ContactSyntax> items, int count)
    {
        var bound = Bind(scope, items, mayBeUnknown: true);
        while (bound.Items.Count > 0 && bound.Items.Count < count && bound.Items[^1].IsNotTraced) bound.Items.Add(bound.Items[^1]);
        return bound;
    }

    /// <summary>The resolved terminals of a list.</summary>
    public ImmutableArray<TerminalId> BindAll(Scope scope, IEnumerable<ContactSyntax> items) =>
        [.. Bind(scope, items).Items.Where(t => t.Terminal is not null).Select(t => t.Terminal!.Value)];

    /// <summary>One terminal, or null when it is not there.</summary>
    public TerminalId? One(Scope scope, ContactSyntax? item) => item is null ? null : Bind(scope, [item]).Items.FirstOrDefault().Terminal;

    /// <summary>
    /// The terminal of one of a run of like things: the list names one for each of them, or a single one that they share.
    /// </summary>
    public BoundTerminal Of(Scope scope, ImmutableArray<ContactSyntax> items, RunPlace run, bool mayBeUnknown = false)
    {
        if (items.IsEmpty) return default;
        var (found, hasBrokenRange) = Bind(scope, items, mayBeUnknown);
        var count = Math.Max(1, run.Count);
        if (found.Count == 1) return found[0];
        if (found.Count == count) return found[run.Index];
        if (!hasBrokenRange)
        {
            report.CountMismatch(
                scope.At(TextSpan.FromBounds(items[0].Span.Start, items[^1].Span.End)),
                count == 1 ? $"{found.Count} contacts are given for one." : $"{found.Count} contacts are given for {count}.",
                count == 1 ? "Name one contact, or write a range of names for several: W1..W10." : $"Give {count} contacts, one for each in this order, or one for all.");
        }

        return default;
    }
}
