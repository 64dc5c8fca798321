using System.Collections.Immutable;
using System.Globalization;
using Schematic.Analysis;
using Schematic.Analysis.Quantities;
using Schematic.Analysis.Wiring;
using Schematic.Inserts;
using Schematic.Model;

namespace Schematic.Reports;

/// <summary>
/// What to do at the bench, in order, each line with a box to tick: prepare the wires, make each connector in soldering
/// order as seen from the wire side, then the other ends; all ends where there is no connector.
/// </summary>
public static class WorkList
{
    private const string Box = "☐";

    // More boxes than this would crowd the row: one then stands for all sets.
    private const int MostBoxes = 6;

    // A longer list of the ends off connectors is printed part by part, those of at least so many ends alone.
    private const int MostTogether = 60;
    private const int LeastAlone = 8;

    // What is done with every end that nothing else is said of.
    private const string Usual = "fasten, pull";

    private const string Together = " together here";

    private static readonly ImmutableArray<ReportColumn> WireColumns =
    [
        new("done", "Done", ColumnAlign.Centre),
        new("wire", "Wire"),
        new("cut_mm", "Cut mm", ColumnAlign.Right),
        new("gauge", "Gauge"),
        new("colour", "Colour", ColumnAlign.Centre),
        new("marks", "Marks", ColumnAlign.Right),
        new("marks_at_mm", "Marks at, mm from the first end"),
    ];

    private static readonly ImmutableArray<ReportColumn> EndColumns =
    [
        new("done", "Done", ColumnAlign.Centre),
        new("step", "Step", ColumnAlign.Right),
        new("contact", "Contact"),
        new("wire", "Wire or lead"),
        new("colour", "Colour", ColumnAlign.Centre),
        new("gauge", "Gauge"),
        new("strip_mm", "Strip mm", ColumnAlign.Right),
        new("work", "Work"),
        new("other_end", "Other end"),
    ];

    /// <summary>Builds the lists: wires, one for each connector that is wired, then the other ends together.</summary>
    public static ImmutableArray<ReportTable> Build(AnalysisContext context)
    {
        var fastenings = new Fastenings(context);
        var stations = BuildOrder.Stations(context, fastenings);
        if (stations.IsEmpty) return [];
        var tables = ImmutableArray.CreateBuilder<ReportTable>();
        if (!context.Panel.Wires.IsEmpty || !context.Panel.Cables.IsEmpty) tables.Add(Preparation(context));
        foreach (var connector in stations.OfType<Connector>()) tables.Add(ConnectorTable(context, fastenings, connector));
        if (stations.Any(p => p is not Connector)) tables.Add(OtherEnds(context, fastenings, stations));
        return [.. tables.Select(t => WithBoxes(t, context.Panel.BuildCount))];
    }

    /// <summary>
    /// What a pack prints: the ends that are on no connector. Cutting and marking stand in wire list and cut list, a connector's
    /// ends beside its face, what holds of any terminal in the list of the command.
    /// </summary>
    public static ImmutableArray<ReportTable> BuildPrinted(AnalysisContext context)
    {
        var fastenings = new Fastenings(context);
        var stations = BuildOrder.Stations(context, fastenings);
        if (stations.All(p => p is Connector)) return [];
        var all = JoinedColumns.Of(Short(WithBoxes(OtherEnds(context, fastenings, stations), context.Panel.BuildCount)), "Wire or lead", "wire", "colour", "gauge");
        var connectors = stations.OfType<Connector>().Select(c => c.Designator).ToList();
        var first = connectors.Count == 0 ? "" : $"First the ends at {NameList.Compact(connectors)}: their order stands beside their faces. ";
        string[] notes = [$"{first}Disconnect every supply before work on the harness. Where nothing else is said: {Usual}. Rows of one name: together on that terminal. Far ends: wire list."];
        var tables = all.Rows.Length <= MostTogether ? [all] : ByPart(all);
        return [.. tables.Select((t, i) => t with { Notes = i == 0 ? [.. notes] : [] })];
    }

    /// <summary>A table for each part, so that it finds room beside the drawing of the part; parts of a few ends stand together.</summary>
    private static ImmutableArray<ReportTable> ByPart(ReportTable all)
    {
        static string PartOf(ImmutableArray<string> row) => row[1][..row[1].LastIndexOf(':')];
        var parts = all.Rows.GroupBy(PartOf).ToLookup(g => g.Count() >= LeastAlone);
        return
        [
            .. parts[true].Select(g => all with { Title = $"Work list: {g.Key}", Rows = [.. g] }),
            .. parts[false].SelectMany(g => g).ToImmutableArray() is { IsEmpty: false } few ? (ReportTable[])[all with { Title = "Work list: parts of a few ends", Rows = few }] : [],
        ];
    }

