using Schematic.Model;

namespace Schematic.Drawing;

/// <summary>
/// Inks that stand for wire colours on paper. They are no colour standard: each is chosen to look like its name in print and
/// to carry black or white letters well.
/// </summary>
public static class WireInk
{
    /// <summary>The ink for a wire colour. Green-yellow prints as green; its tracer is yellow.</summary>
    public static Ink Of(ColourCode colour) => colour switch
    {
        ColourCode.BK => new Ink(0, 0, 0),
        ColourCode.BN => new Ink(120, 66, 24),
        ColourCode.RD => new Ink(200, 24, 30),
        ColourCode.OG => new Ink(245, 145, 30),
        ColourCode.YE => new Ink(255, 225, 40),
        ColourCode.GN or ColourCode.GNYE => new Ink(0, 122, 55),
        ColourCode.BU => new Ink(25, 85, 175),
        ColourCode.VT => new Ink(112, 48, 140),
        ColourCode.GY => new Ink(165, 165, 165),
        ColourCode.WH => new Ink(255, 255, 255),
        ColourCode.PK => new Ink(250, 175, 195),
        ColourCode.GD => new Ink(212, 175, 75),
        ColourCode.TQ => new Ink(80, 200, 195),
        _ => new Ink(205, 208, 212),
    };

    /// <summary>The ink of a wire's second colour, or null where it has one colour only.</summary>
    public static Ink? TracerOf(WireColour colour) => colour switch
    {
        { Main: ColourCode.GNYE } => Of(ColourCode.YE),
        { Tracer: { } tracer } => Of(tracer),
        _ => null,
    };

    /// <summary>Black or white, whichever reads better on <paramref name="ground"/>.</summary>
    public static Ink LettersOn(Ink ground) =>
        Contrast(ground, Ink.Black) >= Contrast(ground, Ink.White) ? Ink.Black : Ink.White;

    /// <summary>Contrast ratio of two inks from 1 to 21, after the definition in WCAG 2.1.</summary>
    public static double Contrast(Ink a, Ink b)
    {
        var (high, low) = (Relative(a), Relative(b));
        if (high < low) (high, low) = (low, high);
        return (high + 0.05) / (low + 0.05);
    }

    private static double Relative(Ink ink) =>
        (0.2126 * Linear(ink.Red)) + (0.7152 * Linear(ink.Green)) + (0.0722 * Linear(ink.Blue));

    private static double Linear(byte channel)
    {
        var share = channel / 255.0;
        return share <= 0.03928 ? share / 12.92 : Math.Pow((share + 0.055) / 1.055, 2.4);
    }
}
