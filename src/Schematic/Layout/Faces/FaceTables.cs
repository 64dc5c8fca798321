using System.Collections.Immutable;
using Schematic.Inserts;
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
            (new("wire", "Wire"), u => u.WireNames),
            (new("colour", "Colour"), u => u.ColourCodes),
            (new("gauge", "Gauge"), u => u.Gauges),
        ];
        var shown = columns.Where(c => c.Column.Key is "contact" or "use" || uses.Any(u => c.Cell(u).Length > 0)).ToList();
        return new ReportTable(
            connector.Designator,
            [.. shown.Select(c => c.Column)],
            [.. Merged(uses).Select(u => shown.Select(c => c.Cell(u)).ToImmutableArray())]);
    }

    /// <summary>The wired contacts in the order in which the hand reaches them, each with a box to tick.</summary>
    public static ReportTable Soldering(Connector connector, ImmutableArray<ContactUse> uses, double keyDegrees)
    {
        var byName = uses.ToDictionary(u => u.Contact, StringComparer.Ordinal);
        var order = SolderingOrder.Of(connector.Insert, FaceWords.RearOf(connector), keyDegrees)
            .Select(c => byName[c.Name]).Where(u => !u.Wires.IsEmpty);
        return new ReportTable(
            connector.Designator,
            [new("done", "", ColumnAlign.Centre), new("contact", "Contact"), new("wire", "Wire"), new("colour", "Colour")],
            [.. order.Select(u => ImmutableArray.Create("☐", u.Contact, u.WireNames, u.ColourCodes))]);
    }

    /// <summary>What the order is called and how it was found.</summary>
    public static string SolderingTitle(Connector connector)
    {
        var work = connector.Termination is Termination.Solder or Termination.Unstated ? "Soldering order" : "Fitting order";
        var side = connector.Gender switch { Gender.Pins => " of the pins", Gender.Sockets => " of the sockets", _ => "" };
        return $"{work}, wire side{side}: {SolderingOrder.Words(connector.Insert)}";
    }

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
