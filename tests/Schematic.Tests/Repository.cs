using System.Runtime.CompilerServices;

namespace Schematic.Tests;

/// <summary>Where the repository lies on the machine that built the tests.</summary>
internal static class Repository
{
    public static string Root { get; } = Path.GetFullPath(Path.Combine(ThisFolder(), "../.."));

    public static string PathOf(string relative) => Path.Combine(Root, relative);

    private static string ThisFolder([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
