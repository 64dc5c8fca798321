using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Xunit;

namespace Schematic.Tests.House;

/// <summary>The library's folders are the pipeline; a folder uses those before it and never one behind.</summary>
public partial class ImportTests
{
    private static readonly string[] Order =
    [
        "Text", "Diagnostics", "Inserts", "Model", "Language", "Binding", "Analysis", "Reports", "Bench",
        "Fonts", "Drawing", "Symbols", "Layout", "Rendering", "Page", "Editor",
    ];

    /// <summary>The rooms of the layout: sheets of one kind never use those of another; only the pack knows all.</summary>
    private static readonly ImmutableArray<string> LayoutOrder =
        ["Shapes", "Tables", "Frame", "Inspection", "Labels", "LoadSheets", "ContactCharts", "Faces", "Circuits", "Wirings", "Pack"];

    private static readonly string Library = Repository.PathOf("src/Schematic");

    [Fact]
    public void Every_folder_of_the_library_has_its_place_in_the_order()
    {
        var folders = Directory.GetDirectories(Library).Select(Path.GetFileName).Except(["bin", "obj"]);
        Assert.Empty(folders.Except(Order));
    }

    [Fact]
    public void Imports_run_one_way()
    {
        var wrong =
            from file in SourceFiles()
            let folder = FolderOf(file)
            from used in Used(File.ReadAllText(file))
            where Array.IndexOf(Order, used) > Array.IndexOf(Order, folder)
            select $"{Path.GetRelativePath(Library, file)} uses {used}";
        Assert.Empty(wrong.Distinct());
    }

    [Fact]
    public void The_language_knows_text_and_diagnostics_alone()
    {
        string[] allowed = ["Text", "Diagnostics", "Language"];
        var wrong =
            from file in SourceFiles()
            where FolderOf(file) == "Language"
            from used in Used(File.ReadAllText(file))
            where !allowed.Contains(used)
            select $"{Path.GetRelativePath(Library, file)} uses {used}";
        Assert.Empty(wrong.Distinct());
    }

    /// <summary>
    /// Readings files have a grammar of their own, in a room of its own, and an editor is about text; nothing else behind the
    /// binding reads syntax.
    /// </summary>
    [Fact]
    public void Analysis_never_reads_syntax()
    {
        var wrong =
            from file in SourceFiles()
            where Array.IndexOf(Order, FolderOf(file)) >= Array.IndexOf(Order, "Analysis")
            where FolderOf(file) != "Editor" && !Path.GetRelativePath(Library, file).StartsWith(Path.Combine("Bench", "Readings"), StringComparison.Ordinal)
            from used in Used(File.ReadAllText(file))
            where used is "Language" or "Binding"
            select $"{Path.GetRelativePath(Library, file)} uses {used}";
        Assert.Empty(wrong.Distinct());
    }

    [Fact]
    public void The_rooms_of_the_layout_import_one_way()
    {
        var rooms = Directory.GetDirectories(Path.Combine(Library, "Layout")).Select(d => Path.GetFileName(d));
        Assert.Empty(rooms.Except(LayoutOrder));
        var wrong = RoomImports().Where(i => i.Folder == "Layout" && LayoutOrder.IndexOf(i.Used) > LayoutOrder.IndexOf(i.Room)).Select(i => i.ToString());
        Assert.Empty(wrong);
    }

    [Fact]
    public void Circuit_sheets_and_wiring_sheets_share_shapes_and_nothing_else() => Assert.DoesNotContain(
        RoomImports(), i => (i.Room, i.Used) is ("Circuits", "Wirings") or ("Wirings", "Circuits"));

    [Fact]
    public void Folders_of_the_second_level_never_import_in_a_circle()
    {
        var imports = RoomImports().ToLookup(i => (i.Folder, i.Room), i => (i.Folder, i.Used));
        var wrong = imports.Select(g => g.Key).Where(room => Reached(room, imports).Contains(room)).Select(r => $"{r.Folder}.{r.Room}");
        Assert.Empty(wrong);
    }

    private static HashSet<(string Folder, string Room)> Reached(
        (string Folder, string Room) room, ILookup<(string Folder, string Room), (string Folder, string Room)> imports)
    {
        var reached = new HashSet<(string, string)>();
        var open = new Queue<(string, string)>(imports[room]);
        while (open.TryDequeue(out var next))
        {
            if (!reached.Add(next)) continue;
            foreach (var further in imports[next]) open.Enqueue(further);
        }

        return reached;
    }

    /// <summary>Which folders of the second level use which others of the same folder.</summary>
    private static ImmutableHashSet<RoomImport> RoomImports() =>
    [
        .. from file in SourceFiles()
           let parts = Path.GetRelativePath(Library, file).Split(Path.DirectorySeparatorChar)
           where parts.Length > 2
           from match in RoomName().Matches(CommentLine().Replace(File.ReadAllText(file), ""))
           where match.Groups[1].Value == parts[0] && match.Groups[2].Value != parts[1]
               && Directory.Exists(Path.Combine(Library, parts[0], match.Groups[2].Value))
           select new RoomImport(parts[0], parts[1], match.Groups[2].Value),
    ];

    private sealed record RoomImport(string Folder, string Room, string Used)
    {
        public override string ToString() => $"{Folder}.{Room} uses {Used}";
    }

    [Fact]
    public void Every_file_declares_the_namespace_of_its_folder()
    {
        var wrong =
            from file in SourceFiles()
            let expected = "Schematic." + Path.GetRelativePath(Library, Path.GetDirectoryName(file)!).Replace(Path.DirectorySeparatorChar, '.')
            where !File.ReadAllText(file).Contains($"namespace {expected};", StringComparison.Ordinal)
            select $"{Path.GetRelativePath(Library, file)} is not in {expected}";
        Assert.Empty(wrong);
    }

    /// <summary>Folders that a file names: in a using, by full name, or by a name that begins with the folder.</summary>
    private static IEnumerable<string> Used(string text) =>
        FullName().Matches(CommentLine().Replace(text, "")).Select(m => m.Groups[1].Value).Where(Order.Contains);

    private static IEnumerable<string> SourceFiles() =>
        Directory.EnumerateFiles(Library, "*.cs", SearchOption.AllDirectories)
            .Where(f => FolderOf(f) is not ("bin" or "obj")).Order(StringComparer.Ordinal);

    private static string FolderOf(string file) => Path.GetRelativePath(Library, file).Split(Path.DirectorySeparatorChar)[0];

    [GeneratedRegex(@"\bSchematic\.([A-Z]\w+)")]
    private static partial Regex FullName();

    [GeneratedRegex(@"\bSchematic\.([A-Z]\w+)\.([A-Z]\w+)")]
    private static partial Regex RoomName();

    [GeneratedRegex(@"^\s*//.*$", RegexOptions.Multiline)]
    private static partial Regex CommentLine();
}