    /// <summary>The ends at a connector in the order of soldering; no rows where nothing ends on it.</summary>
    public static ReportTable BuildConnector(AnalysisContext context, Connector connector) =>
        WithBoxes(ConnectorTable(context, new Fastenings(context), connector), context.Panel.BuildCount);

    /// <summary>A box to tick for each set that is built; one for all where they are many.</summary>
    public static string Boxes(int sets) => new('☐', sets > MostBoxes ? 1 : Math.Max(1, sets));

    /// <summary>What stands above the boxes: whether there is one for each set.</summary>
    internal static string BoxHeader(int sets) => sets is 1 or > MostBoxes ? "Done" : "Sets";

    private static ReportTable WithBoxes(ReportTable table, int sets) => table with
    {
        Columns = table.Columns.SetItem(0, table.Columns[0] with { Header = BoxHeader(sets) }),
        Rows = [.. table.Rows.Select(r => r.SetItem(0, Boxes(sets)))],
    };

    /// <summary>
    /// The table without step numbers, without what is done with every end and without the far ends of wires, which stand in the
    /// wire list and at the flags of the wiring sheets.
    /// </summary>
    private static ReportTable Short(ReportTable table)
    {
        var (step, wire, work, other) = (1, 3, table.Columns.Length - 2, table.Columns.Length - 1);
        string Work(ImmutableArray<string> row) => row[wire] == "jumper" ? $"bar to {row[other]}"
            : IsLead(row[wire]) && row[other].Length > 0 ? $"{ShortWork(row[work])}; {ShortEnds(row[other])}"
            : ShortWork(row[work]);
        return table with
        {
            Columns = table.Columns.RemoveAt(other).RemoveAt(step),
            Rows = [.. table.Rows.Select(r => r.SetItem(work, Work(r)).RemoveAt(other).RemoveAt(step))],
        };
    }

    /// <summary>Whether what is fastened is no wire: a device's own lead or a screen, of which no other list tells the far end.</summary>
    private static bool IsLead(string name) => name.Contains(':', StringComparison.Ordinal) || name.EndsWith(" screen", StringComparison.Ordinal);

    private static string ShortWork(string work)
    {
        // The rows of one terminal stand together and show how many are on it.
        if (work.LastIndexOf(", ", StringComparison.Ordinal) is >= 0 and var at && work.EndsWith(Together, StringComparison.Ordinal)) work = work[..at];
        return work.Replace(Usual, "", StringComparison.Ordinal)
            .Replace(", ,", ",", StringComparison.Ordinal).Replace(": ,", ",", StringComparison.Ordinal).Trim(',', ' ', ':');
    }

    /// <summary>The first of the other leads of a device; each has a row of its own.</summary>
    private static string ShortEnds(string ends)
    {
        var all = ends.Split(", ");
        return all.Length < 3 ? ends : $"{all[0]} and {Figures.Count(all.Length - 1)} more";
    }

    private static ReportTable Preparation(AnalysisContext context)
    {
        var rows = BuildOrder.Wires(context).Where(w => w.Wire.Cable is null).Select(w => PreparationRow(w.Wire))
            .Concat(context.Panel.Cables.Select(CableRow));
        return new ReportTable($"Work list 1: cut and mark, {CutList.Sets(context.Panel.BuildCount)}", WireColumns, [.. rows])
        {
            Notes =
            [
                "Disconnect every supply before work on the harness.",
                $"Marks: none under 3 in, one near the middle up to 7 in, else 3 in (76 mm) from each end and at most 15 in (381 mm) apart ({Sources.WireMarks}). A mark must not hide under a tie or clamp.",
                "Cable: mark each core at both ends with its wire number.",
            ],
        };
    }

    private static ImmutableArray<string> PreparationRow(Wire wire)
    {
        return
        [
            Box, wire.Designator, Figures.Mm(wire.LengthMm), WireList.GaugeText(wire), wire.Colour?.Code ?? "",
            wire.LengthMm is { } length ? Figures.Count(WireMarks.Count(length)) : "", wire.LengthMm is { } mm ? MarkPlaces.Words(mm) : "",
        ];
    }

    private static ImmutableArray<string> CableRow(Cable cable) =>
        [Box, cable.Designator, Figures.Mm(cable.LengthMm), PartNames.Of(cable), "", "", ""];

