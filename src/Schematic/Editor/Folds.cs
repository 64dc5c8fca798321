using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Text;

namespace Schematic.Editor;

/// <summary>Lines that may be drawn together.</summary>
/// <param name="FirstLine">The first, from one; it stays to be seen.</param>
/// <param name="LastLine">The last.</param>
/// <param name="IsComment">Whether they are comments.</param>
public sealed record Fold(int FirstLine, int LastLine, bool IsComment)
{
    /// <summary>The blocks and the runs of comment lines of a file, from top to bottom.</summary>
    public static ImmutableArray<Fold> Of(PanelSyntax syntax)
    {
        var source = syntax.Source;
        var (statements, _) = StatementCutter.Cut(source, Grammar.Forms.ContainsKey);
        return [.. Blocks(source, statements).Concat(Comments(source)).Where(f => f.LastLine > f.FirstLine).OrderBy(f => f.FirstLine).ThenBy(f => f.LastLine)];
    }

    private static IEnumerable<Fold> Blocks(SourceText source, IEnumerable<RawStatement> statements)
    {
        foreach (var statement in statements)
        {
            if (statement.Block is not { } block) continue;
            yield return new Fold(source.PositionOf(statement.BlockStart).Line, source.PositionOf(statement.BlockEnd - 1).Line, IsComment: false);
            foreach (var inner in Blocks(source, block)) yield return inner;
        }
    }

    private static IEnumerable<Fold> Comments(SourceText source)
    {
        var first = 0;
        for (var line = 1; line <= source.LineCount + 1; line++)
        {
            var isComment = line <= source.LineCount && source.Slice(source.LineSpan(line)).TrimStart() is ['#', ..];
            if (isComment && first == 0) first = line;
            if (isComment || first == 0) continue;
            yield return new Fold(first, line - 1, IsComment: true);
            first = 0;
        }
    }
}
