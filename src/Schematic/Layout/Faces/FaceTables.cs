using System.Collections.Immutable;
using System.Globalization;
using Schematic.Analysis;
using Schematic.Layout.Tables;
using Schematic.Model;
using Schematic.Reports;

namespace Schematic.Layout.Faces;

/// <summary>The lists beside a face: what each contact is for, and the order of soldering.</summary>
internal static class FaceTables
{
    // So few wires of the other half are found at once in its order of soldering.
    private const int MostInOrder = 6;

    /// <summary>
    /// Contact by contact; three or more unused ones side by side are one row. Columns without any entry are left away. Of two halves
    /// that mate a contact has one row: they are for the same, and each has its wires.
    /// </summary>
    public static ReportTable Contacts(FaceHalf half, FaceHalf? mate)
    {
        var rows = Merged(half, mate).ToList();
        var shown = Shown(half, mate, rows);
        return new ReportTable($"Contacts of {Names(half, mate)}", [.. shown.Select(c => c.Column)], [.. rows.Select(u => shown.Select(c => c.Cell(u)).ToImmutableArray())]);
    }

    /// <summary>Contacts and the order of work in one table, for a sheet that has no room for two: the order stands above the rows, a box in each.</summary>
    public static ReportTable Together(AnalysisContext context, FaceHalf half, FaceHalf? mate)
    {
        var rows = Merged(half, mate).ToList();
        var boxes = WorkList.Boxes(context.Panel.BuildCount);
        ImmutableArray<(ReportColumn Column, Func<UsedPair, string> Cell)> shown =
            [(new ReportColumn("done", WorkList.BoxHeader(context.Panel.BuildCount), ColumnAlign.Centre), u => u.Own.Wires.IsEmpty ? "" : boxes), .. Shown(half, mate, rows)];
        return new ReportTable($"Contacts of {Names(half, mate)}", [.. shown.Select(c => c.Column)], [.. rows.Select(u => shown.Select(c => c.Cell(u)).ToImmutableArray())])
        {
            Lead = [$"{WorkOf(half.Connector)} at {half.Name}, wire side: {OrderWords(half.Connector)}."],
        };
    }

    private static ImmutableArray<(ReportColumn Column, Func<UsedPair, string> Cell)> Shown(FaceHalf half, FaceHalf? mate, List<UsedPair> rows)
    {
        static string Wires(ContactUse use) => string.Join(' ', new[] { use.WireNames, use.ColourCodes, use.Gauges }.Where(w => w.Length > 0));
        // A part without wires yet is written on with a pencil.
        var isBlank = half.Wired == 0 && (mate?.Wired ?? 0) == 0;
        (ReportColumn Column, Func<UsedPair, string> Cell)[] columns =
        [
            (new("contact", "Contact"), u => u.Contact),
            (new("use", "Net and use"), UseWords),
            (new("wire", mate is { Wired: > 0 } ? $"Wire at {half.Name}" : "Wire, colour, gauge"), u => isBlank ? CellSign.Blank : Wires(u.Own)),
            (new("mates_wire", $"Wire at {mate?.Name}"), u => mate is null || mate.Wired <= MostInOrder ? "" : Wires(u.Mates[0])),
        ];
        return [.. columns.Where(c => c.Column.Key is "contact" or "use" || rows.Exists(u => c.Cell(u).Length > 0))];
    }

    private static string Names(FaceHalf half, FaceHalf? mate) => mate is null ? half.Name : $"{half.Name} and {mate.Name}";

    private static string WorkOf(Connector connector) =>
        connector.Termination is Termination.Solder or Termination.Unstated ? "Soldering order" : "Fitting order";

    /// <summary>The contacts as the hand reaches them, runs drawn together: <c>19..1, 20..37</c>.</summary>
    private static string OrderWords(Connector connector)
    {
        var places = connector.Insert.Contacts.Select((c, i) => (c.Name, i)).ToDictionary(c => c.Name, c => c.i, StringComparer.Ordinal);
        var order = BuildOrder.TerminalsOf(connector).Select(t => places[t.Name]).ToList();
        var runs = new List<string>();
        for (var from = 0; from < order.Count;)
        {
            var step = from + 1 < order.Count ? order[from + 1] - order[from] : 0;
            var to = from;
            while (Math.Abs(step) == 1 && to + 1 < order.Count && order[to + 1] - order[to] == step) to++;
            if (to - from < 2) to = from;
            var (first, last) = (connector.Insert.Contacts[order[from]].Name, connector.Insert.Contacts[order[to]].Name);
            runs.Add(to == from ? first : $"{first}..{last}");
            from = to + 1;
        }

        return string.Join(", ", runs);
    }

    /// <summary>The wired contacts in the order in which the hand reaches them, with a box to tick for each set.</summary>
    public static ReportTable Soldering(AnalysisContext context, Connector connector)
    {
        var table = JoinedColumns.Of(WorkList.BuildConnector(context, connector), "Wire or lead", "wire", "colour");
        string[] left = ["step", "work", "strip_mm", "gauge"];
        ImmutableArray<int> kept = [.. Enumerable.Range(0, table.Columns.Length).Where(i => !left.Contains(table.Columns[i].Key))];
        var contact = Index(table, "contact");
        var words = table.Rows.IsEmpty ? "" : table.Rows.Select(r => r[Index(table, "work")]).GroupBy(w => w).OrderByDescending(g => g.Count()).First().Key;
        return table with
        {
            Title = $"{WorkOf(connector)}: {connector.Designator}, wire side",
            Columns = [.. kept.Select(i => table.Columns[i])],
            Rows = [.. table.Rows.Select(r => kept.Select(i => i == contact ? r[i][(connector.Designator.Length + 1)..] : r[i]).ToImmutableArray())],
            Notes = [$"Each: {words}{Strip(connector)}.", .. table.Notes],
        };
    }

