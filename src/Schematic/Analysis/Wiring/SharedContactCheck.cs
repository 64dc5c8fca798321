using System.Collections.Immutable;
using Schematic.Diagnostics;
using Schematic.Model;

namespace Schematic.Analysis.Wiring;

/// <summary>
/// A contact that two poles of one gang use, one of them as a throw. Each pole of a gang has contacts of its own (common
/// practice, no source), so a number was most likely written twice. Commons that are bridged inside a unit, and lamps or
/// coils with a common return, are usual and not reported.
/// </summary>
public sealed class SharedContactCheck : ICheck
{
    private const string Rule = "shared-contact";

    /// <inheritdoc/>
    public ImmutableArray<string> Rules { get; } = [Rule];

    /// <inheritdoc/>
    public CheckStage Stage => CheckStage.Conflicts;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Run(AnalysisContext context)
    {
        foreach (var contact in context.Panel.Attachments.GroupBy(a => a.Contact).Where(g => g.Skip(1).Any()))
        {
            var poles = contact
                .Select(a => (Attachment: a, Switch: context.Part(a.Device.Part) as Switch))
                .Where(p => p.Switch is not null)
                .DistinctBy(p => p.Attachment.Device.Part)
                .ToImmutableArray();
            foreach (var gang in poles.GroupBy(p => p.Switch!.Gang).Where(g => g.Skip(1).Any()))
            {
                var members = gang.ToImmutableArray();
                if (members.All(m => m.Attachment.Device.Name == m.Switch!.Pole.Common)) continue;
                yield return new Diagnostic(
                    Rule,
                    Severity.Warning,
                    $"{contact.Key} is a contact of {NameList.Sentence(members.Select(m => m.Attachment.Device.Part))} at once.",
                    members[1].Attachment.Span)
                {
                    Subjects = [About.Terminal(contact.Key), .. members.Select(m => About.Part(m.Attachment.Device.Part))],
                    Help = "Give each pole of the gang its own contact; look for a number that is written twice.",
                    Related = [new RelatedSpan(members[0].Attachment.Span, $"{members[0].Attachment.Device.Part} has it here")],
                };
            }
        }
    }
}
