using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Wiring;

/// <summary>A contact that two nets list.</summary>
public sealed class ContactInTwoNetsCheck : ICheck
{
    private const string Rule = "contact-in-two-nets";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Conflicts;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) =>
        context.Nets.Conflicts.Where(c => c.Kind == NetConflictKind.SharedContact).Select(Report);

    private static Diagnostic Report(NetConflict conflict)
    {
        var shared = conflict.Second.Members.Select(m => m.Terminal)
            .Intersect(conflict.First.Members.Select(m => m.Terminal)).ToImmutableArray();
        var contacts = NameList.Sentence(shared.Order().Select(t => t.ToString()));
        var verb = shared.Length == 1 ? "is" : "are";
        return new Diagnostic(
            Rule,
            Severity.Error,
            $"{contacts} {verb} listed in net {conflict.First.Name} and again in net {conflict.Second.Name}.",
            Listing(conflict.Second, shared[0]).Span)
        {
            Subjects = [.. shared.Order().Select(About.Terminal), About.Net(conflict.First), About.Net(conflict.Second)],
            Help = "Take the contact out of the net it does not belong to; if the two nets are one, write one statement.",
            Related = [new RelatedSpan(Listing(conflict.First, shared[0]).Span, $"listed in net {conflict.First.Name} here")],
        };
    }

    private static NetMember Listing(Net net, TerminalId terminal) => net.Members.First(m => m.Terminal == terminal);
}
