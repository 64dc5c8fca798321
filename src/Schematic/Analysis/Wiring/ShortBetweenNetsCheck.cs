using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Wiring;

/// <summary>Two nets that are one conductor without any wire: through mated contacts, jumpers, a board or the unit's inside.</summary>
public sealed class ShortBetweenNetsCheck : ICheck
{
    private const string Rule = "short-between-nets";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Conflicts;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context) =>
        context.Nets.Conflicts.Where(c => c.Kind == NetConflictKind.MadeJoint).Select(Report);

    private static Diagnostic Report(NetConflict conflict)
    {
        var terminals = conflict.Path.Terminals;
        return new Diagnostic(
            Rule,
            Severity.Error,
            $"Nets {conflict.First.Name} and {conflict.Second.Name} are one conductor: {terminals[0]} and {terminals[^1]} {Reason(conflict.Path)}.",
            Listing(conflict.Second, terminals[^1]).Span)
        {
            Help = "List each conductor in one net only, or give one of the nets another contact.",
            Related =
            [
                new RelatedSpan(Listing(conflict.First, terminals[0]).Span, $"{terminals[0]} is listed in net {conflict.First.Name} here"),
                .. conflict.Path.Joints.Select(j => new RelatedSpan(j.Span, Described(j))).Take(3),
            ],
            Subjects = [About.Net(conflict.First), About.Net(conflict.Second)],
            Trace = [conflict.Path.Step],
        };
    }

    private static string Reason(ConductorPath path) => path.Joints.Length > 1 ? "are joined"
        : path.Joints[0].Kind switch
        {
            JointKind.Mate => "plug into each other",
            JointKind.Jumper => "are joined by a jumper",
            JointKind.BoardGround => "are joined on the board",
            _ => "are joined inside the unit",
        };

    private static string Described(Joint joint) => joint.Kind switch
    {
        JointKind.Mate => $"{joint.From} and {joint.To} plug into each other",
        JointKind.Jumper => $"{joint.From} and {joint.To} have a jumper",
        JointKind.BoardGround => $"{joint.From} and {joint.To} are joined on the board",
        _ => $"{joint.From} is on {joint.To} inside the unit",
    };

    private static NetMember Listing(Net net, TerminalId terminal) =>
        net.Members.FirstOrDefault(m => m.Terminal == terminal) ?? net.Members[0];
}
