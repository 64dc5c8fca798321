using System.Reflection;

namespace Schematic.Fonts;

/// <summary>
/// The typeface that every sheet is lettered in: IBM Plex Sans Condensed, under the SIL Open Font License (<c>OFL.txt</c>).
/// It is embedded, so that a machine without fonts draws the same sheet. It was chosen because I, l and 1 differ in it:
/// contact names use all three.
/// </summary>
public static class BundledFonts
{
    /// <summary>Family name as the font file states it.</summary>
    public const string Family = "IBM Plex Sans Condensed";

    /// <summary>Opens the regular or the semibold face. The caller disposes the stream.</summary>
    public static Stream Open(bool bold)
    {
        var name = bold ? "Schematic.Fonts.PlexSansCondensed-SemiBold.ttf" : "Schematic.Fonts.PlexSansCondensed-Regular.ttf";
        return Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The font {name} is missing from the assembly.");
    }
}
