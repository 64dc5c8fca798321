using System.Collections.Immutable;
using Schematic.Binding;
using Schematic.Language;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Bench.Readings;

/// <summary>From the text of a readings file to readings.</summary>
public static class ReadingsLoader
{
    /// <summary>The keywords that begin a statement, in ordinal order.</summary>
    public static ImmutableArray<string> StatementKeywords => [.. ReadingsGrammar.Forms.Keys.Order(StringComparer.Ordinal)];

    /// <summary>
    /// Reads a file against the panel that was measured; without one, against the connectors and actuators that it declares
    /// itself. Whatever the text is, the result is readings and findings, never an exception.
    /// </summary>
    public static ReadingsResult Load(SourceText source, Panel? panel)
    {
        var syntax = PanelParser.Parse(source, ReadingsGrammar.Forms);
        var report = new BindingReporter();
        report.AddAll(syntax.Diagnostics);
        var readings = new ReadingsBinder(syntax, panel, report).Bind();
        return new ReadingsResult(readings, [.. report.Found.OrderBy(d => d.Span.Span.Start).ThenBy(d => d.Span.Span.Length)]);
    }

    /// <summary>The panel file that a readings file names, or null: known before the file can be bound.</summary>
    public static string? PanelOf(SourceText source) =>
        PanelParser.Parse(source, ReadingsGrammar.Forms).Statements.OfType<ReadingsOfSyntax>().FirstOrDefault()?.Path?.Text;
}
