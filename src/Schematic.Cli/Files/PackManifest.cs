using System.Security.Cryptography;
using System.Text;
using Schematic.Rendering;

namespace Schematic.Cli.Files;

/// <summary>
/// The list of a pack's files with their check sums, in the form that <c>sha256sum -c</c> reads. It is taken away before the first
/// sheet of a new pack is put in place and put there after the last: a folder whose list is missing or does not agree holds
/// sheets of different packs.
/// </summary>
public static class PackManifest
{
    /// <summary>What the name of the list ends with.</summary>
    public const string Ending = "-sheets.sha256";

    /// <summary>The files as they come and, where they are several, the list of them behind the last.</summary>
    /// <param name="name">What the names of the files begin with.</param>
    /// <param name="files">The files.</param>
    public static IEnumerable<PackFile> Behind(string name, IEnumerable<PackFile> files)
    {
        var list = new StringBuilder();
        var count = 0;
        foreach (var file in files)
        {
            list.Append(Convert.ToHexStringLower(SHA256.HashData(file.Bytes))).Append("  ").Append(file.Name).Append('\n');
            count++;
            yield return file;
        }

        if (count > 1) yield return new PackFile(PackFiles.SafeName(name) + Ending, Encoding.UTF8.GetBytes(list.ToString()));
    }
}
