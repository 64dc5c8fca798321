using System.Collections.Immutable;
using System.Globalization;
using Schematic.Analysis;
using Schematic.Analysis.Quantities;
using Schematic.Inserts;
using Schematic.Model;

namespace Schematic.Reports;

/// <summary>
/// What to do at the bench, in order, each line with a box to tick: prepare the wires, make each connector in soldering
/// order as seen from the wire side, then the other ends.
/// </summary>
public static class WorkList
{
    private const string Box = "☐";

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
        new("wire", "Wire"),
        new("colour", "Colour", ColumnAlign.Centre),
        new("gauge", "Gauge"),
        new("strip_mm", "Strip mm", ColumnAlign.Right),
        new("work", "Work"),
        new("other_end", "Other end"),
    ];

    /// <summary>Builds the lists: wires, one for each connector that is wired, then the other ends together.</summary>
    public static ImmutableArray<ReportTable> Build(AnalysisContext context)
    {
        if (context.Panel.Wires.IsEmpty) return [];
        var stations = BuildOrder.Stations(context);
        var tables = ImmutableArray.CreateBuilder<ReportTable>();
        tables.Add(Preparation(context));
        foreach (var connector in stations.OfType<Connector>()) tables.Add(ConnectorTable(context, connector));
        var others = stations.Where(p => p is not Connector).ToImmutableArray();
        if (!others.IsEmpty) tables.Add(OtherEnds(context, others));
        return tables.ToImmutable();
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
        ImmutableArray<double> places = wire.LengthMm is { } length ? WireMarks.Places(length) : [];
        return
        [
            Box, wire.Designator, Figures.Mm(wire.LengthMm), WireList.GaugeText(wire), wire.Colour?.Code ?? "",
            wire.LengthMm is null ? "" : Figures.Count(places.Length),
            string.Join(", ", places.Select(p => Math.Round(p).ToString("0", CultureInfo.InvariantCulture))),
        ];
    }

    private static ImmutableArray<string> CableRow(Cable cable) =>
        [Box, cable.Designator, Figures.Mm(cable.LengthMm), PartNames.Of(cable), "", "", ""];

    private static ReportTable ConnectorTable(AnalysisContext context, Connector connector)
    {
        var step = 0;
        var rows = from terminal in BuildOrder.TerminalsOf(connector)
                   from wire in WiresAt(context, terminal)
                   select EndRow(context, ++step, terminal, wire);
        var name = $"{connector.Designator} {connector.Description}".TrimEnd();
        return new ReportTable($"Work list: {name}", EndColumns, [.. rows]) { Notes = [.. ConnectorNotes(context, connector)] };
    }

    private static ReportTable OtherEnds(AnalysisContext context, ImmutableArray<Part> parts)
    {
        var step = 0;
        var rows = from part in parts
                   from terminal in BuildOrder.TerminalsOf(part)
                   from wire in WiresAt(context, terminal)
                   select EndRow(context, ++step, terminal, wire);
        return new ReportTable("Work list: the other ends", EndColumns, [.. rows])
        {
            Notes =
            [
                "No more than the stated number of wires on one terminal; three is the most a government relay specification allows (MIL-R-19309D 3.3.9.1).",
                "Where a wire is held at both ends of a bend at a terminal strip, 3 times its diameter is enough for the bend (AC 43.13-1B 11-96, from memory).",
            ],
        };
    }

    private static IEnumerable<Wire> WiresAt(AnalysisContext context, TerminalId terminal) =>
        context.WiresAt(terminal).OrderBy(w => w.Designator, NaturalOrder.Comparer);

    private static ImmutableArray<string> EndRow(AnalysisContext context, int step, TerminalId terminal, Wire wire)
    {
        var count = context.WiresAt(terminal).Count();
        return
        [
            Box, Figures.Count(step), terminal.ToString(), wire.Designator, wire.Colour?.Code ?? "", WireList.GaugeText(wire),
            Figures.Mm((context.Part(terminal.Part) as Connector)?.StripMm), Work(context, terminal, count),
            (wire.From == terminal ? wire.To : wire.From).ToString(),
        ];
    }

    private static string Work(AnalysisContext context, TerminalId terminal, int wires)
    {
        var together = wires > 1 ? $", {Figures.Count(wires)} wires here" : "";
        return context.Part(terminal.Part) switch
        {
            Connector { Termination: Termination.Solder } => $"sleeve on, solder, sleeve over{together}",
            Connector { Termination: Termination.Crimp } => $"crimp, pull, insert{together}",
            Connector { Termination: Termination.Screw } => $"fasten the screw, pull{together}",
            Connector { Termination: Termination.Clamp } => $"clamp, pull{together}",
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
        return $"{Figures.Count(free)} contacts stay free; {Figures.Count(wanted)} spares are good practice for {Figures.Count(connector.Terminals.Length)} contacts, in the outer part of the connector ({Sources.Spares}).{places} Fill every cavity with its contact.";
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
