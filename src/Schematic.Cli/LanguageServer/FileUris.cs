namespace Schematic.Cli.LanguageServer;

/// <summary>Addresses of files, as editors write them, and paths.</summary>
internal static class FileUris
{
    /// <summary>The full path of a file's address; null for an address of another kind, such as that of a text that is not saved yet.</summary>
    public static string? PathOf(string uri)
    {
        if (!Uri.TryCreate(uri, UriKind.Absolute, out var parsed) || !parsed.IsFile) return null;
        var path = Uri.UnescapeDataString(parsed.AbsolutePath);

        // file:///c:/panels on a system with drive letters.
        if (OperatingSystem.IsWindows()) path = path.TrimStart('/');
        return path.Contains('\0') ? null : Path.GetFullPath(path);
    }

    /// <summary>The address of a file.</summary>
    public static string UriOf(string path) => Path.IsPathRooted(path) ? new Uri(path).AbsoluteUri : path;
}
