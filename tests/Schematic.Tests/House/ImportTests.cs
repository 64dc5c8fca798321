using System.Text.RegularExpressions;
using Xunit;

namespace Schematic.Tests.House;

/// <summary>The library's folders are the pipeline; a folder uses those before it and never one behind.</summary>
public partial class ImportTests
{
    private static readonly string[] Order =
    [
        "Text", "Diagnostics", "Inserts", "Model", "Language", "Binding", "Analysis", "Reports", "Bench",
        "Fonts", "Drawing", "Symbols", "Layout", "Rendering",
    ];

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

    [Fact]
    public void Analysis_never_reads_syntax()
    {
        var wrong =
            from file in SourceFiles()
            where Array.IndexOf(Order, FolderOf(file)) >= Array.IndexOf(Order, "Analysis")
            from used in Used(File.ReadAllText(file))
            where used is "Language" or "Binding"
            select $"{Path.GetRelativePath(Library, file)} uses {used}";
        Assert.Empty(wrong.Distinct());
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

    [GeneratedRegex(@"^\s*//.*$", RegexOptions.Multiline)]
    private static partial Regex CommentLine();
}
