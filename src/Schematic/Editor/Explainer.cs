using System.Text;
using Schematic.Diagnostics;
using Schematic.Language;
using Schematic.Model;
using Schematic.Reports;
using Schematic.Text;

namespace Schematic.Editor;

/// <summary>What is told about a place.</summary>
/// <param name="Span">The words it is about.</param>
/// <param name="Markdown">What is told, as Markdown.</param>
public sealed record Explanation(TextSpan Span, string Markdown);

/// <summary>
/// Tells what stands at a place: of a contact its wires, net and place on the face; of an actuator its chart; of a quantity what it
/// is checked against; of a word of the language its page.
/// </summary>
public sealed class Explainer
{
    private readonly EditedPanel _panel;
    private readonly ProvedPanel? _proved;

    private Explainer(EditedPanel panel, ProvedPanel? proved)
    {
        _panel = panel;
        _proved = proved;
    }

    private Panel Panel => _panel.Loaded.Panel;

    /// <summary>What is told about an offset of the panel's own text; null where nothing is. What was proved is told too, where it is known.</summary>
    public static Explanation? At(EditedPanel panel, int offset, ProvedPanel? proved = null)
    {
        var explainer = new Explainer(panel, proved);
        if (panel.Mentions.At(panel.Source.FileName, offset) is { } mention && explainer.Name(mention) is { } named) return named;
        return explainer.Quantity(offset) ?? explainer.Word(offset);
    }

    private Explanation? Name(Mention mention)
    {
        var thing = mention.Thing;
        var text = thing.Kind switch
        {
            NamedKind.Contact => Panel.FindPart(FullName(mention, thing.Owner)) is { } part ? Contact(part, thing.Name) : null,
            NamedKind.Part => Panel.FindPart(FullName(mention, thing.Name)) is { } part ? Part(part) : null,
            NamedKind.Actuator => ActuatorOf(mention, thing.Name) is { } actuator ? Actuator(actuator) : null,
            NamedKind.Position => ActuatorOf(mention, thing.Owner) is { } actuator ? Actuator(actuator, thing.Name) : null,
            NamedKind.Wire => Panel.Wires.FirstOrDefault(w => w.Designator == FullName(mention, thing.Name)) is { } wire ? Wire(wire) : null,
            NamedKind.Cable => Panel.Cables.FirstOrDefault(c => c.Designator == FullName(mention, thing.Name)) is { } cable ? Cable(cable) : null,
            NamedKind.Net => Panel.Nets.FirstOrDefault(n => n.Name == FullName(mention, thing.Name)) is { } net ? Net(net) : null,
            _ => _panel.Mentions.DeclarationsOf(thing) is [var declared, ..] ? $"Names of the file used here begin with **{thing.Name}.**\n\n`{LineOf(declared)}`" : null,
        };
        return text is null ? null : new Explanation(mention.Span.Span, text);
    }

    /// <summary>A name as the whole panel knows it: behind the prefix under which its file is used, the first of several.</summary>
    private string FullName(Mention mention, string name) =>
        _panel.Loaded.Used.FirstOrDefault(u => u.FileName == mention.Thing.File && mention.Thing.File != _panel.Source.FileName)?.Prefix + name;

    private Actuator? ActuatorOf(Mention mention, string name) => Panel.Actuators.FirstOrDefault(a => a.Name == FullName(mention, name));

    private string Contact(Part part, string name)
    {
        var context = _panel.Context;
        var id = part.At(name);
        var lines = new List<string> { $"**{id}** of {Described(part.Designator, part.Description)}" };
        lines.AddRange(context.WiresAt(id).Select(w => $"- wire {WireWords(w)} to `{ContactWords.Other(w, id)}`"));
        lines.AddRange(context.NetsAt(id).Select(n => $"- net {n.Name}: {n.Members.Length} members"));
        lines.AddRange(context.AttachmentsAt(id).Select(a => $"- inside the unit: `{a.Device}` {Described("", context.Part(a.Device.Part)?.Description ?? "")}".TrimEnd()));
        lines.AddRange(context.AttachmentsOf(id).Select(a => $"- inside the unit, at `{a.Contact}`"));
        if (lines.Count == 1) lines.Add(part.Spares.Contains(name) ? "- spare" : part.NotTraced.Contains(name) ? "- not traced yet" : "- nothing is on it");
        lines.AddRange(context.MatesOf(id).Select(m => $"- meets `{m}`"));
        if (part is Connector connector)
        {
            if (ContactWords.PlaceOn(connector, name) is { Length: > 0 } place) lines.Add($"- {place}");
            if (connector.SizeOf(name) is { } size) lines.Add($"- contact size {size}");
        }

        return string.Join('\n', lines);
    }

