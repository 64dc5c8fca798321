using System.Collections.Immutable;
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

    /// <summary>The list of some files.</summary>
    /// <param name="name">What the names of the files begin with.</param>
    /// <param name="files">The files.</param>
    public static PackFile Of(string name, ImmutableArray<PackFile> files)
    {
        var lines = files.Select(f => $"{Convert.ToHexStringLower(SHA256.HashData(f.Bytes))}  {f.Name}\n");
        return new PackFile(PackFiles.SafeName(name) + Ending, Encoding.UTF8.GetBytes(string.Concat(lines)));
    }
}
