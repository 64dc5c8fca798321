namespace Schematic.Diagnostics;

/// <summary>The page of one rule.</summary>
/// <param name="Rule">The rule's name in words.</param>
/// <param name="Severity">The gravest severity its findings have.</param>
/// <param name="Prose">What it finds, why that matters and what to do; in Markdown.</param>
/// <param name="Wrong">A panel file that breaks the rule, or empty where a file cannot show it.</param>
/// <param name="Right">The same put right, or empty.</param>
/// <param name="Text">The whole page.</param>
public sealed record RulePage(string Rule, Severity Severity, string Prose, string Wrong, string Right, string Text)
{
    /// <summary>The first sentence of the prose: what a list of rules shows.</summary>
    public string Summary
    {
        get
        {
            var paragraph = Prose.Split("\n\n")[0].ReplaceLineEndings(" ");
            var end = paragraph.IndexOf(". ", StringComparison.Ordinal);
            return end < 0 ? paragraph : paragraph[..(end + 1)];
        }
    }
}
