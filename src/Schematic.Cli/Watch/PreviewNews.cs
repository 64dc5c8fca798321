using System.Text.Json;
using Schematic.Diagnostics;
using Schematic.Text;

namespace Schematic.Cli.Watch;

/// <summary>What a served page is told: findings as plain text, and the page anew where the drawing is another.</summary>
internal static class PreviewNews
{
    private const int ExcerptWidth = 90;
    private const int MostFindings = 100;

    /// <summary>The news as JSON, for a page that shows the drawing of version <paramref name="drawing"/>.</summary>
    public static byte[] Write(Preview preview, int drawing)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes))
        {
            json.WriteStartObject();
            json.WriteNumber("version", preview.Version);
            json.WriteNumber("drawing", preview.Drawing);
            json.WriteBoolean("isStale", preview.IsStale);
            json.WriteString("summary", SummaryOf(preview));
            json.WriteString("trouble", preview.Trouble);
            json.WriteString("page", preview.Drawing == drawing ? null : preview.Page);
            json.WriteStartArray("findings");
            foreach (var finding in preview.Findings.Take(MostFindings)) Write(json, finding);
            json.WriteEndArray();
            json.WriteEndObject();
        }

        return bytes.ToArray();
    }

    private static string SummaryOf(Preview preview)
    {
        var found = TextPrinter.Summary(preview.Findings);
        return !preview.IsStale ? found
            : preview.Page is null ? $"{found}: nothing is drawn yet"
            : $"{found}: the drawing shows the file as it was before";
    }

    private static void Write(Utf8JsonWriter json, Diagnostic finding)
    {
        var hasPlace = finding.Span.Source.FileName.Length > 0;
        var excerpt = hasPlace ? SourceExcerpt.Of(finding.Span.Source, finding.Span.Span, ExcerptWidth) : null;
        json.WriteStartObject();
        json.WriteString("severity", finding.Severity.ToString().ToLowerInvariant());
        json.WriteString("rule", finding.Rule);
        json.WriteString("place", hasPlace ? HiddenCharacters.Show(finding.Span.ToString()) : "");
        json.WriteString("message", HiddenCharacters.Show(finding.Message));
        json.WriteString("help", finding.Help is { } help ? HiddenCharacters.Show(help) : null);
        json.WriteString("line", excerpt?.Text);
        json.WriteString("mark", excerpt is null ? null : new string(' ', excerpt.MarkColumn) + new string('^', excerpt.MarkWidth));
        json.WriteStartArray("trace");
        foreach (var step in finding.Trace) json.WriteStringValue(HiddenCharacters.Show($"{step.Label}: {step}"));
        json.WriteEndArray();
        json.WriteEndObject();
    }
}