    private static ReportTable ConnectorTable(AnalysisContext context, Fastenings fastenings, Connector connector)
    {
        var rows = Numbered(BuildOrder.TerminalsOf(connector).SelectMany(t => EndRows(context, fastenings, t)));
        var name = $"{connector.Designator} {connector.Description}".TrimEnd();
        return new ReportTable($"Work list: {name}", EndColumns, [.. rows]) { Notes = [.. ConnectorNotes(context, connector)] };
    }

    private static ReportTable OtherEnds(AnalysisContext context, Fastenings fastenings, ImmutableArray<Part> stations)
    {
        var rows = Numbered(stations.Where(p => p is not Connector and not FarEnd).SelectMany(BuildOrder.TerminalsOf).SelectMany(t => EndRows(context, fastenings, t)));
        return new ReportTable($"Work list: {(stations.Any(p => p is Connector) ? "the other ends" : "all ends")}", EndColumns, [.. rows])
        {
            Notes =
            [
                "No more than the stated number of wires on one terminal; three is the most a government relay specification allows (MIL-R-19309D 3.3.9.1).",
                "Where a wire is held at both ends of a bend at a terminal strip, 3 times its diameter is enough for the bend (AC 43.13-1B 11-96, from memory).",
            ],
        };
    }

    private static IEnumerable<ImmutableArray<string>> Numbered(IEnumerable<ImmutableArray<string>> rows) =>
        rows.Select((row, i) => row.SetItem(1, Figures.Count(i + 1)));

    /// <summary>A step for everything that is fastened at a terminal; a jumper bar is one step, at its first terminal.</summary>
    private static IEnumerable<ImmutableArray<string>> EndRows(AnalysisContext context, Fastenings fastenings, TerminalId terminal)
    {
        var all = fastenings.At(terminal).ToImmutableArray();
        return all.Where(f => f.Kind != FasteningKind.Jumper || f.Name == terminal.ToString()).Select(f => f.Kind switch
        {
            FasteningKind.Wire => WireRow(context, f, all.Length),
            FasteningKind.Lead => LeadRow(context, f, all.Length),
            FasteningKind.Jumper => JumperRow(context, terminal),
            FasteningKind.Screen => Row(terminal, $"{f.Name} screen", $"{Work(context, terminal, all.Length)}; sleeve on the bare braid", "cut back and insulated"),
            _ => throw new ArgumentOutOfRangeException(nameof(fastenings)),
        });
    }

    private static ImmutableArray<string> WireRow(AnalysisContext context, Fastening fastening, int together)
    {
        var (terminal, wire) = (fastening.At, fastening.Wire!);
        return
        [
            Box, "", terminal.ToString(), wire.Designator, wire.Colour?.Code ?? "", WireList.GaugeText(wire),
            Figures.Mm((context.Part(terminal.Part) as Connector)?.StripMm), PolarityWords(context.Part(terminal.Part), terminal.Name) + Work(context, terminal, together),
            (wire.From == terminal ? wire.To : wire.From).ToString(),
        ];
    }

    private static ImmutableArray<string> LeadRow(AnalysisContext context, Fastening fastening, int together)
    {
        var device = fastening.Device!.Value;
        var others = context.Panel.Attachments.Where(a => a.Device.Part == device.Part && a.Device != device)
            .Select(a => $"{a.Device} at {a.Contact}");
        return Row(fastening.At, device.ToString(), $"{LeadWords(context.Part(device.Part)!, device.Name)}: form, {Work(context, fastening.At, together)}", string.Join(", ", others));
    }

    /// <summary>Which lead of a component it is, as the eye finds it on the part.</summary>
    private static string LeadWords(Part part, string terminal) =>
        part is Diode diode ? terminal == diode.Ends.To ? "lead at the band" : "lead without the band"
        : part is Capacitor { IsPolarised: true } capacitor ? terminal == capacitor.Ends.From ? "plus lead" : "minus lead, at the stripe"
        : part is Led led ? terminal == led.Ends.To ? "short lead, at the flat" : "long lead"
        : $"lead {terminal}";

    /// <summary>Where a wire meets a component that has a right way round, which end of it.</summary>
    private static string PolarityWords(Part? part, string terminal) => part is Diode or Led or Capacitor { IsPolarised: true } ? $"{LeadWords(part, terminal)}: " : "";

    private static ImmutableArray<string> JumperRow(AnalysisContext context, TerminalId terminal)
    {
        var bar = ((TerminalStrip)context.Part(terminal.Part)!).Jumpers.First(b => b.Length > 1 && b[0] == terminal.Name);
        return Row(terminal, "jumper", $"fit a jumper bar over {NameList.Compact(bar)}", NameList.Compact(bar.Skip(1).Select(n => $"{terminal.Part}:{n}")));
    }

