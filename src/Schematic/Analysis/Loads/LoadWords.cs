using System.Collections.Immutable;
using Schematic.Diagnostics;

namespace Schematic.Analysis.Loads;

/// <summary>Words that the checks of quantities share.</summary>
internal static class LoadWords
{
    /// <summary>Error where a solved position shows it; a warning where only a bound does, which may be too high.</summary>
    public static Severity ErrorIfShown(bool isShown) => isShown ? Severity.Error : Severity.Warning;

    /// <summary>The position, then further facts.</summary>
    public static ImmutableArray<TraceStep> Trace(Extreme extreme, params IEnumerable<string> facts) =>
        [extreme.State ?? (TraceStep)new FactStep("in every position"), .. facts.Select(f => new FactStep(f))];

    /// <summary>
    /// Whether the setting of a load's own supply is the cause, or that no setting of it serves every load: told by rules of
    /// their own, so that one cause gives one finding.
    /// </summary>
    public static bool IsMatterOfSetting(AnalysisContext context, string load) =>
        context.Worst.Supplies.Any(s => s.IsWronglySet && s.Feeds.Contains(load));
}
