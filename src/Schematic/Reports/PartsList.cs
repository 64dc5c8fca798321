using System.Collections.Immutable;
using System.Globalization;
using Schematic.Analysis;
using Schematic.Model;

namespace Schematic.Reports;

/// <summary>
/// What to buy for all sets: equal parts together, then cables and wire by the metre, then the sums, one for each currency.
/// Amounts are exact decimals.
/// </summary>
public static class PartsList
{
    private static readonly ImmutableArray<ReportColumn> Columns =
    [
        new("item", "Item", ColumnAlign.Right),
        new("parts", "Parts"),
        new("description", "What"),
        new("per_set", "A set", ColumnAlign.Right),
        new("spares", "Spares", ColumnAlign.Right),
        new("quantity", "Buy", ColumnAlign.Right),
        new("unit", "Unit"),
        new("unit_price", "Price", ColumnAlign.Right),
        new("total", "Total", ColumnAlign.Right),
        new("currency", "Currency"),
    ];

    private static readonly ImmutableArray<ReportColumn> AlternativeColumns =
    [
        new("part", "Part"),
        new("description", "First choice"),
        new("quantity", "Buy", ColumnAlign.Right),
        new("unit_price", "Price", ColumnAlign.Right),
        new("total", "Total", ColumnAlign.Right),
        new("alternative", "Alternative"),
        new("alternative_price", "Price", ColumnAlign.Right),
        new("alternative_total", "Total", ColumnAlign.Right),
        new("saves", "Saves", ColumnAlign.Right),
        new("currency", "Currency"),
    ];

    /// <summary>The list and, where there are any, the alternatives.</summary>
    public static ImmutableArray<ReportTable> BuildAll(AnalysisContext context) =>
        BuildAlternatives(context) is { } alternatives ? [Build(context), alternatives] : [Build(context)];

    /// <summary>
    /// What a pack prints: pieces and metres beside their numbers, one currency named once, loose wire in a note, since the cut list
    /// tells its pieces.
    /// </summary>
    public static ImmutableArray<ReportTable> BuildPrinted(AnalysisContext context)
    {
        var lines = Lines(context).ToList();
        var list = Table(context.Panel, lines.FindAll(l => !l.IsLooseWire));
        var loose = lines.FindAll(l => l.IsLooseWire);
        list = list with { Notes = [.. list.Notes, .. LooseWords(loose)] };
        return [.. new[] { list, BuildAlternatives(context) }.OfType<ReportTable>().Select(t => WithCurrencyAbove(JoinedColumns.Of(t, "Buy", "quantity", "unit")))];
    }

    /// <summary>Metres of each kind; kinds of which no length is stated are named together, the gauge once.</summary>
    private static IEnumerable<string> LooseWords(List<Line> loose)
    {
        static string KindOf(Line line) => line.Text["wire ".Length..];
        var measured = loose.FindAll(l => l.Quantity is not null);
        if (measured.Count > 0) yield return $"Loose wire, net length of all pieces in metres; buy a tenth more for waste and slack (common practice, no source): {string.Join(", ", measured.Select(l => $"{KindOf(l)} {Number(l.Quantity)}"))}.";
        var open = loose.FindAll(l => l.Quantity is null);
        if (open.Count == 0) yield break;
        var kinds = open.Select(KindOf).GroupBy(k => k.LastIndexOf(' ') is > 0 and var i && !k.StartsWith("of ", StringComparison.Ordinal) ? k[..i] : k)
            .Select(g => g.Count() == 1 ? g.First() : $"{g.Key} {string.Join(' ', g.Select(k => k[g.Key.Length..].Trim()).Where(k => k.Length > 0))}");
        yield return $"Loose wire of which no length is stated: {string.Join("; ", kinds)}.";
    }

    private static ReportTable WithCurrencyAbove(ReportTable table)
    {
        var at = table.Columns.Length - 1;
        var used = table.Rows.Select(r => r[at]).Where(c => c.Length > 0).Distinct().ToList();
        if (used.Count != 1) return table;
        return table with
        {
            Columns = [.. table.Columns.RemoveAt(at).Select(c => c.Key == "total" ? c with { Header = $"{c.Header} {used[0]}" } : c)],
            Rows = [.. table.Rows.Select(r => r.RemoveAt(at))],
        };
    }

