using System.Collections.Immutable;
using System.Globalization;
using Schematic.Bench.Record;
using Schematic.Drawing;
using Schematic.Layout.Faces;
using Schematic.Model;
using Schematic.Rendering;
using Schematic.Reports;

namespace Schematic.Page.Content;

/// <summary>The drawings of a page: circuit sheets, wiring sheets and the faces of the connectors.</summary>
internal sealed class DrawingSections(Panel panel, ImmutableArray<Sheet> sheets)
{
    /// <summary>The sections that have something to show: the id, the heading, and what writes it.</summary>
    public IEnumerable<PageSection> All()
    {
        if (Of(SheetKind.Circuit) is { IsEmpty: false } circuits) yield return new("circuit", "Circuit: how it works", p => WriteSheets(p, circuits));
        if (Of(SheetKind.Wiring) is { IsEmpty: false } wirings) yield return new("wiring", "Wiring: where each wire goes", p => WriteSheets(p, wirings));
        ImmutableArray<Connector> connectors = [.. panel.Parts.OfType<Connector>()];
        if (!connectors.IsEmpty) yield return new("faces", "Connector faces", p => WriteFaces(p, connectors));
    }

    private ImmutableArray<Sheet> Of(SheetKind kind) => [.. sheets.Where(s => s.Kind == kind)];

    private static void WriteSheets(Markup page, ImmutableArray<Sheet> shown)
    {
        foreach (var sheet in shown)
        {
            var number = sheet.Number.ToString(CultureInfo.InvariantCulture);
            page.Open("figure", ("class", "sheet"), ("id", $"sheet-{number}"), ("data-place", $"{sheet.Kind}, sheet {number}"))
                .Line("figcaption", $"Sheet {number}: {sheet.Title}")
                .Open("div", ("class", "paper"), ("tabindex", "0"), ("role", "region"), ("aria-label", $"Sheet {number}, can be scrolled"))
                .Made(SvgWriter.WritePart(sheet.Marks, (sheet.Size.WidthMm, sheet.Size.HeightMm), $"Sheet {number}: {sheet.Title}"))
                .Close().Close();
        }
    }

    private void WriteFaces(Markup page, ImmutableArray<Connector> connectors)
    {
        var (uses, proofs) = (new ContactUses(panel), BenchRecord.ProofOf(panel));
        foreach (var connector in connectors)
        {
            var views = new FaceViews(connector, uses.Of(connector), proofs);
            page.Open("figure", ("class", "face"), ("id", $"face-{connector.Designator}"), ("data-place", $"Face of {connector.Designator}"), ("data-shows", "rear"))
                .Open("figcaption").Line("strong", connector.Designator);
            if (connector.Description.Length > 0) page.Text(" " + connector.Description);
            page.Close().Open("div", ("class", "sides"));
            WriteView(page, connector, views.Rear, "rear", "wire side");
            WriteView(page, connector, views.Front, "front", "mating side");
            page.Close().Close();
        }
    }

    private static void WriteView(Markup page, Connector connector, FaceViewMarks view, string side, string words) => page
        .Open("div", ("class", "side"), ("data-side", side))
        .Made(SvgWriter.WritePart(view.Marks, (view.WidthMm, view.HeightMm), $"{connector.Designator}, {side}, {words}"))
        .Close();
}

/// <summary>A section of a page.</summary>
/// <param name="Id">Its anchor.</param>
/// <param name="Heading">Its heading.</param>
/// <param name="Write">Writes what stands below the heading.</param>
internal sealed record PageSection(string Id, string Heading, Action<Markup> Write);
