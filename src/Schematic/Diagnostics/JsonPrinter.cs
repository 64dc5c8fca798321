using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Schematic.Text;

namespace Schematic.Diagnostics;

/// <summary>Prints findings for machines. The form is described in <c>Diagnostics/README.md</c> and counted by <see cref="Version"/>.</summary>
public static class JsonPrinter
{
    /// <summary>The version of the form: raised when a field is taken away or changes its meaning, not when one is added.</summary>
    public const int Version = 1;

    private static readonly JsonWriterOptions Options = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Prints all findings about <paramref name="file"/>, the name given on the command line.</summary>
    public static void Print(string file, IReadOnlyCollection<Diagnostic> diagnostics, TextWriter output)
    {
        using var bytes = new MemoryStream();
        using (var writer = new Utf8JsonWriter(bytes, Options))
        {
            writer.WriteStartObject();
            writer.WriteString("format", "schematic-findings");
            writer.WriteNumber("version", Version);
            writer.WriteString("file", HiddenCharacters.Show(file));
            writer.WriteNumber("errors", diagnostics.Count(d => d.Severity == Severity.Error));
            writer.WriteNumber("warnings", diagnostics.Count(d => d.Severity == Severity.Warning));
            writer.WriteNumber("notes", diagnostics.Count(d => d.Severity == Severity.Note));
            writer.WriteStartArray("findings");
            foreach (var diagnostic in diagnostics) Write(writer, diagnostic);
            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        output.Write(Encoding.UTF8.GetString(bytes.GetBuffer(), 0, (int)bytes.Length));
        output.Write('\n');
    }

    private static void Write(Utf8JsonWriter writer, Diagnostic diagnostic)
    {
        writer.WriteStartObject();
        writer.WriteString("rule", diagnostic.Rule);
        writer.WriteString("severity", diagnostic.Severity switch
        {
            Severity.Error => "error",
            Severity.Warning => "warning",
            _ => "note",
        });
        writer.WriteString("message", diagnostic.Message);
        writer.WriteString("help", diagnostic.Help);
        Write(writer, "span", diagnostic.Span);
        writer.WriteStartArray("related");
        foreach (var related in diagnostic.Related)
        {
            writer.WriteStartObject();
            writer.WriteString("message", related.Message);
            Write(writer, "span", related.Span);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        writer.WriteStartArray("trace");
        foreach (var line in diagnostic.Trace) writer.WriteStringValue(line);
        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter writer, string name, SourceSpan span)
    {
        if (span.Source.FileName.Length == 0)
        {
            writer.WriteNull(name);
            return;
        }

        var end = span.Source.PositionOf(span.Span.End);
        writer.WriteStartObject(name);
        writer.WriteString("file", HiddenCharacters.Show(span.Source.FileName));
        writer.WriteNumber("offset", span.Span.Start);
        writer.WriteNumber("length", span.Span.Length);
        writer.WriteNumber("line", span.Start.Line);
        writer.WriteNumber("column", span.Start.Column);
        writer.WriteNumber("end_line", end.Line);
        writer.WriteNumber("end_column", end.Column);
        writer.WriteEndObject();
    }
}
