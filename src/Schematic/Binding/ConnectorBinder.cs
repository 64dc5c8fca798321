using System.Collections.Immutable;
using Schematic.Inserts;
using Schematic.Language;
using Schematic.Model;

namespace Schematic.Binding;

/// <summary>Builds connectors. One without an insert of its own takes that of the half it mates.</summary>
internal sealed class ConnectorBinder(NameTable names, NameRanges ranges, BindingReporter report)
{
    private static readonly string[] MayRepeat = ["size", "spare", "not-traced", "position"];

    private static readonly InsertArrangement NoInsert = new("positions", InsertOutline.Round, [], "");

    /// <summary>Builds a connector, as far as that goes without knowing the others; null when its name was taken.</summary>
    public Connector? Bind(Scope scope, PartSyntax syntax)
    {
        var reader = new ClauseReader(Joined(scope, syntax), scope, report, MayRepeat);
        var insert = new InsertReader(reader, scope, ranges, report).Read(order => SizesOf(scope, reader.Clauses, order));
        var declared = names.Own(scope, syntax.Designator.Text, syntax.Designator.Span);
        var mounting = new MountingReader(reader, scope, report);
        var connector = new Connector(scope.Full(syntax.Designator.Text), insert.Arrangement ?? NoInsert, scope.At(syntax.Designator.Span))
        {
            Description = syntax.Description?.Text ?? "",
            Gender = reader.Choice("pins", "sockets") switch { "pins" => Gender.Pins, "sockets" => Gender.Sockets, _ => Gender.Unstated },
            KeyDegrees = KeyOf(reader),
            ContactSize = SizesOf(scope, reader.Clauses, []).Common,
            Termination = reader.Choice("solder", "crimp", "screw", "clamp") switch
            {
                "solder" => Termination.Solder,
                "crimp" => Termination.Crimp,
                "screw" => Termination.Screw,
                "clamp" => Termination.Clamp,
                _ => Termination.Unstated,
            },
            StripMm = insert.StripMm,
            Mates = MateOf(scope, reader),
            Cutout = mounting.Cutout(),
            Flange = mounting.Flange(),
        };
        connector = reader.WithPurchase(WithInsert(connector, connector.Insert));
        if (declared is null) return null;
        declared.IsIncomplete |= insert.IsBroken || reader.Has("insert") || (syntax.HasErrors && insert.Arrangement is null);
        declared.Set(connector);
        return connector;
    }

    /// <summary>Gives a connector without an insert that of its mate.</summary>
    public Connector Complete(Connector connector, IReadOnlyDictionary<string, Connector> mates)
    {
        var declared = Own(connector);
        if (!connector.Insert.Contacts.IsEmpty || declared is null) return connector;
        if (!mates.TryGetValue(connector.Designator, out var mate) || mate.Insert.Contacts.IsEmpty)
        {
            var mateIsIncomplete = mate is not null && Own(mate) is { IsIncomplete: true };
            if (!declared.IsIncomplete && !mateIsIncomplete)
            {
                report.MissingValue(
                    connector.Span, "The connector has no insert.",
                    "Give one, such as spiral 37 or grid 5 by 2, or the connector it mates: mates P1.");
            }

            declared.IsIncomplete = true;
            return connector;
        }

        var completed = WithInsert(connector, mate.Insert);
        declared.Set(completed);
        return completed;
    }

    /// <summary>Adds the spare contacts and the sizes of those that differ, once the contacts are known.</summary>
    public Connector WithContacts(Connector connector, Scope scope, PartSyntax syntax)
    {
        if (Own(connector) is not { } declared) return connector;
        var spares = ImmutableHashSet.CreateBuilder<string>(StringComparer.Ordinal);
        var clauses = Joined(scope, syntax);
        foreach (var clause in clauses.Where(c => c.Keyword is "spare" or "size"))
        {
            foreach (var item in clause.All<ContactSyntax>())
            {
                var contacts = ranges.Expand(item.From, item.To, scope, declared.TerminalNames);
                var known = names.Contacts(scope, declared, syntax.Designator, contacts, item.Span);
                if (clause.Keyword == "spare") spares.UnionWith(known.OfType<string>());
            }
        }

        var completed = connector with
        {
            Spares = spares.ToImmutable(),
            OtherSizes = SizesOf(scope, clauses, declared.TerminalNames).Others,
        };
        declared.Set(completed);
        return completed;
    }

