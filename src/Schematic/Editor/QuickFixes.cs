using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Diagnostics;
using Schematic.Language;
using Schematic.Text;

namespace Schematic.Editor;

/// <summary>A change of the text that puts a finding right.</summary>
/// <param name="Title">What it does, in a few words.</param>
/// <param name="Change">The change.</param>
/// <param name="IsCertain">Whether it is the only one.</param>
public sealed record QuickFix(string Title, TextChange Change, bool IsCertain);

/// <summary>The changes that put findings right: those that a finding carries, and those that have to look at the text around.</summary>
public static class QuickFixes
{
    /// <summary>Nothing is on the contact.</summary>
    private const string FloatingContact = "floating-contact";

    /// <summary>A device is on the contact inside the unit, and nothing outside.</summary>
    private const string NotWiredYet = "not-wired-yet";

    /// <summary>The changes for a finding; none where only a person can know.</summary>
    public static ImmutableArray<QuickFix> For(EditedPanel panel, Diagnostic finding) => finding.Rule is FloatingContact or NotWiredYet
        ? [.. LeftOpen(panel, finding)]
        : [.. finding.Repairs.Select(r => new QuickFix(r.Title, new TextChange(r.Span, r.Text), finding.Repairs.Length == 1))];

    /// <summary>Contacts with nothing on them are spare, or not traced yet: which, the user knows.</summary>
    private static IEnumerable<QuickFix> LeftOpen(EditedPanel panel, Diagnostic finding)
    {
        var contacts = finding.Subjects.Where(s => s.Kind == SubjectKind.Terminal).Select(s => s.Name[(s.Name.LastIndexOf(':') + 1)..]).ToList();
        var syntax = panel.Loaded.Syntaxes.FirstOrDefault(s => ReferenceEquals(s.Source, finding.Span.Source));
        var part = syntax?.Statements.OfType<PartSyntax>().FirstOrDefault(p => p.Designator.Span == finding.Span.Span);
        if (part is null || contacts.Count == 0) yield break;
        foreach (var word in finding.Rule == NotWiredYet ? new[] { "spare" } : ["spare", "not-traced"])
        {
            if (InBlock(syntax!.Source, part, word, NameList.Compact(contacts)) is { } change)
                yield return new QuickFix($"write `{word} {NameList.Compact(contacts)}`", change, IsCertain: false);
        }
    }

    /// <summary>Adds contacts to a list in a block: to the list that is there, or as a line of its own; null without a block.</summary>
    private static TextChange? InBlock(SourceText source, PartSyntax part, string word, string contacts)
    {
        if (part.Block.FirstOrDefault(c => c.Keyword == word) is { } list)
            return new TextChange(new SourceSpan(source, new TextSpan(list.Span.End, 0)), " " + contacts);
        var close = part.Span.End - 1;
        if (close < 0 || source.Content[close] != '}') return null;
        var line = source.LineSpan(source.PositionOf(close).Line);
        var isAlone = source.Slice(TextSpan.FromBounds(line.Start, close)).Trim().IsEmpty;
        var at = isAlone ? line.Start : close;
        return new TextChange(new SourceSpan(source, new TextSpan(at, 0)), isAlone ? $"  {word} {contacts}\n" : $"; {word} {contacts} ");
    }
}
