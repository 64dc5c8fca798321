using System.Collections.Immutable;
using Schematic.Text;

namespace Schematic.Binding;

/// <summary>Files that are held in memory: for designs without used files, for tests, for a text that is being edited.</summary>
public sealed class MemoryPanelFiles(ImmutableDictionary<string, string> files) : IPanelFiles
{
    /// <summary>No files at all: every use statement finds its file missing.</summary>
    public static MemoryPanelFiles None { get; } = new(ImmutableDictionary<string, string>.Empty);

    /// <inheritdoc/>
    public PanelFile Open(string user, string path)
    {
        var name = Resolve(user, path);
        if (name is null) return PanelFile.Not(PanelFileState.Outside, path);
        return files.TryGetValue(name, out var content)
            ? PanelFile.Opened(new SourceText(name, content))
            : PanelFile.Not(PanelFileState.Missing, name);
    }

    /// <summary>The path in the folder of <paramref name="user"/>, without dots; null when it leaves the root.</summary>
    private static string? Resolve(string user, string path)
    {
        if (path.StartsWith('/')) return null;
        var parts = new List<string>(user.Split('/').SkipLast(1));
        foreach (var part in path.Split('/'))
        {
            if (part is "" or ".") continue;
            if (part != "..")
            {
                parts.Add(part);
                continue;
            }

            if (parts.Count == 0) return null;
            parts.RemoveAt(parts.Count - 1);
        }

        return string.Join('/', parts);
    }
}