    /// <summary>Builds the list.</summary>
    public static ReportTable Build(AnalysisContext context) => Table(context.Panel, [.. Lines(context)]);

    private static ReportTable Table(Panel panel, List<Line> lines)
    {
        var rows = lines.Select((line, i) => Row(line, i + 1)).Concat(Totals(lines));
        return new ReportTable("Parts list", Columns, [.. rows]) { Notes = [.. Notes(panel, lines)] };
    }

    /// <summary>The alternatives of all parts beside the first choice, or null when there are none.</summary>
    public static ReportTable? BuildAlternatives(AnalysisContext context)
    {
        var panel = context.Panel;
        var rows = panel.Alternatives.Select(a => (Alternative: a, Part: context.Part(a.Part)))
            .Where(a => a.Part is not null).Select(a => AlternativeRow(panel, a.Part!, a.Alternative)).ToImmutableArray();
        if (rows.IsEmpty) return null;
        return new ReportTable("Alternatives", AlternativeColumns, rows)
        {
            IsExtra = true,
            Notes = [$"For {CutList.Sets(panel.BuildCount)}. Saves: the first choice less the alternative; empty where a price is missing or the currencies differ."],
        };
    }

    private static IEnumerable<Line> Lines(AnalysisContext context)
    {
        var panel = context.Panel;
        var sets = panel.BuildCount;
        foreach (var group in Pieces(panel).GroupBy(p => (Text: TextOf(p), p[0].UnitPrice)))
        {
            var perSet = group.Count();
            var spares = group.Sum(p => p[0].SparePieces);
            yield return new Line(
                NameList.Compact(group.SelectMany(p => p).Select(p => p.Designator)), group.Key.Text, perSet, spares,
                (perSet * sets) + spares, "pc", group.Key.UnitPrice);
        }

        foreach (var group in Bars(panel).GroupBy(b => b.Terminals).OrderBy(g => g.Key))
            yield return new Line(NameList.Compact(group.Select(b => b.Strip).Distinct()), $"jumper bar over {Figures.Count(group.Key)} terminals", group.Count(), 0, group.Count() * sets, "pc", null);

        foreach (var group in panel.Cables.GroupBy(c => (Text: PartNames.Of(c), c.PricePerMetre)))
            foreach (var line in Metres([.. group.Select(c => (c.Designator, c.LengthMm))], group.Key.Text, sets, group.Key.PricePerMetre)) yield return line;
        foreach (var group in LooseWire(panel))
            foreach (var line in Metres([.. group.Select(w => (w.Designator, w.LengthMm))], $"wire {WireKind(group.Key.Gauge, group.Key.Colour)}", sets, null)) yield return line with { IsLooseWire = true };
        var soldered = panel.Wires.Sum(w => (WireList.IsSoldered(context, w.From) ? 1 : 0) + (WireList.IsSoldered(context, w.To) ? 1 : 0));
        if (soldered > 0) yield return new Line("", "sleeve for a soldered joint", soldered, 0, soldered * sets, "pc", null);
    }

    /// <summary>The pieces that are bought: the poles of one gang together are one.</summary>
    private static IEnumerable<ImmutableArray<Part>> Pieces(Panel panel) => panel.Parts.Where(p => !p.OnHand)
        .GroupBy(p => p is Switch pole ? pole.Gang : p.Designator).Select(g => g.ToImmutableArray());

    /// <summary>The jumper bars of strips that are bought; a strip's own words may tell that they come with it.</summary>
    private static IEnumerable<(string Strip, int Terminals)> Bars(Panel panel) =>
        panel.Parts.OfType<TerminalStrip>().Where(s => !s.OnHand).SelectMany(s => s.Jumpers.Select(j => (s.Designator, j.Length)));

    private static string TextOf(ImmutableArray<Part> piece) => piece.Length == 1 || piece[0].OrderText is not null
        ? PartNames.Of(piece[0]) : $"{PartNames.Of(piece[0])}, {Figures.Count(piece.Length)} poles";