    /// <summary>The order of soldering without the column that tells where the wires go.</summary>
    public static ReportTable WithoutFarEnds(ReportTable soldering)
    {
        var far = Index(soldering, "other_end");
        return soldering with { Columns = soldering.Columns.RemoveAt(far), Rows = [.. soldering.Rows.Select(r => r.RemoveAt(far))] };
    }

    /// <summary>How many notes of the soldering order stand beside the face; the others are practice that stands with the lists.</summary>
    public const int NotesBesideFace = 2;

    /// <summary>What to mind at the connectors that are wired, for the lists.</summary>
    public static IEnumerable<FlowBlock> Practice(AnalysisContext context) => context.Panel.Parts.OfType<Connector>()
        .Select(c => (Connector: c, Table: Soldering(context, c))).Where(t => !t.Table.Rows.IsEmpty)
        .Select(t => new NoteBlock($"Work at {t.Connector.Designator}", [.. t.Table.Notes.Skip(NotesBesideFace)]));

    private static int Index(ReportTable table, string key) => table.Columns.Select(c => c.Key).ToList().IndexOf(key);

    private static string Strip(Connector connector) =>
        connector.StripMm is { } mm ? string.Create(CultureInfo.InvariantCulture, $"; strip {mm:0.#} mm") : "";

    private static string UseWords(UsedPair pair)
    {
        var (use, purpose) = (pair.Own, pair.Own.Purpose.Length > 0 ? pair.Own.Purpose : pair.Mates[0].Purpose);
        return use.IsNotTraced ? (purpose.Length == 0 ? "not traced" : $"not traced; {purpose}")
            : use.IsSpare ? $"spare{Behind(pair)}" : purpose.Length == 0 && use.Wires.IsEmpty && pair.Mates[0].Wires.IsEmpty ? "not used" : purpose;
    }

    /// <summary>What the other half has at contacts that are spare here, contact by contact.</summary>
    private static string Behind(UsedPair pair)
    {
        if (pair.MatesName is null || pair.Mates.All(m => m.IsSpare || m.Purpose.Length == 0)) return "";
        return $"; in {pair.MatesName}: {InOrder([.. pair.Mates.Select(m => m.Purpose.Length == 0 ? "nothing" : m.Purpose)])}";
    }

    /// <summary>
    /// What contacts are for in their order, the part named once: "S3 common normal reverse"; parts that are all alike share the rest:
    /// "S3 S4, of each common normal reverse".
    /// </summary>
    private static string InOrder(ImmutableArray<string> purposes)
    {
        static string PartOf(string purpose) => purpose.IndexOf(' ', StringComparison.Ordinal) is > 0 and var i ? purpose[..i] : purpose;
        List<(string Part, List<string> Uses)> groups = [];
        foreach (var purpose in purposes)
        {
            var (part, rest) = (PartOf(purpose), purpose[PartOf(purpose).Length..].Trim());
            if (groups.Count > 0 && groups[^1].Part == part && rest.Length > 0 && groups[^1].Uses[0].Length > 0) groups[^1].Uses.Add(rest);
            else groups.Add((part, [rest]));
        }

        var words = groups.ConvertAll(g => string.Join(' ', g.Uses.Where(r => r.Length > 0)));
        return groups.Count > 1 && words[0].Length > 0 && words.TrueForAll(w => w == words[0])
            ? $"{string.Join(' ', groups.Select(g => g.Part))}, of each {words[0]}"
            : string.Join(", ", groups.Zip(words, (g, w) => $"{g.Part} {w}".TrimEnd()));
    }

    private static IEnumerable<UsedPair> Merged(FaceHalf half, FaceHalf? mate)
    {
        var (uses, mates) = (half.Uses, mate?.Uses ?? half.Uses);
        for (var i = 0; i < uses.Length;)
        {
            var run = i + 1;
            while (run < uses.Length && IsUnused(uses[i]) && IsUnused(uses[run]) && mates[i].Wires.IsEmpty && mates[run].Wires.IsEmpty && uses[run].IsSpare == uses[i].IsSpare
                && uses[run].IsNotTraced == uses[i].IsNotTraced && HasUse(mates[run]) == HasUse(mates[i])) run++;
            if (run - i < 3) run = i + 1;
            yield return new UsedPair(run == i + 1 ? uses[i].Contact : $"{uses[i].Contact}..{uses[run - 1].Contact}", uses[i], mates[i..run], mate?.Name);
            i = run;
        }
    }

    private static bool IsUnused(ContactUse use) => use.Wires.IsEmpty && (use.IsSpare || use.Purpose.Length == 0);

    private static bool HasUse(ContactUse use) => !use.IsSpare && use.Purpose.Length > 0;

    /// <summary>A row of contacts: what one or several alike are for, and what each of them has on the other half.</summary>
    private sealed record UsedPair(string Contact, ContactUse Own, ImmutableArray<ContactUse> Mates, string? MatesName);
}