    private string Part(Part part)
    {
        var text = new StringBuilder($"**{part.Designator}** {part.Description}".TrimEnd());
        foreach (var terminal in part.Terminals.Take(MostTerminals))
        {
            var what = ContactWords.WhatIsOn(_panel.Context, part.At(terminal.Name));
            text.Append($"\n- `{terminal.Name}` {(what.Length == 0 ? "free" : what)}");
        }

        if (part.Terminals.Length > MostTerminals) text.Append($"\n- and {part.Terminals.Length - MostTerminals} more");
        if (part is Connector connector) text.Append($"\n\n{connector.Insert.Convention}; {connector.Insert.Contacts.Length} contacts");
        AddWorst(text, part.Designator);
        return text.ToString();
    }

    private const int MostTerminals = 12;

    private string Actuator(Actuator actuator, string? position = null)
    {
        var text = new StringBuilder($"**{actuator.Name}** {actuator.Description}".TrimEnd());
        var names = actuator.Positions.Select(p => p.SpringsTo is { } target ? $"{p.Name} (springs to {target})" : p == actuator.Rest ? $"{p.Name} (rest)" : p.Name);
        text.Append($"\n\n{string.Join(" · ", names)}{(actuator.IsEndless ? " · and round again" : "")}");
        if (position is not null) text.Append($"\n\nHere: **{position}**");
        var title = $"Contact chart: {actuator.Name}";
        var chart = _proved?.Charts.FirstOrDefault(t => t.Title == title || t.Title.StartsWith(title + ",", StringComparison.Ordinal));
        text.Append(chart is null ? Throws(actuator) : $"\n\n{Table(chart)}");
        foreach (var held in Panel.Locks.Where(l => l.Actuator == actuator.Name))
            text.Append($"\n\nLocked at {string.Join(", ", held.Positions)} unless {Words(held.Release.Span.Span)}");
        return text.ToString();
    }

    /// <summary>What its switches say, where nothing is proved yet.</summary>
    private string Throws(Actuator actuator)
    {
        var rows = from part in Panel.Parts.OfType<Switch>()
                   where part.Actuator == actuator.Name
                   from way in part.Pole.Throws
                   select $"\n- {part.Designator} `{part.Pole.Common}`–`{way.Terminal}` {(way.Label.Length > 0 ? way.Label : Words(way.Span.Span))}";
        return "\n" + string.Concat(rows);
    }

