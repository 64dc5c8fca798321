using System.Globalization;
using System.Reflection;

namespace Schematic.Cli.Watch;

/// <summary>The script that a served page asks for news with.</summary>
internal static class PreviewScript
{
    private static readonly Lazy<string> Text = new(() =>
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("Schematic.Cli.Watch.preview.js")!;
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    });

    /// <summary>The script of a page whose drawing was made in a version.</summary>
    public static string For(int drawing) => Text.Value.Replace("__DRAWING__", drawing.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal);
}