    private static ImmutableArray<string> Row(TerminalId terminal, string what, string work, string otherEnd) =>
        [Box, "", terminal.ToString(), what, "", "", "", work, otherEnd];

    private static string Work(AnalysisContext context, TerminalId terminal, int things)
    {
        var together = things > 1 ? $", {Figures.Count(things)}{Together}" : "";
        return (context.Part(terminal.Part) as Connector)?.Termination switch
        {
            Termination.Solder => $"sleeve on, solder, sleeve over{together}",
            Termination.Crimp => $"crimp, pull, insert{together}",
            Termination.Screw => $"fasten the screw, pull{together}",
            Termination.Clamp => $"clamp, pull{together}",
            _ => $"fasten, pull{together}",
        };
    }

    private static IEnumerable<string> ConnectorNotes(AnalysisContext context, Connector connector)
    {
        yield return $"Order: {SolderingOrder.Words(connector.Insert)}, {BuildOrder.WireSide(connector).SeenFrom()}: do first what will be hidden ({OrderSource(connector)}).";
        if (connector.Termination == Termination.Solder)
        {
            yield return "Put the sleeve on the wire before soldering. Bare gap between cup and insulation: less than two insulated-wire diameters, no insulation in the joint (NASA-STD-8739.3 9.1).";
            yield return "One wire in a cup; where two must meet, join them on a terminal (common practice, no source).";
        }
        else if (connector.Termination == Termination.Crimp)
        {
            yield return "Crimp stranded wire only, never tinned strands; one wire in a barrel. Bare gap behind the barrel 0.25 mm to 0.75 mm, from 18 AWG up to 1.25 mm (NASA-STD-8739.4).";
        }

        if (connector.StripMm is null) yield return "Strip length is not stated: take it from the contact's data sheet.";
        yield return BendNote(context, connector);
        yield return SpareNote(context, connector);
        yield return "Leave slack for two more terminations (FAA AC 43.13-1B 11-118) and no strain on the contacts (11-235 f).";
    }

    private static string OrderSource(Connector connector) =>
        connector.Insert.Outline == InsertOutline.Round ? "common practice, no source" : "NAVEDTRA 14009, cable fabrication";

    private static string BendNote(AnalysisContext context, Connector connector)
    {
        var diameters = BuildOrder.TerminalsOf(connector).SelectMany(context.WiresAt)
            .Select(w => w.Gauge).OfType<WireGauge>().Select(InsulatedWire.DiameterMm).ToList();
        if (diameters.Count == 0) return "Bend no tighter than 10 times the outside diameter (US Army TM 1-1500-204-23-4 item 27).";
        var bundle = BundleGeometry.DiameterMm(diameters);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"Bend the bundle no tighter than {BundleGeometry.BendRadiusMm(bundle):0} mm: 10 x its own diameter (US Army TM 1-1500-204-23-4 item 27), about {bundle:0.0} mm by 1.2 x root of the sum of squares (common practice; insulation of 0.4 mm assumed).");
    }

    private static string SpareNote(AnalysisContext context, Connector connector)
    {
        var free = connector.Terminals.Length - connector.Terminals.Count(t => context.WiresAt(connector.At(t.Name)).Any());
        var inner = InnerFree(context, connector);
        var places = inner.Count == 0 ? "" : $" Of the free ones {NameList.Compact(inner)} {(inner.Count == 1 ? "lies" : "lie")} in the inner half: hard to reach later.";
        var wanted = SpareContacts.GoodPractice(connector.Terminals.Length);
        return $"{Figures.Count(free)} {(free == 1 ? "contact stays" : "contacts stay")} free; {Figures.Count(wanted)} {(wanted == 1 ? "spare is" : "spares are")} good practice for {Figures.Count(connector.Terminals.Length)} {(connector.Terminals.Length == 1 ? "contact" : "contacts")}, in the outer part of the connector ({Sources.Spares}).{places}{(connector.Termination == Termination.Crimp ? " Fill every cavity with its contact, wired or not." : "")}";
    }

    /// <summary>Free contacts of a round insert that lie nearer to the centre than to the rim.</summary>
    private static List<string> InnerFree(AnalysisContext context, Connector connector)
    {
        if (connector.Insert.Outline != InsertOutline.Round) return [];
        var rim = connector.Insert.Contacts.Max(c => Math.Sqrt((c.XMm * c.XMm) + (c.YMm * c.YMm)));
        return
        [
            .. connector.Insert.Contacts.Where(c => Math.Sqrt((c.XMm * c.XMm) + (c.YMm * c.YMm)) < 0.499 * rim)
                .Select(c => c.Name).Where(n => !context.WiresAt(connector.At(n)).Any()),
        ];
    }
}
