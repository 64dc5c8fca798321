using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Diagnostics;

/// <summary>
/// One finding about a panel file, as data: printers turn it into text or JSON.
/// </summary>
/// <param name="Rule">The rule's name in words, such as <c>floating-contact</c>: the key of its page.</param>
/// <param name="Severity">How much it matters.</param>
/// <param name="Message">One sentence: what was found.</param>
/// <param name="Span">The place that caused it.</param>
public sealed record Diagnostic(string Rule, Severity Severity, string Message, SourceSpan Span)
{
    /// <summary>One sentence that says what to do, or null where the message says it already.</summary>
    public string? Help { get; init; }

    /// <summary>The same finding about a later version of the text, where its words stand elsewhere; no other place belongs to it.</summary>
    internal Diagnostic Moved(int by, SourceText source) => this with
    {
        Span = new SourceSpan(source, Span.Span.Moved(by)),
        Repairs = [.. Repairs.Select(r => r with { Span = new SourceSpan(source, r.Span.Span.Moved(by)) })],
    };

    /// <summary>
    /// Changes of the text that put it right: one where the help leaves no choice, several where the user has to choose.
    /// </summary>
    public ImmutableArray<Repair> Repairs { get; init; } = [];

    /// <summary>Other places that belong to the finding.</summary>
    public ImmutableArray<RelatedSpan> Related { get; init; } = [];

    /// <summary>
    /// What lets a person follow the finding with a finger on the drawing: the moves from rest, then the path contact by
    /// contact and what is so there.
    /// </summary>
    public ImmutableArray<TraceStep> Trace { get; init; } = [];

    /// <summary>What it is about, the chief thing first.</summary>
    public ImmutableArray<Subject> Subjects { get; init; } = [];

    /// <summary>What it rests on that the file does not state, a sentence each.</summary>
    public ImmutableArray<string> Assumed { get; init; } = [];

    /// <summary>The figures that it names.</summary>
    public ImmutableArray<FindingValue> Values { get; init; } = [];
}
