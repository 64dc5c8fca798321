using System.Collections.Immutable;
using System.Reflection;

namespace Schematic.Diagnostics;

/// <summary>
/// The pages of all rules, embedded from <c>Diagnostics/Rules</c>. A page is read when it is asked for: checking a file that
/// has no findings reads none.
/// </summary>
public static class RuleCatalogue
{
    private const string Prefix = "Schematic.RulePages.";
    private const string Suffix = ".md";

    /// <summary>The names of all rules, sorted.</summary>
    public static ImmutableArray<string> Rules { get; } =
    [
        .. Assembly.GetExecutingAssembly().GetManifestResourceNames()
            .Where(n => n.StartsWith(Prefix, StringComparison.Ordinal) && n.EndsWith(Suffix, StringComparison.Ordinal))
            .Select(n => n[Prefix.Length..^Suffix.Length])
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>The page of a rule, or null when there is no such rule.</summary>
    public static RulePage? Find(string rule)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(Prefix + rule + Suffix);
        if (stream is null) return null;
        using var reader = new StreamReader(stream);
        return RulePageReader.Read(reader.ReadToEnd());
    }
}
