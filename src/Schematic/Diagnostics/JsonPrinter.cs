using System.Collections.Immutable;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using Schematic.Text;

namespace Schematic.Diagnostics;

/// <summary>Prints findings for machines. The form is described in <c>Diagnostics/README.md</c> and counted by <see cref="Version"/>.</summary>
public static class JsonPrinter
{
    /// <summary>The version of the form: raised when a field is taken away or changes its meaning, not when one is added.</summary>
    public const int Version = 2;

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
        writer.WriteStartArray("repairs");
        foreach (var repair in diagnostic.Repairs)
        {
            writer.WriteStartObject();
            writer.WriteString("title", repair.Title);
            Write(writer, "span", repair.Span);
            writer.WriteString("text", repair.Text);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        Write(writer, diagnostic.Subjects);
        Write(writer, diagnostic.Values);
        writer.WriteStartArray("assumed");
        foreach (var assumed in diagnostic.Assumed) writer.WriteStringValue(assumed);
        writer.WriteEndArray();
        writer.WriteStartArray("trace");
        foreach (var step in diagnostic.Trace) step.Accept(new StepWriter(writer));
        writer.WriteEndArray();
        writer.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter writer, ImmutableArray<Subject> subjects)
    {
        writer.WriteStartArray("subjects");
        foreach (var subject in subjects)
        {
            writer.WriteStartObject();
            writer.WriteString("kind", Word(subject.Kind));
            writer.WriteString("name", subject.Name);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void Write(Utf8JsonWriter writer, ImmutableArray<FindingValue> values)
    {
        writer.WriteStartArray("values");
        foreach (var value in values)
        {
            writer.WriteStartObject();
            writer.WriteString("name", value.Name);
            writer.WriteNumber("value", value.Value);
            writer.WriteString("unit", value.Unit);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static string Word(Enum value) => value.ToString().ToLowerInvariant();

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

    private sealed class StepWriter(Utf8JsonWriter writer) : ITraceVisitor
    {
        public void Visit(MoveStep move)
        {
            Begin(move);
            writer.WriteString("action", Word(move.Action));
            writer.WriteString("actuator", move.Actuator);
            writer.WriteString("position", move.Position);
            writer.WriteEndObject();
        }

        public void Visit(PathStep path)
        {
            Begin(path);
            writer.WriteString("from", path.From);
            writer.WriteStartArray("hops");
            foreach (var hop in path.Hops)
            {
                writer.WriteStartObject();
                writer.WriteString("over", Word(hop.Over));
                writer.WriteString("name", hop.Name);
                writer.WriteString("to", hop.To);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        public void Visit(StateStep state)
        {
            Begin(state);
            writer.WriteStartArray("things");
            foreach (var thing in state.Things)
            {
                writer.WriteStartObject();
                writer.WriteString("name", thing.Name);
                writer.WriteString("stands", thing.Stands);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        public void Visit(FactStep fact)
        {
            Begin(fact);
            Write(writer, fact.Subjects);
            Write(writer, fact.Values);
            writer.WriteEndObject();
        }

        private void Begin(TraceStep step)
        {
            writer.WriteStartObject();
            writer.WriteString("kind", step.Label);
            writer.WriteString("text", step.ToString());
        }
    }
}
