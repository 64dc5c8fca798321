using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Wiring;

/// <summary>
/// A device whose two ends are one conductor in every position, so that it does nothing. A supply is left to the proof over
/// positions, which reports it as a short.
/// </summary>
public sealed class BridgedPartCheck : ICheck
{
    private const string Rule = "bridged-part";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Conflicts;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) =>
        from part in context.Panel.Parts
        from ends in PairsOf(part)
        let path = context.Nets.Sound.PathBetween(part.At(ends.From), part.At(ends.To))
        where path is not null
        select new Diagnostic(
            Rule,
            Severity.Error,
            $"{part.Designator} does nothing: its terminals {ends.From} and {ends.To} are joined outside it.",
            part.Span)
        {
            Help = "Follow the path and open it where it does not belong.",
            Related = [.. path.Joints.Where(j => j.Kind != JointKind.Attachment).Take(3)
                .Select(j => new RelatedSpan(j.Span, $"{j.From} and {j.To} are joined here"))],
            Subjects = [About.Part(part), About.Terminal(part.At(ends.From)), About.Terminal(part.At(ends.To))],
            Trace = [path.Step],
        };

    private static IEnumerable<TerminalPair> PairsOf(Part part) => part.Branches.Concat(
        part.ContactSets.SelectMany(s => s.Throws.Select(t => t.Terminal).Distinct().Select(t => new TerminalPair(s.Common, t))));
}
