using Schematic.Diagnostics;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>The lines of a text that the formatter leaves alone.</summary>
internal static class UnreadLines
{
    /// <summary>
    /// For each line (from one) whether it is left as it is: a finding stands on it, or a statement of it has one on another line.
    /// </summary>
    public static bool[] Of(SourceText source)
    {
        var unread = new bool[source.LineCount + 1];
        var (statements, cutting) = StatementCutter.Cut(source, Grammar.Forms.ContainsKey);
        var errors = cutting.Concat(PanelParser.Parse(source).Diagnostics).Where(d => d.Severity == Severity.Error).ToList();
        foreach (var error in errors) Mark(source, unread, error.Span.Span);
        if (errors.Count == 0) return unread;
        var spans = statements.Select(s => (From: LineOf(source, s.Span.Start), To: LineOf(source, s.Span.End))).ToList();

        // A statement that shares a line with a broken one is left alone too, and so is what shares a line with that. Statements
        // stand in order, so one way down and one way up reach them all.
        foreach (var (from, to) in spans) Spread(unread.AsSpan(from, to - from + 1));
        foreach (var (from, to) in Enumerable.Reverse(spans)) Spread(unread.AsSpan(from, to - from + 1));
        return unread;
    }

    private static void Spread(Span<bool> lines)
    {
        if (lines.Contains(true)) lines.Fill(true);
    }

    private static void Mark(SourceText source, bool[] unread, TextSpan span) =>
        unread.AsSpan(LineOf(source, span.Start), LineOf(source, span.End) - LineOf(source, span.Start) + 1).Fill(true);

    private static int LineOf(SourceText source, int position) => source.PositionOf(position).Line;
}
