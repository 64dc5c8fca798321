using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Drawing;
using Schematic.Layout.Pack;
using Schematic.Rendering;
using Schematic.Reports;

namespace Schematic.Page;

/// <summary>
/// Writes a panel as one HTML file that needs nothing else: its drawings, faces and lists, which can be operated. See the README of
/// this folder for what the page promises to those that build upon it.
/// </summary>
public static class PanelPage
{
    /// <summary>The document. The same request gives the same text on every machine.</summary>
    public static string Write(PageRequest request)
    {
        var pack = request.Pack ?? PackBuilder.Draw(request.Context ?? new AnalysisContext(request.Panel), request.Findings);
        var page = new Markup();
        page.Made("<!DOCTYPE html>\n").Open("html", ("lang", "en"));
        WriteHead(page, request, pack);
        WriteBody(page, request, pack);
        return page.Close().Made("\n").ToString();
    }

    private static void WriteHead(Markup page, PageRequest request, DrawnPack pack)
    {
        var style = PageResources.Style + SheetFonts.Faces(pack.Sheets.SelectMany(s => s.Marks).OfType<TextMark>());
        page.Open("head").Void("meta", ("charset", "utf-8"))
            .Void("meta", ("http-equiv", "Content-Security-Policy"), ("content", PolicyOf(request, style)))
            .Void("meta", ("name", "viewport"), ("content", "width=device-width, initial-scale=1"))
            .Void("meta", ("name", "color-scheme"), ("content", "light dark"))
            .Line("title", TitleOf(request))
            .Open("style").Made(style).Close().Close();
    }

    /// <summary>Nothing is loaded and nothing runs but what this library wrote; a page that is served may also ask its server.</summary>
    private static string PolicyOf(PageRequest request, string style)
    {
        var scripts = ScriptsOf(request).Select(PageResources.HashOf);
        return $"default-src 'none'; script-src {string.Join(' ', scripts)}; style-src {PageResources.HashOf(style)}; font-src data:; "
            + (request.ConnectsToItsServer ? "connect-src 'self'; " : "") + "base-uri 'none'; form-action 'none'";
    }

    private static ImmutableArray<string> ScriptsOf(PageRequest request)
    {
        if (request.AddedScript.Contains("</", StringComparison.Ordinal)) throw new ArgumentException("A script in a page cannot hold '</'.", nameof(request));
        return request.AddedScript.Length == 0 ? [PageResources.Script] : [PageResources.Script, request.AddedScript];
    }

    private static void WriteBody(Markup page, PageRequest request, DrawnPack pack)
    {
        page.Open("body").Open("header").Line("h1", TitleOf(request)).Close()
            .Open("div", ("id", "preview")).Close()
            .Open("main", ("id", "content"));
        foreach (var sheet in pack.Sheets.Where(s => s.Kind is SheetKind.Circuit or SheetKind.Wiring or SheetKind.Faces))
        {
            page.Open("section", ("class", "sheet")).Line("h2", sheet.Title)
                .Made(SvgWriter.WritePart(sheet.Marks, (sheet.Size.WidthMm, sheet.Size.HeightMm), sheet.Title)).Close();
        }

        var context = (request.Context ?? new AnalysisContext(request.Panel)).Sized;
        foreach (var table in ReportLists.All.SelectMany(l => l.Build(context)).Where(t => !t.Rows.IsEmpty)) WriteTable(page, table);
        page.Close();
        foreach (var script in ScriptsOf(request)) page.Open("script").Made(script).Close();
        page.Close();
    }

    private static void WriteTable(Markup page, ReportTable table)
    {
        page.Open("table").Line("caption", table.Title).Open("thead").Open("tr");
        foreach (var column in table.Columns) page.Line("th", column.Header, ("scope", "col"));
        page.Close().Close().Open("tbody");
        foreach (var row in table.Rows)
        {
            page.Open("tr");
            foreach (var cell in row) page.Line("td", cell);
            page.Close();
        }

        page.Close().Close();
    }

    private static string TitleOf(PageRequest request) =>
        request.Panel.Title.Title.Length > 0 ? request.Panel.Title.Title : Path.GetFileNameWithoutExtension(request.FileName);
}