    private static string Table(ReportTable table)
    {
        var text = new StringBuilder();
        text.Append($"| {string.Join(" | ", table.Columns.Select(c => Cell(c.Header)))} |\n|{string.Concat(table.Columns.Select(_ => " --- |"))}\n");
        foreach (var row in table.Rows) text.Append($"| {string.Join(" | ", row.Select(Cell))} |\n");
        return text.ToString().TrimEnd();
    }

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal).ReplaceLineEndings(" ");

    private string Wire(Wire wire)
    {
        var text = new StringBuilder($"**{WireWords(wire)}**\n\n`{wire.From}` to `{wire.To}`");
        foreach (var end in new[] { wire.From, wire.To })
        {
            if (ContactWords.WhatIsOn(_panel.Context, end) is { Length: > 0 } what) text.Append($"\n- `{end}`: {what}");
        }

        AddWorst(text, wire.Designator);
        return text.ToString();
    }

    private static string WireWords(Wire wire) => string.Join(' ', new[]
    {
        wire.Designator, wire.GaugeText ?? "", wire.Colour?.Code ?? "", wire.LengthMm is { } length ? $"{Figures.Plain(length)} mm" : "",
    }.Where(w => w.Length > 0));

    private static string Cable(Cable cable) =>
        $"**{cable.Designator}** {cable.Description}\n\n{cable.Cores.Length} cores{(cable.HasScreen ? " and a screen" : "")}{(cable.LengthMm is { } length ? $", {Figures.Plain(length)} mm" : "")}";

    private static string Net(Net net) => $"**net {net.Name}**\n\n{string.Join(' ', net.Members.Select(m => $"`{m.Terminal}`"))}";

    /// <summary>Adds the worst case of a thing, proved over all positions.</summary>
    private void AddWorst(StringBuilder text, string designator)
    {
        foreach (var table in (_proved?.Loads ?? []).Where(t => t.Title.StartsWith("Load sheet", StringComparison.Ordinal)))
        {
            foreach (var row in table.Rows.Where(r => r[0] == designator))
            {
                var cells = table.Columns.Zip(row).Skip(1).Where(c => c.Second.Length > 0).Select(c => $"{c.First.Header} **{Cell(c.Second)}**");
                text.Append($"\n\nWorst case over all positions: {string.Join(", ", cells)}");
            }
        }
    }

    private Explanation? Quantity(int offset)
    {
        var statement = StatementAt(offset);
        if (statement?.Accept(Clauses.Instance) is not { } clauses) return null;
        foreach (var clause in clauses)
        {
            if (clause.Values.FirstOrDefault(v => v is QuantitySyntax or QuantityRangeSyntax && v.Span.Start <= offset && offset <= v.Span.End) is not { } value) continue;
            var quantity = value is QuantityRangeSyntax range ? range.Low : (QuantitySyntax)value;
            var rules = QuantityChecks.RulesFor(statement.Keyword.Text, clause.Keyword, quantity.Dimension);
            var text = new StringBuilder($"**{Words(value.Span)}** is {Binding.UnitWords.Kind(quantity.Dimension)}{(clause.Keyword.Length > 0 ? $", after `{clause.Keyword}`" : "")}.");
            if (!rules.IsEmpty) text.Append("\n\nIt is checked against:");
            foreach (var rule in rules) text.Append($"\n- `{rule}`: {RuleCatalogue.Find(rule)?.Summary}");
            foreach (var (_, first, _) in statement.Accept(GivenNames.Instance).Take(1)) AddWorst(text, first.Text);
            return new Explanation(value.Span, text.ToString());
        }

        return null;
    }

    private StatementSyntax? StatementAt(int offset) =>
        _panel.Syntax.Statements.FirstOrDefault(s => s.Span.Start <= offset && offset <= s.Span.End);

    private Explanation? Word(int offset)
    {
        var text = _panel.Source.Content;
        if (WritingPlace.At(_panel.Source, offset) is not { String: null }) return null;
        var start = Math.Min(offset, text.Length);
        while (start > 0 && Characters.ScanContact(text.AsSpan(start - 1, 1)) == 1) start--;
        var length = Characters.ScanContact(text.AsSpan(start));
        if (length == 0 || WordCatalogue.Find(text.Substring(start, length)) is not { } page) return null;
        return new Explanation(new TextSpan(start, length), page.Text);
    }

    /// <summary>What is written at a stretch, in one line: what stands between two words, a tab or a line end, is a blank.</summary>
    private string Words(TextSpan span) => Words(_panel.Source.Slice(span).ToString());

    private static string Words(string text) => HiddenCharacters.Show(string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)));

    private static string LineOf(SourceSpan span) => Words(span.Source.Slice(span.Source.LineSpan(span.Start.Line)).ToString());

    private static string Described(string name, string description) =>
        description.Length == 0 ? name : $"{name} \"{description}\"".TrimStart();

    /// <summary>The clauses of a statement in which quantities stand.</summary>
    private sealed class Clauses : IStatementVisitor<IEnumerable<ClauseSyntax>?>
    {
        public static readonly Clauses Instance = new();

        public IEnumerable<ClauseSyntax>? Visit(PartSyntax part) => part.Clauses.Concat(part.Block);

        public IEnumerable<ClauseSyntax>? Visit(SwitchSyntax pole) => pole.Clauses;

        public IEnumerable<ClauseSyntax>? Visit(WireSyntax wire) => wire.Clauses;

        public IEnumerable<ClauseSyntax>? Visit(CableSyntax cable) => cable.Clauses.Concat(cable.Cores.SelectMany(c => c.Clauses));

        public IEnumerable<ClauseSyntax>? Visit(SettingSyntax setting) => setting.Clauses;

        public IEnumerable<ClauseSyntax>? Visit(PlaceSyntax place) => place.Clauses;

        public IEnumerable<ClauseSyntax>? Visit(AlternativeSyntax alternative) => alternative.Clauses;

        public IEnumerable<ClauseSyntax>? Visit(ActuatorSyntax actuator) => null;

        public IEnumerable<ClauseSyntax>? Visit(NetSyntax net) => null;

        public IEnumerable<ClauseSyntax>? Visit(LockSyntax actuatorLock) => null;

        public IEnumerable<ClauseSyntax>? Visit(ExpectSyntax expect) => null;

        public IEnumerable<ClauseSyntax>? Visit(NeverSyntax never) => null;

        public IEnumerable<ClauseSyntax>? Visit(UseSyntax use) => null;

        public IEnumerable<ClauseSyntax>? Visit(UnreadableSyntax unreadable) => null;
    }
}
