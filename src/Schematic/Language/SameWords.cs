using System.Text;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>Whether two texts say the same: the same statements of the same words, the same findings, the same comments.</summary>
internal static class SameWords
{
    /// <summary>Compares two texts; blanks between words, and around commas, do not count.</summary>
    public static bool Are(string one, string other) => Fingerprint(one) == Fingerprint(other);

    private static string Fingerprint(string text)
    {
        var source = new SourceText("", text);
        var (statements, cutting) = StatementCutter.Cut(source, Grammar.Forms.ContainsKey);
        var print = new StringBuilder(text.Length);
        foreach (var statement in statements) Add(print, source, statement);
        var found = cutting.Concat(PanelParser.Parse(source).Diagnostics);
        foreach (var finding in found.GroupBy(f => f.Rule).OrderBy(g => g.Key, StringComparer.Ordinal))
            print.Append(finding.Key).Append(finding.Count());
        return print.Append('#').AppendJoin('#', StatementCutter.Comments(source)).ToString();
    }

    private static void Add(StringBuilder print, SourceText source, RawStatement statement)
    {
        AddWords(print, source.Slice(statement.Head));
        print.Append('\n');
        if (statement.Block is null) return;
        print.Append('{');
        foreach (var inner in statement.Block) Add(print, source, inner);
        print.Append('}');
    }

    private static void AddWords(StringBuilder print, ReadOnlySpan<char> head)
    {
        var wasBlank = false;
        for (var i = 0; i < head.Length;)
        {
            if (Characters.IsBlank(head[i]))
            {
                wasBlank = true;
                i++;
                continue;
            }

            var length = Math.Max(1, Characters.ScanString(head[i..]));
            if (wasBlank && head[i] != ',' && print[^1] != ',') print.Append(' ');
            print.Append(head.Slice(i, length));
            wasBlank = false;
            i += length;
        }
    }
}
