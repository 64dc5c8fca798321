using System.Text;
using Schematic.Diagnostics;
using Schematic.Text;
using Xunit;

namespace Schematic.Tests.Language;

/// <summary>A panel text in which the places of findings are marked: <c>net A [[J9]]:1</c>.</summary>
internal static class MarkedText
{
    /// <summary>
    /// Checks that a text gives exactly the findings that its marks and <paramref name="expected"/> tell, in the order of the
    /// text: one line each, <c>rule: message</c>, followed by <c> -> help</c> where the help is checked too.
    /// </summary>
    public static void Gives(string marked, params string[] expected)
    {
        var (text, spans) = Unmark(marked);
        var found = TestPanels.Diagnose(text);
        var shown = found.Select((f, i) => Show(f, i < expected.Length && expected[i].Contains(" -> ", StringComparison.Ordinal)));
        Assert.Equal(expected, shown);
        Assert.Equal(spans.OrderBy(s => s.Start).ThenBy(s => s.Length), found.Select(f => f.Span.Span));
        Assert.All(found, f => Assert.False(string.IsNullOrWhiteSpace(f.Help)));
    }

    private static string Show(Diagnostic finding, bool withHelp) =>
        $"{finding.Rule}: {finding.Message}" + (withHelp ? $" -> {finding.Help}" : "");

    private static (string Text, List<TextSpan> Spans) Unmark(string marked)
    {
        var text = new StringBuilder();
        var open = new Stack<int>();
        var spans = new List<TextSpan>();
        for (var i = 0; i < marked.Length; i++)
        {
            var pair = i + 1 < marked.Length ? marked.Substring(i, 2) : "";
            if (pair == "[[") open.Push(text.Length);
            else if (pair == "]]") spans.Add(TextSpan.FromBounds(open.Pop(), text.Length));
            else
            {
                text.Append(marked[i]);
                continue;
            }

            i++;
        }

        return (text.ToString(), spans);
    }
}
