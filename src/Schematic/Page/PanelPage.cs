using System.Collections.Immutable;
using System.Globalization;
using Schematic.Analysis;
using Schematic.Diagnostics;
using Schematic.Fonts;
using Schematic.Layout.Pack;
using Schematic.Model;
using Schematic.Page.Content;
using Schematic.Page.Data;
using Schematic.Rendering;

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
        if (request.AddedScript.Contains("</", StringComparison.Ordinal)) throw new ArgumentException("A script in a page cannot hold '</'.", nameof(request));
        var name = DisplayedText.Of(request.FileName);
        var given = request.Context ?? new AnalysisContext(request.Panel);
        var context = given.Sized;
        var pack = request.Pack ?? PackBuilder.Draw(given, request.Findings);
        var data = PageDataWriter.Write(context, new PageElectrics(context.Positions), PageRingOut.Of(pack.RingOuts, name), name);
        ImmutableArray<PageSection> sections =
        [
            .. ListSections.Findings([.. request.Findings, .. pack.Findings]), .. new DrawingSections(context.Panel, pack.Sheets).All(), .. ListSections.Lists(context),
        ];
        var body = new Markup();
        WriteBody(body, request, sections, data);
        var style = PageResources.Style + PaperOf(context.Panel) + FacesFor(body.ToString());
        return new Markup().Made("<!DOCTYPE html>\n<html lang=\"en\">\n").Made(HeadOf(request, style)).Made(body.ToString()).Made("</html>\n").ToString();
    }

    private static string HeadOf(PageRequest request, string style) => new Markup().Open("head").Void("meta", ("charset", "utf-8"))
        .Void("meta", ("http-equiv", "Content-Security-Policy"), ("content", PolicyOf(request, style)))
        .Void("meta", ("name", "viewport"), ("content", "width=device-width, initial-scale=1"))
        .Void("meta", ("name", "color-scheme"), ("content", "light dark"))
        .Line("title", TitleOf(request))
        .Open("style", ("id", "page-style")).Made(style).Close().Close().ToString();

    /// <summary>Nothing is loaded and nothing runs but what this library wrote; a page that is served may also ask its server.</summary>
    private static string PolicyOf(PageRequest request, string style)
    {
        var scripts = ScriptsOf(request).Select(PageResources.HashOf);
        return $"default-src 'none'; script-src {string.Join(' ', scripts)}; style-src {PageResources.HashOf(style)}; font-src data:; "
            + (request.ConnectsToItsServer ? "connect-src 'self'; " : "") + "base-uri 'none'; form-action 'none'";
    }

    private static ImmutableArray<string> ScriptsOf(PageRequest request) =>
        request.AddedScript.Length == 0 ? [PageResources.Script] : [PageResources.Script, request.AddedScript];

    /// <summary>The paper that drawings are printed on, and what stands at the foot of all other pages.</summary>
    private static string PaperOf(Panel panel) => string.Create(
        CultureInfo.InvariantCulture,
        $"@page drawing{{size:{panel.Sheet.WidthMm:0.###}mm {panel.Sheet.HeightMm:0.###}mm;margin:0}}\n@media print{{.sheet{{height:{panel.Sheet.HeightMm - 1:0.###}mm}}.sheet svg{{height:{panel.Sheet.HeightMm - 1:0.###}mm}}}}\n@page{{@bottom-left{{content:\"{CssText(NameOf(panel))}\"}}@bottom-right{{content:\"page \" counter(page)}}}}\n");

    private static string NameOf(Panel panel) =>
        string.Join("  ", new[] { panel.Title.Number, panel.Title.Revision.Length > 0 ? "revision " + panel.Title.Revision : "", panel.Title.Title }.Where(w => w.Length > 0));

    /// <summary>Text inside a quoted string of a style: everything but letters and digits is written as its number.</summary>
    private static string CssText(string text) => string.Concat(DisplayedText.Of(text).EnumerateRunes()
        .Select(r => char.IsAsciiLetterOrDigit((char)Math.Min(r.Value, 0xFFFF)) ? r.ToString() : string.Create(CultureInfo.InvariantCulture, $"\\{r.Value:x} ")));

    /// <summary>The faces for every character of the page, and for whatever may be typed into it.</summary>
    private static string FacesFor(string text)
    {
        var used = new SortedSet<int>(Enumerable.Range(' ', '~' - ' ' + 1));
        foreach (var rune in (text + "−→←↔Ωµ·…✓✗").EnumerateRunes()) used.Add(rune.Value);
        return SheetFonts.Faces(used);
    }

    private static void WriteBody(Markup page, PageRequest request, ImmutableArray<PageSection> sections, string data)
    {
        page.Open("body").Line("a", "Skip to the drawings", ("class", "skip"), ("href", "#content"))
            .Open("header", ("id", "head"));
        WriteTitle(page, request);
        page.Close()
            .Open("div", ("id", "preview")).Close()
            .Open("noscript").Line("p", "This page can be read and printed without scripts. To operate it, let scripts run: they are part of this file and load nothing.").Close()
            .Open("div", ("id", "bench"))
            .Open("aside", ("id", "operate"), ("aria-label", "Operate and look up")).Close()
            .Open("main", ("id", "content"), ("tabindex", "-1"));
        foreach (var section in sections) WriteSection(page, section);
        WriteSection(page, new PageSection("ring-out", "Ring-out", _ => { }));
        page.Close().Close();
        page.Open("script", ("type", "application/json"), ("id", "panel-data")).Made(data).Close();
        foreach (var script in ScriptsOf(request)) page.Open("script").Made(script).Close();
        page.Close();
    }

    private static void WriteTitle(Markup page, PageRequest request)
    {
        var title = request.Panel.Title;
        page.Open("div", ("id", "title")).Line("h1", TitleOf(request));
        string[] words =
        [
            title.Number, title.Revision.Length > 0 ? "revision " + title.Revision : "", title.Date, title.Owner,
        ];
        page.Line("p", string.Join(" · ", words.Where(w => w.Length > 0)));
        if (request.Findings.Any(f => f.Severity == Severity.Error))
            page.Line("p", "NOT CHECKED: errors were found in the file. What is drawn here may be wrong.", ("class", "stamp"), ("role", "alert"));
        page.Close();
    }

    private static void WriteSection(Markup page, PageSection section)
    {
        page.Open("section", ("id", section.Id), ("aria-labelledby", section.Id + "-heading"))
            .Line("h2", section.Heading, ("id", section.Id + "-heading"));
        section.Write(page);
        page.Close();
    }

    private static string TitleOf(PageRequest request) =>
        request.Panel.Title.Title.Length > 0 ? request.Panel.Title.Title : Path.GetFileNameWithoutExtension(request.FileName);
}
