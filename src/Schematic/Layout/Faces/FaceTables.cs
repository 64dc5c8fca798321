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
    /// <summary>Contact by contact; three or more unused ones side by side are one row. Columns without any entry are left away.</summary>
    public static ReportTable Contacts(Connector connector, ImmutableArray<ContactUse> uses)
    {
        (ReportColumn Column, Func<ContactUse, string> Cell)[] columns =
        [
            (new("contact", "Contact"), u => u.Contact),
            (new("use", "Net and use"), UseWords),
            (new("wire", "Wire, colour, gauge"), u => string.Join(' ', new[] { u.WireNames, u.ColourCodes, u.Gauges }.Where(w => w.Length > 0))),
        ];
        // A part without wires yet is written on with a pencil.
        if (uses.All(u => u.Wires.IsEmpty))
        {
            columns[2] = columns[2] with { Cell = _ => CellSign.Blank };
        }

        var shown = columns.Where(c => c.Column.Key is "contact" or "use" || uses.Any(u => c.Cell(u).Length > 0)).ToList();
        return new ReportTable(
            $"Contacts of {connector.Designator}",
            [.. shown.Select(c => c.Column)],
            [.. Merged(uses).Select(u => shown.Select(c => c.Cell(u)).ToImmutableArray())]);
    }

    /// <summary>The wired contacts in the order in which the hand reaches them, with a box to tick for each set.</summary>
    public static ReportTable Soldering(AnalysisContext context, Connector connector)
    {
        var table = JoinedColumns.Of(WorkList.BuildConnector(context, connector), "Wire or lead", "wire", "colour");
        var work = connector.Termination is Termination.Solder or Termination.Unstated ? "Soldering order" : "Fitting order";
        string[] left = ["step", "work", "strip_mm", "gauge"];
        ImmutableArray<int> kept = [.. Enumerable.Range(0, table.Columns.Length).Where(i => !left.Contains(table.Columns[i].Key))];
        var contact = Index(table, "contact");
        var words = table.Rows.IsEmpty ? "" : table.Rows.Select(r => r[Index(table, "work")]).GroupBy(w => w).OrderByDescending(g => g.Count()).First().Key;
        return table with
        {
            Title = $"{work}: {connector.Designator}, wire side",
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

    private static string UseWords(ContactUse use) =>
        use.IsNotTraced ? (use.Purpose.Length == 0 ? "not traced" : $"not traced; {use.Purpose}")
        : use.IsSpare ? "spare" : use.Purpose.Length == 0 && use.Wires.IsEmpty ? "not used" : use.Purpose;

    private static IEnumerable<ContactUse> Merged(ImmutableArray<ContactUse> uses)
    {
        for (var i = 0; i < uses.Length;)
        {
            var run = i + 1;
            while (run < uses.Length && IsUnused(uses[i]) && IsUnused(uses[run]) && uses[run].IsSpare == uses[i].IsSpare
                && uses[run].IsNotTraced == uses[i].IsNotTraced) run++;
            if (run - i < 3)
            {
                yield return uses[i++];
                continue;
            }

            yield return uses[i] with { Contact = $"{uses[i].Contact}..{uses[run - 1].Contact}" };
            i = run;
        }
    }

    private static bool IsUnused(ContactUse use) => use.Wires.IsEmpty && (use.IsSpare || use.Purpose.Length == 0);
}
