namespace Schematic.Benchmarks;

/// <summary>Finds the folder that holds the solution, from wherever the program runs.</summary>
internal static class RepositoryRoot
{
    public static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Schematic.sln"))) return folder.FullName;
        }

        throw new DirectoryNotFoundException("Schematic.sln was not found above the program.");
    }
}
