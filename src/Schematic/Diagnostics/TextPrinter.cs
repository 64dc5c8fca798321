using System.Globalization;
using Schematic.Text;

namespace Schematic.Diagnostics;

/// <summary>
/// Prints findings for people: place, severity, rule, sentence, the line with a mark below the span, other places, the path,
/// and what to do. Only ASCII is added to the user's own text.
/// </summary>
/// <param name="theme">Colours.</param>
/// <param name="lineWidth">Widest excerpt of a line in columns.</param>
public sealed class TextPrinter(TextTheme theme, int lineWidth = 100)
{
    /// <summary>
    /// The folder that file names are relative to, as the user wrote it and with its slash, so that a terminal or an editor
    /// finds the place.
    /// </summary>
    public string Folder { get; init; } = "";

    /// <summary>Prints all findings and a last line that counts them.</summary>
    public void Print(IReadOnlyCollection<Diagnostic> diagnostics, TextWriter output)
    {
        foreach (var diagnostic in diagnostics)
        {
            Print(diagnostic, output);
            output.Write('\n');
        }

        output.Write(Summary(diagnostics) + "\n");
    }

    /// <summary>The line that counts findings: <c>2 errors, 1 warning</c>, or <c>nothing found</c>.</summary>
    public static string Summary(IReadOnlyCollection<Diagnostic> diagnostics)
    {
        var counts = from severity in new[] { Severity.Error, Severity.Warning, Severity.Note }
                     let count = diagnostics.Count(d => d.Severity == severity)
                     where count > 0
                     select $"{count.ToString(CultureInfo.InvariantCulture)} {Word(severity)}{(count == 1 ? "" : "s")}";
        var text = string.Join(", ", counts);
        return text.Length == 0 ? "nothing found" : text;
    }

    private void Print(Diagnostic diagnostic, TextWriter output)
    {
        var colour = theme.Of(diagnostic.Severity);
        var place = Place(diagnostic.Span);
        output.Write(place.Length == 0 ? "" : $"{place}: ");
        output.Write($"{colour}{Word(diagnostic.Severity)}{theme.Reset} {theme.Quiet}{diagnostic.Rule}{theme.Reset}: ");
        output.Write($"{theme.Message}{HiddenCharacters.Show(diagnostic.Message)}{theme.Reset}\n");
        PrintExcerpt(diagnostic.Span, colour, '^', output);
        foreach (var related in diagnostic.Related)
        {
            var there = Place(related.Span);
            output.Write($"   {theme.Quiet}{(there.Length == 0 ? "also" : there)}:{theme.Reset} {HiddenCharacters.Show(related.Message)}\n");
            PrintExcerpt(related.Span, theme.Quiet, '-', output);
        }

        foreach (var step in diagnostic.Trace) output.Write($"   {theme.Quiet}{step.Label}:{theme.Reset} {step}\n");
        foreach (var assumed in diagnostic.Assumed) output.Write($"   {theme.Quiet}assumed:{theme.Reset} {assumed}\n");
        if (diagnostic.Help is { } help) output.Write($"   {theme.Help}help:{theme.Reset} {help}\n");
    }

    private void PrintExcerpt(SourceSpan span, string colour, char mark, TextWriter output)
    {
        if (span.Source.FileName.Length == 0) return;
        var excerpt = SourceExcerpt.Of(span.Source, span.Span, lineWidth);
        var number = span.Start.Line.ToString(CultureInfo.InvariantCulture).PadLeft(5);
        output.Write($"{theme.Quiet}{number} |{theme.Reset}{(excerpt.Text.Length == 0 ? "" : " ")}{excerpt.Text}\n");
        output.Write($"{theme.Quiet}      |{theme.Reset} {new string(' ', excerpt.MarkColumn)}{colour}{new string(mark, excerpt.MarkWidth)}{theme.Reset}\n");
    }

    private string Place(SourceSpan span) => span.Source.FileName.Length == 0 ? "" : HiddenCharacters.Show(Folder + span);

    private static string Word(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Warning => "warning",
        _ => "note",
    };
}
