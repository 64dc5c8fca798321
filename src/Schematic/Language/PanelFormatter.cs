using System.Collections.Immutable;
using System.Text;
using Schematic.Diagnostics;
using Schematic.Text;

namespace Schematic.Language;

/// <summary>
/// Lays a panel file out evenly: two blanks of indent for each block, one blank between words (two where the user left a wider
/// gap), neighbouring lines in columns, comments at their side. Words, their order, comments and line breaks stay as they are.
/// </summary>
public static class PanelFormatter
{
    /// <summary>
    /// Formats a text. A text with errors comes back unchanged: what cannot be read is not moved. Formatting twice gives the
    /// same as formatting once.
    /// </summary>
    public static string Format(string text)
    {
        var syntax = PanelParser.Parse(new SourceText("", text));
        if (syntax.Diagnostics.Any(d => d.Severity == Severity.Error)) return text;
        var output = new StringBuilder(text.Length);
        foreach (var group in Groups(FormatLines.Read(text)))
        {
            foreach (var line in LineAligner.Render(group)) output.Append(line).Append('\n');
        }

        return output.ToString();
    }

    /// <summary>
    /// Runs of lines that are laid out together: single-line statements of one depth without a blank line or a comment of its
    /// own between them. Any other line stands alone.
    /// </summary>
    private static IEnumerable<ImmutableArray<FormatLine>> Groups(IEnumerable<FormatLine> lines)
    {
        var group = ImmutableArray.CreateBuilder<FormatLine>();
        foreach (var line in lines)
        {
            if (group.Count > 0 && !(line.IsAlignable && group[^1].IsAlignable && line.Depth == group[^1].Depth))
                yield return group.DrainToImmutable();
            group.Add(line);
        }

        if (group.Count > 0) yield return group.DrainToImmutable();
    }
}