    private static IEnumerable<IGrouping<(double Area, string Gauge, string Colour), Wire>> LooseWire(Panel panel) =>
        panel.Wires.Where(w => w.Cable is null)
            .GroupBy(w => (Area: w.Gauge?.AreaMm2 ?? 0, Gauge: w.Gauge?.Text ?? "", Colour: w.Colour?.Code ?? ""))
            .OrderByDescending(g => g.Key.Area).ThenBy(g => g.Key.Colour, StringComparer.Ordinal);

    private static string WireKind(string gauge, string colour) =>
        gauge.Length + colour.Length == 0 ? "of no stated gauge or colour" : $"{gauge} {colour}".Trim();

    /// <summary>What has a length, in metres; what has none stands apart: nobody knows how much of it to buy.</summary>
    private static IEnumerable<Line> Metres(ImmutableArray<(string Name, double? LengthMm)> pieces, string text, int sets, Price? price)
    {
        foreach (var group in pieces.GroupBy(p => p.LengthMm is not null).OrderByDescending(g => g.Key))
        {
            var perSet = group.Key ? group.Sum(p => (decimal)p.LengthMm!.Value) / 1000 : (decimal?)null;
            yield return new Line(NameList.Compact(group.Select(p => p.Name)), text, perSet, 0, perSet * sets, "m", price);
        }
    }

    private static ImmutableArray<string> Row(Line line, int item) =>
    [
        Figures.Count(item), line.Names, line.Text, Number(line.PerSet), line.Spares == 0 ? "" : Figures.Count(line.Spares),
        Number(line.Quantity), line.Unit, line.Price is null ? "" : Figures.Money(line.Price.Amount),
        line.Total is { } total ? Figures.Money(total) : "", line.Price?.Currency ?? "",
    ];

    private static IEnumerable<ImmutableArray<string>> Totals(List<Line> lines) =>
        lines.Where(l => l.Total is not null).GroupBy(l => l.Price!.Currency).OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => (ImmutableArray<string>)["", "", "Sum", "", "", "", "", "", Figures.Money(g.Sum(l => l.Total!.Value)), g.Key]);

    private static IEnumerable<string> Notes(Panel panel, List<Line> lines)
    {
        yield return $"Quantities for {CutList.Sets(panel.BuildCount)}; Buy = a set x {Figures.Count(panel.BuildCount)} + spares.";
        var unpriced = lines.Count(l => l.Price is null);
        if (unpriced > 0) yield return $"{Figures.Count(unpriced)} of {Figures.Count(lines.Count)} items have no price and are not in the sum.";
        if (lines.Exists(l => l.Quantity is null)) yield return "?: no length is stated, so that the amount is not known and not in the sum.";
        if (lines.Exists(l => l.Unit == "m")) yield return "Metres are the net length of all pieces: buy a tenth more for waste and slack (common practice, no source).";
        var onHand = panel.Parts.Where(p => p.OnHand && p is not FarEnd).Select(p => p.Designator).ToList();
        if (onHand.Count > 0) yield return $"On hand, not bought: {NameList.Compact(onHand)}.";
    }

    private static ImmutableArray<string> AlternativeRow(Panel panel, Part part, PartAlternative alternative)
    {
        var quantity = panel.BuildCount + part.SparePieces;
        var first = part.UnitPrice?.Amount * quantity;
        var other = alternative.UnitPrice?.Amount * quantity;
        var comparable = first is not null && other is not null && part.UnitPrice!.Currency == alternative.UnitPrice!.Currency;
        return
        [
            part.Designator, PartNames.Of(part), Figures.Count(quantity), Money(part.UnitPrice?.Amount), Money(first),
            alternative.OrderText, Money(alternative.UnitPrice?.Amount), Money(other),
            comparable ? Money(first - other) : "", (part.UnitPrice ?? alternative.UnitPrice)?.Currency ?? "",
        ];
    }

    private static string Money(decimal? amount) => amount is { } value ? Figures.Money(value) : "";

    private static string Number(decimal? quantity) => quantity?.ToString("0.###", CultureInfo.InvariantCulture) ?? "?";

    private sealed record Line(
        string Names, string Text, decimal? PerSet, int Spares, decimal? Quantity, string Unit, Price? Price)
    {
        public bool IsLooseWire { get; init; }

        public decimal? Total => Price is null ? null : Price.Amount * Quantity;
    }
}
