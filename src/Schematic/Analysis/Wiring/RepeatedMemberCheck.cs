using System.Collections.Immutable;
using Schematic.Diagnostics;

namespace Schematic.Analysis.Wiring;

/// <summary>A contact that one net lists twice.</summary>
public sealed class RepeatedMemberCheck : ICheck
{
    private const string Rule = "repeated-net-member";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Conflicts;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) =>
        from net in context.Panel.Nets
        from same in net.Members.GroupBy(m => m.Terminal)
        let listings = same.ToImmutableArray()
        where listings.Length > 1
        select new Diagnostic(Rule, Severity.Warning, $"Net {net.Name} lists {same.Key} twice.", listings[1].Span)
        {
            Subjects = [About.Net(net), About.Terminal(same.Key)],
            Help = "Leave one out; perhaps another contact was meant.",
            Related = [new RelatedSpan(listings[0].Span, "first listed here")],
        };
}
