namespace Schematic.Diagnostics;

/// <summary>
/// Reads a rule page: <c># rule-name</c>, a line <c>severity: error</c>, prose, then <c>## Wrong</c> and <c>## Right</c>, each
/// with one fenced block of a panel file.
/// </summary>
public static class RulePageReader
{
    /// <summary>Reads the page in <paramref name="text"/>.</summary>
    /// <exception cref="FormatException">The page is not in that form: a slip of the program, held by a test.</exception>
    public static RulePage Read(string text)
    {
        text = text.ReplaceLineEndings("\n");
        var lines = text.Split('\n');
        if (!lines[0].StartsWith("# ", StringComparison.Ordinal)) throw new FormatException("A rule page begins with '# rule-name'.");
        var rule = lines[0][2..].Trim();
        var severityAt = Array.FindIndex(lines, l => l.StartsWith("severity:", StringComparison.Ordinal));
        if (severityAt < 0 || !Enum.TryParse<Severity>(lines[severityAt][9..].Trim(), ignoreCase: true, out var severity))
            throw new FormatException($"The page of {rule} has no line 'severity: error', 'warning' or 'note'.");
        var proseEnd = Array.FindIndex(lines, severityAt, l => l.StartsWith("## ", StringComparison.Ordinal));
        var prose = string.Join('\n', lines[(severityAt + 1)..(proseEnd < 0 ? lines.Length : proseEnd)]).Trim();
        return new RulePage(rule, severity, prose, Block(lines, "## Wrong"), Block(lines, "## Right"), text.TrimEnd() + "\n");
    }

    private static string Block(string[] lines, string heading)
    {
        var at = Array.FindIndex(lines, l => l.TrimEnd() == heading);
        if (at < 0) return "";
        var begin = Array.FindIndex(lines, at, l => l.StartsWith("```", StringComparison.Ordinal));
        var end = begin < 0 ? -1 : Array.FindIndex(lines, begin + 1, l => l.StartsWith("```", StringComparison.Ordinal));
        return end < 0
            ? throw new FormatException($"'{heading}' has no fenced block below it.")
            : string.Join('\n', lines[(begin + 1)..end]) + "\n";
    }
}
