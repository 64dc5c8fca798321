using Schematic.Language;
using Schematic.Text;

namespace Schematic.Editor;

/// <summary>The change that brings a text into its usual form.</summary>
public static class FormatChange
{
    /// <summary>The change, no longer than it has to be, so that an editor keeps its place; null where the text has that form.</summary>
    public static TextChange? Of(SourceText source)
    {
        var (old, fresh) = (source.Content, PanelFormatter.Format(source.Content));
        if (old == fresh) return null;
        var start = old.AsSpan().CommonPrefixLength(fresh);
        var end = 0;
        while (end < Math.Min(old.Length, fresh.Length) - start && old[^(end + 1)] == fresh[^(end + 1)]) end++;
        while (IsInside(old, start)) start--;
        while (IsInside(old, old.Length - end)) end--;
        return new TextChange(new SourceSpan(source, TextSpan.FromBounds(start, old.Length - end)), fresh[start..^end]);
    }

    /// <summary>Whether a place lies inside a line end of two characters, or inside a character of two halves.</summary>
    private static bool IsInside(string text, int at) =>
        at > 0 && at < text.Length && ((text[at - 1] == '\r' && text[at] == '\n') || char.IsLowSurrogate(text[at]));
}
