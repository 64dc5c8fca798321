using System.Collections.Immutable;
using Schematic.Language;
using Schematic.Text;

namespace Schematic.Editor;

/// <summary>A change of a text.</summary>
/// <param name="Span">What is taken out.</param>
/// <param name="Text">What is put in its place.</param>
public sealed record TextChange(SourceSpan Span, string Text);

/// <summary>What came of a wish to rename: the changes in all files, or why not.</summary>
/// <param name="Changes">The changes, file by file from top to bottom.</param>
/// <param name="Refusal">One sentence; null where the changes can be made.</param>
public sealed record RenameResult(ImmutableArray<TextChange> Changes, string? Refusal);

/// <summary>Gives a thing another name, wherever it is named.</summary>
public static class Renamer
{
    /// <summary>Why the thing cannot be renamed, in one sentence; null when it can.</summary>
    public static string? Refuse(NamedThing thing, IEnumerable<Mention> mentions)
    {
        var all = mentions.ToList();
        if (thing.Kind == NamedKind.Contact && !all.Exists(m => m.IsDeclaration && !m.IsCounted))
            return $"{thing} is named by the arrangement of its part, not by a word of its own.";
        return all.Find(m => m.IsCounted) is { } counted
            ? $"{thing} is counted out of a range ({Place(counted)}): write the names of that range out first."
            : null;
    }

    /// <summary>
    /// Renames a thing in all panels that name it, which may share files. The new name must be one that such a thing may have, and
    /// not yet be taken in the file that declares it.
    /// </summary>
    public static RenameResult Rename(NamedThing thing, string name, IReadOnlyCollection<EditedPanel> panels)
    {
        var mentions = panels.SelectMany(p => p.Mentions.Of(thing)).DistinctBy(m => (m.Span.Source.FileName, m.Span.Span)).ToList();
        if (Refuse(thing, mentions) is { } refusal) return new RenameResult([], refusal);
        var isSimple = thing.Kind is NamedKind.Part or NamedKind.Actuator or NamedKind.Cable or NamedKind.UsedFile;
        var length = isSimple ? Characters.ScanSimpleName(name) : Characters.ScanContact(name);
        if (length == 0 || length != name.Length) return new RenameResult([], $"`{name}` is no name: letters, digits, - and _, {(isSimple ? "a letter first" : "without blanks")}.");
        var taken = panels.SelectMany(p => p.Mentions.DeclaredIn(thing.File))
            .FirstOrDefault(t => t.Name == name && t.Owner == thing.Owner && t != thing && SharesNames(t.Kind, thing.Kind));
        return taken is not null
            ? new RenameResult([], $"`{name}` is taken already.")
            : new RenameResult(
                [
                    .. mentions.OrderBy(m => m.Span.Source.FileName, StringComparer.Ordinal).ThenBy(m => m.Span.Span.Start)
                        .Select(m => new TextChange(m.Span, name)),
                ],
                null);
    }

    private static bool SharesNames(NamedKind one, NamedKind other) =>
        one == other || (one is not (NamedKind.Net or NamedKind.Position or NamedKind.Contact) && other is not (NamedKind.Net or NamedKind.Position or NamedKind.Contact));

    private static string Place(Mention mention) => $"line {mention.Span.Start.Line}";
}
