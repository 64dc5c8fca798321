using System.Collections.Immutable;
using Schematic.Binding;
using Schematic.Language;
using Schematic.Model;
using Schematic.Text;

namespace Schematic.Editor;

/// <summary>What each file of a panel declares, and what a name in it stands for.</summary>
internal sealed class FileNames
{
    private readonly Dictionary<string, Dictionary<string, NamedThing>> _declared = new(StringComparer.Ordinal);
    private readonly Dictionary<(string File, string Name), string> _used = [];
    private readonly Dictionary<string, string> _prefix = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Part> _parts;

    public FileNames(LoadResult loaded)
    {
        _parts = loaded.Panel.Parts.DistinctBy(p => p.Designator).ToDictionary(p => p.Designator, StringComparer.Ordinal);
        _prefix[loaded.Syntaxes[0].Source.FileName] = "";
        var targets = loaded.Used.ToLookup(u => u.Path);
        foreach (var used in loaded.Used) _prefix.TryAdd(used.FileName, used.Prefix);
        foreach (var syntax in loaded.Syntaxes)
        {
            var file = syntax.Source.FileName;
            var own = _declared[file] = new Dictionary<string, NamedThing>(StringComparer.Ordinal);
            foreach (var statement in syntax.Statements)
            {
                foreach (var (kind, first, last) in statement.Accept(GivenNames.Instance))
                {
                    foreach (var name in Count(first, last)) own.TryAdd(name, new NamedThing(kind, file, name));
                }

                if (statement is UseSyntax use && targets[new SourceSpan(syntax.Source, use.Path.Span)].FirstOrDefault() is { } target)
                    _used[(file, use.Name.Text)] = target.FileName;
            }
        }
    }

    /// <summary>The names of a range, or the one name; the first and the last where the range cannot be counted.</summary>
    public static IReadOnlyList<string> Count(WordSyntax first, WordSyntax? last, ImmutableArray<string> order = default)
    {
        var names = new NameRanges(new BindingReporter()).Expand(first, last, new Scope(SourceSpan.None.Source, ""), order);
        return names.Count > 0 ? names : last is null ? [first.Text] : [first.Text, last.Text];
    }

    /// <summary>What a file declares under a name; null when nothing.</summary>
    public NamedThing? Own(string file, string name) => _declared.GetValueOrDefault(file)?.GetValueOrDefault(name);

    /// <summary>The file that is taken in under a name; null when none.</summary>
    public string? UsedAs(string file, string name) => _used.GetValueOrDefault((file, name));

    /// <summary>The part itself, as it was bound; null where it could not be.</summary>
    public Part? PartOf(NamedThing thing) =>
        thing.Kind == NamedKind.Part && _prefix.TryGetValue(thing.File, out var prefix) ? _parts.GetValueOrDefault(prefix + thing.Name) : null;
}

/// <summary>The names that a statement gives, as written: the first and, of a range, the last.</summary>
internal sealed class GivenNames : IStatementVisitor<IEnumerable<(NamedKind Kind, WordSyntax First, WordSyntax? Last)>>
{
    public static readonly GivenNames Instance = new();

    public IEnumerable<(NamedKind Kind, WordSyntax First, WordSyntax? Last)> Visit(PartSyntax part) => [(NamedKind.Part, part.Designator, part.Through)];

    public IEnumerable<(NamedKind Kind, WordSyntax First, WordSyntax? Last)> Visit(ActuatorSyntax actuator) =>
        [(NamedKind.Actuator, actuator.Name, actuator.Through)];

    public IEnumerable<(NamedKind Kind, WordSyntax First, WordSyntax? Last)> Visit(SwitchSyntax pole) => [(NamedKind.Part, pole.First, pole.Last)];

    public IEnumerable<(NamedKind Kind, WordSyntax First, WordSyntax? Last)> Visit(WireSyntax wire) => [(NamedKind.Wire, wire.Name, wire.Through)];

    public IEnumerable<(NamedKind Kind, WordSyntax First, WordSyntax? Last)> Visit(CableSyntax cable) => [(NamedKind.Cable, cable.Designator, cable.Through)];

    /// <summary>Nothing refers to a net, and its name may be that of a part as well: it is no name of the others' set.</summary>
    public IEnumerable<(NamedKind Kind, WordSyntax First, WordSyntax? Last)> Visit(NetSyntax net) => [];

    public IEnumerable<(NamedKind Kind, WordSyntax First, WordSyntax? Last)> Visit(LockSyntax actuatorLock) => [];

    public IEnumerable<(NamedKind Kind, WordSyntax First, WordSyntax? Last)> Visit(ExpectSyntax expect) => [];

    public IEnumerable<(NamedKind Kind, WordSyntax First, WordSyntax? Last)> Visit(NeverSyntax never) => [];

    public IEnumerable<(NamedKind Kind, WordSyntax First, WordSyntax? Last)> Visit(PlaceSyntax place) => [];

    public IEnumerable<(NamedKind Kind, WordSyntax First, WordSyntax? Last)> Visit(AlternativeSyntax alternative) => [];

    public IEnumerable<(NamedKind Kind, WordSyntax First, WordSyntax? Last)> Visit(SettingSyntax setting) => [];

    public IEnumerable<(NamedKind Kind, WordSyntax First, WordSyntax? Last)> Visit(UseSyntax use) => [(NamedKind.UsedFile, use.Name, null)];

    public IEnumerable<(NamedKind Kind, WordSyntax First, WordSyntax? Last)> Visit(UnreadableSyntax unreadable) => unreadable.Keyword.Text switch
    {
        "net" => [],
        "wire" => [(NamedKind.Wire, unreadable.First, unreadable.Last)],
        "actuator" => [(NamedKind.Actuator, unreadable.First, unreadable.Last)],
        "cable" => [(NamedKind.Cable, unreadable.First, unreadable.Last)],
        _ => [(NamedKind.Part, unreadable.First, unreadable.Last)],
    };
}
