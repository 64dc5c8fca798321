using Schematic.Text;

namespace Schematic.Diagnostics;

/// <summary>A change of the text that puts a finding right, so that an editor can make it.</summary>
/// <param name="Title">What it does, in a few words: <c>write `connector`</c>.</param>
/// <param name="Span">What is taken out; empty where text is only put in.</param>
/// <param name="Text">What is put in its place.</param>
public sealed record Repair(string Title, SourceSpan Span, string Text)
{
    /// <summary>Writes one word in the place of another.</summary>
    public static Repair Write(SourceSpan span, string text) => new($"write `{text}`", span, text);
}
