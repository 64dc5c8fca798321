using System.Collections.Immutable;
using System.Text;

namespace Schematic.Language;

/// <summary>Lays out lines that belong together in columns.</summary>
internal static class LineAligner
{
    private const int Indent = 2;

    /// <summary>A block on the line of its statement is put in a column only as far right as this.</summary>
    private const int FarthestBlock = 72;

    /// <summary>The lines as text.</summary>
    public static IEnumerable<string> Render(ImmutableArray<FormatLine> group)
    {
        var texts = Columns(group).ToArray();
        var column = group.Zip(texts).Where(l => l.First.Comment is not null && !l.First.Units.IsEmpty)
            .Select(l => l.Second.Length).DefaultIfEmpty().Max();
        return group.Zip(texts, (line, text) => WithComment(line, text, column));
    }

    private static string WithComment(FormatLine line, string text, int column)
    {
        if (line.AsWritten is not null) return line.AsWritten;
        if (line.Comment is null) return text;
        return line.Units.IsEmpty
            ? new string(' ', Indent * line.Depth) + line.Comment
            : text.PadRight(column) + "  " + line.Comment;
    }

    private static IEnumerable<string> Columns(ImmutableArray<FormatLine> group)
    {
        var widths = WidthsOf(group);
        var blockColumn = BlockColumn(group, widths);
        return group.Zip(widths, (line, width) => RenderUnits(line, width, line.Units.Length, blockColumn));
    }

    /// <summary>For each line the widths of its columns; zero where a word is in no column.</summary>
    private static ImmutableArray<int[]> WidthsOf(ImmutableArray<FormatLine> group)
    {
        ImmutableArray<int[]> widths = [.. group.Select(l => new int[l.Units.Length])];
        if (group.Length < 2) return widths;
        AlignColumn(group, widths, 0, _ => true);
        if (group[0].Depth == 0) AlignColumn(group, widths, 1, IsDeclaration);
        var start = 0;
        for (var i = 1; i <= group.Length; i++)
        {
            if (i < group.Length && group[i].Shape == group[start].Shape) continue;
            if (i - start > 1) AlignAll(group, widths, start, i);
            start = i;
        }

        return widths;
    }

    private static bool IsDeclaration(FormatLine line) =>
        line.Units[1].Kind is FormatUnitKind.Word or FormatUnitKind.Terminal && !SettingGrammar.IsSetting(line.Units[0].Text);

    /// <summary>Puts the words at one index in a column, in the lines where another word follows.</summary>
    private static void AlignColumn(
        ImmutableArray<FormatLine> group, ImmutableArray<int[]> widths, int column, Func<FormatLine, bool> takesPart)
    {
        var lines = Enumerable.Range(0, group.Length)
            .Where(i => group[i].Units.Length > column + 1 && takesPart(group[i])).ToList();
        var width = lines.Select(i => group[i].Units[column].Text.Length).DefaultIfEmpty().Max();
        foreach (var i in lines) widths[i][column] = width;
    }

    private static void AlignAll(ImmutableArray<FormatLine> group, ImmutableArray<int[]> widths, int start, int end)
    {
        var columns = Enumerable.Range(start, end - start).Min(i => AlignedColumns(group[i]));
        for (var column = 0; column < columns; column++)
        {
            if (widths[start][column] > 0 || group[start].Units[column + 1].Kind == FormatUnitKind.Close) continue;
            var width = 0;
            for (var i = start; i < end; i++) width = Math.Max(width, group[i].Units[column].Text.Length);
            for (var i = start; i < end; i++) widths[i][column] = width;
        }
    }

    /// <summary>A condition is read as a sentence: nothing after the word that begins it is put in columns.</summary>
    private static int AlignedColumns(FormatLine line)
    {
        for (var i = 0; i < line.Units.Length; i++)
        {
            if (line.Units[i].Text is "when" or "unless") return i;
        }

        return line.Units.Length - 1;
    }

    /// <summary>Where the blocks of a group begin, so that they stand below one another; zero when they are not moved.</summary>
    private static int BlockColumn(ImmutableArray<FormatLine> group, ImmutableArray<int[]> widths)
    {
        if (group.Length < 2 || group[0].Depth > 0) return 0;
        var column = 0;
        for (var i = 0; i < group.Length; i++)
        {
            var block = BlockIndex(group[i]);
            if (block < 0) continue;
            column = Math.Max(column, RenderUnits(group[i], widths[i], block, 0).Length + 1);
        }

        return column <= FarthestBlock ? column : 0;
    }

    private static int BlockIndex(FormatLine line)
    {
        for (var i = 0; i < line.Units.Length; i++)
        {
            if (line.Units[i].Kind == FormatUnitKind.Open) return i;
        }

        return -1;
    }

    private static string RenderUnits(FormatLine line, int[] widths, int count, int blockColumn)
    {
        var text = new StringBuilder(new string(' ', Indent * line.Depth));
        var block = BlockIndex(line);
        for (var i = 0; i < count; i++)
        {
            if (i > 0) text.Append(' ', i == block && blockColumn > 0 ? Math.Max(1, blockColumn - text.Length) : BlanksBefore(line, widths, i));
            text.Append(line.Units[i].Text);
        }

        return text.ToString();
    }

    private static int BlanksBefore(FormatLine line, int[] widths, int index)
    {
        var unit = line.Units[index];
        var before = line.Units[index - 1];
        var isMark = IsMark(unit.Kind) || IsMark(before.Kind);
        if (widths[index - 1] == 0) return isMark || index == 1 ? 1 : unit.Gap;
        var stands = !isMark && index > 1 && before.Text != "->"
            && unit.Kind is FormatUnitKind.Quantity or FormatUnitKind.Terminal or FormatUnitKind.Text;
        return widths[index - 1] - before.Text.Length + (stands ? 2 : 1);
    }

    private static bool IsMark(FormatUnitKind kind) =>
        kind is FormatUnitKind.Open or FormatUnitKind.Close or FormatUnitKind.Separator;
}
