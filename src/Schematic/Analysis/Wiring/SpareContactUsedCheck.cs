using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Analysis.Wiring;

/// <summary>
/// A contact that is declared spare and carries a wire or stands in a net. What the made unit has on it does not count:
/// declaring the unused poles of a salvaged unit spare is what the word is for.
/// </summary>
public sealed class SpareContactUsedCheck : ICheck
{
    private const string Rule = "spare-contact-used";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Conflicts;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        var reported = new HashSet<int>();
        foreach (var part in context.Panel.Parts)
        {
            var used = Spares(part)
                .Select(name => (Name: name, Use: FirstUse(context, part.At(name))))
                .Where(s => s.Use is not null && reported.Add(context.Connectivity.Fixed.ConductorOf(part.At(s.Name))))
                .ToImmutableArray();
            if (used.Length == 0) continue;
            var first = used[0].Use!.Value;
            var names = NameList.Compact(used.Select(u => u.Name));
            yield return new Diagnostic(
                Rule,
                Severity.Warning,
                $"{part.Designator}:{names} {(used.Length == 1 ? "is declared spare but is" : "are declared spare but are")} used by {first.User}.",
                first.Span)
            {
                Subjects = [.. used.Select(u => About.Terminal(part.At(u.Name)))],
                Help = $"Take {names} out of the spare contacts of {part.Designator}, or lead the harness to another contact.",
                Related = [new RelatedSpan(part.Span, "declared spare here")],
            };
        }
    }

    private static IEnumerable<string> Spares(Part part) => part.Terminals.Select(t => t.Name).Where(part.Spares.Contains);

    /// <summary>The harness's first use of the contact or of the one that meets it in a mated connector.</summary>
    private static (string User, SourceSpan Span)? FirstUse(AnalysisContext context, TerminalId spare)
    {
        foreach (var contact in context.MatesOf(spare).Prepend(spare))
        {
            if (context.WiresAt(contact).FirstOrDefault() is { } wire)
                return ($"wire {wire.Designator}", wire.From == contact ? wire.FromSpan : wire.ToSpan);
            if (context.NetsAt(contact).FirstOrDefault() is { } net)
                return ($"net {net.Name}", net.Members.First(m => m.Terminal == contact).Span);
        }

        return null;
    }
}
