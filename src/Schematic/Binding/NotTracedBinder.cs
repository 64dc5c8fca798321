using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>
/// Marks the contacts that a file calls <c>not-traced</c>. <c>not-traced rest</c> means every contact of which nothing is
/// stated, so this comes last, when everything that is stated is bound: each later evening's readings only add lines.
/// </summary>
internal sealed class NotTracedBinder(NameTable names, NameRanges ranges, BindingReporter report)
{
    private const string Keyword = "not-traced";
    private const string Rest = "rest";

    /// <summary>The panel with the marks.</summary>
    public Panel Complete(Panel panel, IReadOnlyList<ScopedStatement> statements)
    {
        var marked = new Dictionary<string, ImmutableHashSet<string>>(StringComparer.Ordinal);
        var parts = panel.Parts.Where(p => p is Connector or TerminalStrip).ToLookup(p => p.Designator, StringComparer.Ordinal);
        foreach (var (scope, statement) in statements)
        {
            if (statement is not PartSyntax { Keyword.Text: "connector" or "terminals" } syntax) continue;
            var clauses = syntax.Block.Where(c => c.Keyword == Keyword).ToImmutableArray();
            if (clauses.IsEmpty) continue;
            if (parts[scope.Full(syntax.Designator.Text)].FirstOrDefault() is not { } part || part.Span.Source != scope.Source) continue;
            marked.TryAdd(part.Designator, NotTracedOf(panel, part, scope, syntax, clauses));
        }

        return marked.Count == 0 ? panel : panel with
        {
            Parts = [.. panel.Parts.Select(p => marked.TryGetValue(p.Designator, out var open) ? p with { NotTraced = open } : p)],
        };
    }

    private ImmutableHashSet<string> NotTracedOf(
        Panel panel, Part part, Scope scope, PartSyntax syntax, ImmutableArray<ClauseSyntax> clauses)
    {
        var open = ImmutableHashSet.CreateBuilder<string>(StringComparer.Ordinal);
        var order = part.Terminals.Select(t => t.Name).ToImmutableArray();
        foreach (var item in clauses.SelectMany(c => c.All<ContactSyntax>()))
        {
            if (item.From.Text == Rest && item.To is null && !order.Contains(Rest))
            {
                open.UnionWith(order.Except(Stated(panel, part)));
                continue;
            }

            if (names.Find(scope, syntax.Designator.Text) is not { } declared) continue;
            var contacts = ranges.Expand(item.From, item.To, scope, order);
            foreach (var contact in names.Contacts(scope, declared, syntax.Designator, contacts, item.Span).OfType<string>())
            {
                if (part.Spares.Contains(contact))
                {
                    report.Contradiction(
                        scope.At(item.Span), $"Contact `{contact}` is called spare and not traced.",
                        "Call it spare only when you know that nothing is on it.", part.Span);
                }

                open.Add(contact);
            }
        }

        return open.ToImmutable();
    }

    /// <summary>
    /// The contacts of which something is stated. Of a connector that is the inside of its unit: a device's block names the
    /// contact, or a net or wire joins it to a device. What the harness brings there says nothing about the inside.
    /// </summary>
    private static HashSet<string> Stated(Panel panel, Part part)
    {
        var stated = part.Spares.ToHashSet(StringComparer.Ordinal);
        void Add(TerminalId terminal)
        {
            if (terminal.Part == part.Designator) stated.Add(terminal.Name);
        }

        foreach (var attachment in panel.Attachments) Add(attachment.Contact);
        var equipment = panel.Parts.Where(IsEquipment).Select(p => p.Designator).ToHashSet(StringComparer.Ordinal);
        bool Tells(TerminalId other) => other.Part != part.Designator && (part is TerminalStrip || !equipment.Contains(other.Part));
        foreach (var net in panel.Nets.Where(n => n.Members.Any(m => Tells(m.Terminal))))
        {
            foreach (var member in net.Members) Add(member.Terminal);
        }

        foreach (var wire in panel.Wires)
        {
            if (Tells(wire.To)) Add(wire.From);
            if (Tells(wire.From)) Add(wire.To);
        }

        if (part is TerminalStrip strip) stated.UnionWith(strip.Jumpers.SelectMany(j => j));
        return stated;
    }

    private static bool IsEquipment(Part part) => !part.IsSymbol;
}
