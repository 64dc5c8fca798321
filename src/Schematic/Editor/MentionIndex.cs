using System.Collections.Immutable;
using Schematic.Binding;
using Schematic.Text;

namespace Schematic.Editor;

/// <summary>Every place where a name stands, in the file that is edited and in those that it uses.</summary>
public sealed class MentionIndex
{
    private readonly ImmutableDictionary<string, ImmutableArray<Mention>> _byFile;
    private readonly ILookup<NamedThing, Mention> _byThing;

    private MentionIndex(ImmutableDictionary<string, ImmutableArray<Mention>> byFile)
    {
        _byFile = byFile;
        _byThing = byFile.Values.SelectMany(m => m).ToLookup(m => m.Thing);
    }

    /// <summary>Collects the names of a panel.</summary>
    internal static MentionIndex Of(LoadResult loaded)
    {
        var names = new FileNames(loaded);
        return new MentionIndex(loaded.Syntaxes.ToImmutableDictionary(
            s => s.Source.FileName, s => new MentionCollector(s, names).Collect(), StringComparer.Ordinal));
    }

    /// <summary>What is named at a place: the shortest name that stands there, one that is written out before one that is counted.</summary>
    public Mention? At(string file, int offset) => _byFile.GetValueOrDefault(file, [])
        .Where(m => m.Span.Span.Start <= offset && offset <= m.Span.Span.End)
        .OrderBy(m => m.Span.Span.End == offset).ThenBy(m => m.IsCounted).ThenBy(m => m.Span.Span.Length).ThenBy(m => m.Span.Span.Start)
        .FirstOrDefault();

    /// <summary>Every place where a thing is named, file by file from top to bottom.</summary>
    public ImmutableArray<Mention> Of(NamedThing thing) =>
    [
        .. _byThing[thing].OrderBy(m => m.Span.Source.FileName, StringComparer.Ordinal)
            .ThenBy(m => m.Span.Span.Start).ThenBy(m => m.Span.Span.Length),
    ];

    /// <summary>Where a thing gets its name; for a contact that nobody names, where its part does.</summary>
    public ImmutableArray<SourceSpan> DeclarationsOf(NamedThing thing)
    {
        var own = Of(thing).Where(m => m.IsDeclaration).Select(m => m.Span).Distinct().ToImmutableArray();
        return own.IsEmpty && thing.Kind == NamedKind.Contact
            ? DeclarationsOf(new NamedThing(NamedKind.Part, thing.File, thing.Owner))
            : own;
    }

    /// <summary>The things that a file declares, in the order of its text.</summary>
    public IEnumerable<NamedThing> DeclaredIn(string file) =>
        _byFile.GetValueOrDefault(file, []).Where(m => m.IsDeclaration).Select(m => m.Thing).Distinct();
}
