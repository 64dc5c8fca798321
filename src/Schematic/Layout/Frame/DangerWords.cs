using System.Collections.Immutable;
using Schematic.Model;

namespace Schematic.Layout.Frame;

/// <summary>
/// Words in the title of a drawing, or in the words the user gave its parts, that tell of equipment which needs a caution of
/// its own. The lists are our own choice; a word must stand alone, so that "firebox" is none.
/// </summary>
internal static class DangerWords
{
    private static readonly ImmutableArray<string> Cartridges =
    [
        "extinguisher", "extinguishers", "fire", "suppression", "halon", "squib", "squibs", "cartridge", "cartridges", "igniter",
        "igniters", "detonator", "detonators", "explosive", "pyrotechnic", "ejection", "ejector", "airbag", "weapon",
    ];

    private static readonly ImmutableArray<string> Flight =
        ["aircraft", "airplane", "aeroplane", "helicopter", "glider", "cockpit", "flight", "avionics"];

    private static readonly ImmutableArray<string> Mains = ["mains", "traction", "third-rail", "catenary"];

    /// <summary>The first word of fire suppression, cartridges or weapons, or null.</summary>
    public static string? Cartridge(Panel panel) => First(panel, Cartridges);

    /// <summary>The first word of flying machines, or null.</summary>
    public static string? Aircraft(Panel panel) => First(panel, Flight);

    /// <summary>The first word of power that the low-voltage circuits may share a case with, or null.</summary>
    public static string? Power(Panel panel) => First(panel, Mains);

    private static string? First(Panel panel, ImmutableArray<string> words)
    {
        var texts = panel.Parts.Select(p => p.Description).Concat(panel.Actuators.Select(a => a.Description)).Prepend(panel.Title.Title);
        return texts.SelectMany(WordsOf).FirstOrDefault(words.Contains);
    }

    private static IEnumerable<string> WordsOf(string text) => text.ToLowerInvariant()
        .Split([' ', ',', ';', '.', ':', '/', '(', ')', '"'], StringSplitOptions.RemoveEmptyEntries);
}
