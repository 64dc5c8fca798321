using System.Collections.Immutable;
using Schematic.Diagnostics;

namespace Schematic.Analysis.Wiring;

/// <summary>A net that joins nothing: it has one contact or none.</summary>
public sealed class SingleMemberNetCheck : ICheck
{
    private const string Rule = "single-member-net";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Gaps;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) =>
        from net in context.Panel.Nets
        let members = net.Members.Select(m => m.Terminal).Distinct().ToImmutableArray()
        where members.Length < 2
        select new Diagnostic(
            Rule,
            Severity.Warning,
            members.Length == 0 ? $"Net {net.Name} lists no contact." : $"Net {net.Name} lists {members[0]} alone, so it joins nothing.",
            net.Span)
        {
            Subjects = [About.Net(net), .. members.Select(About.Terminal)],
            Help = "List the contact at the other end, or leave the net out.",
        };
}