    private Declared? Own(Connector connector) => names.Find(new Scope(connector.Span.Source, ""), connector.Designator);

    private static Connector WithInsert(Connector connector, InsertArrangement insert) => connector with
    {
        Insert = insert,
        Terminals = [.. insert.Contacts.Select(c => new Terminal(c.Name, connector.Span))],
    };

    /// <summary>The clauses of head and block; a named arrangement of the library is put in the place of its name.</summary>
    private ImmutableArray<ClauseSyntax> Joined(Scope scope, PartSyntax syntax)
    {
        ImmutableArray<ClauseSyntax> own = [.. syntax.Clauses, .. syntax.Block];
        if (own.FirstOrDefault(c => c.Keyword == "insert") is not { } named) return own;
        foreach (var second in own.Where(c => c.Keyword == "insert" && c != named))
            report.StatedTwice(scope.At(second.KeywordSpan), "`insert`", scope.At(named.KeywordSpan));
        own = own.RemoveAll(c => c.Keyword == "insert" && c != named);
        var word = named.All<WordSyntax>().First();
        if (InsertLibrary.ClausesOf(word.Text, named.Span) is not { } library)
        {
            report.UnknownWord(scope.At(word.Span), "unknown-name", "an arrangement of the library; 'schematic inserts' lists them", word.Text, InsertLibrary.Names);
            return own;
        }

        var described = own.FirstOrDefault(c => InsertReader.Describes(c.Keyword) && !(c is { Keyword: "strip", Values: [QuantitySyntax { Unit.Length: > 0 }] }));
        if (described is not null)
        {
            report.Contradiction(
                scope.At(described.KeywordSpan), $"`{described.Keyword}` describes an insert beside the one that is named.",
                "Keep `insert`, or describe the insert yourself.", scope.At(named.KeywordSpan));
            return own.Remove(named).RemoveAll(c => InsertReader.Describes(c.Keyword)).AddRange(library);
        }

        return [.. own.Remove(named), .. library.Where(c => c.Keyword is not ("size" or "source") || own.All(o => o.Keyword != c.Keyword))];
    }

    /// <summary>The size that holds for all contacts, and those of the contacts in <paramref name="order"/> that differ.</summary>
    private ContactSizes SizesOf(Scope scope, ImmutableArray<ClauseSyntax> clauses, ImmutableArray<string> order)
    {
        WordSyntax? common = null;
        var others = ImmutableDictionary.CreateBuilder<string, string>(StringComparer.Ordinal);
        foreach (var clause in clauses.Where(c => c.Keyword == "size"))
        {
            var size = clause.All<WordSyntax>().First();
            var contacts = clause.All<ContactSyntax>().ToList();
            if (contacts.Count == 0 && common is not null)
                report.StatedTwice(scope.At(clause.Span), "the contact size", scope.At(common.Span));
            if (contacts.Count == 0) common ??= size;
            if (order.IsEmpty) continue;
            foreach (var contact in ranges.ExpandAll(contacts, scope, order).Where(c => order.Contains(c)))
                others[contact] = size.Text;
        }

        return new ContactSizes(common?.Text, others.ToImmutable());
    }

    private string? MateOf(Scope scope, ClauseReader reader)
    {
        if (reader.Word("mates") is not { } word) return null;
        var mate = names.Resolve(scope, word, "a connector", d => d.KindWord == "connector");
        return mate?.Kind == DeclaredKind.Part ? mate.FullName : null;
    }

    private static double KeyOf(ClauseReader reader) => reader.Find("key")?.Values[0] switch
    {
        WordSyntax { Text: "right" } => 90,
        WordSyntax { Text: "bottom" } => 180,
        WordSyntax { Text: "left" } => 270,
        NumberSyntax number => reader.Degrees(number, "key") ?? 0,
        _ => 0,
    };
}
