using System.Collections.Concurrent;
using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Binding;
using Schematic.Diagnostics;
using Schematic.Drawing;
using Schematic.Layout.Pack;
using Schematic.Model;

namespace Schematic.Tests.Generators;

/// <summary>The files under <c>examples</c>, each read, checked and drawn once for all tests that look at it.</summary>
internal static class ExamplePacks
{
    private static readonly ConcurrentDictionary<string, Lazy<ExamplePack>> Packs = new(StringComparer.Ordinal);

    /// <summary>The pack of a file, by its path from the root of the repository.</summary>
    public static ExamplePack Of(string example) => Packs.GetOrAdd(example, e => new Lazy<ExamplePack>(() => Draw(e))).Value;

    /// <summary>Reads and checks a file anew.</summary>
    public static (Panel Panel, ImmutableArray<Diagnostic> Findings) Load(string example)
    {
        var path = Repository.PathOf(example);
        var file = PanelBytes.Decode(Path.GetFileName(path), File.ReadAllBytes(path));
        var loaded = PanelLoader.Load(file.Text, new FolderPanelFiles(Path.GetDirectoryName(path)!));
        return (loaded.Panel, PanelChecker.Check(loaded.Panel, loaded.Diagnostics));
    }

    private static ExamplePack Draw(string example)
    {
        var (panel, findings) = Load(example);
        return new ExamplePack(panel, findings, PackBuilder.Draw(panel, findings));
    }
}

/// <summary>A file, what its check finds, and what is drawn of it.</summary>
internal sealed record ExamplePack(Panel Panel, ImmutableArray<Diagnostic> Findings, DrawnPack Drawn)
{
    /// <summary>The sheets.</summary>
    public ImmutableArray<Sheet> Sheets => Drawn.Sheets;
}
