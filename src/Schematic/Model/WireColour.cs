namespace Schematic.Model;

/// <summary>
/// A wire's colour: one colour, or a body with a tracer. <c>white/blue</c> and <c>blue/white</c> are two wires that a hand must
/// not confuse, so both letters keep the order in which they were written.
/// </summary>
/// <param name="Main">The colour of the body.</param>
/// <param name="Tracer">The colour of the tracer, or null for a plain wire.</param>
public sealed record WireColour(ColourCode Main, ColourCode? Tracer = null)
{
    /// <summary>
    /// The IEC 60757 letters, such as <c>RD</c>; of a wire with a tracer those of the body, a stroke, those of the tracer:
    /// <c>WH/BU</c>. The standard's own joined code (<c>BUWH</c>) sorts the two and so hides which is the body.
    /// </summary>
    public string Code => Tracer is { } tracer ? $"{Main}/{tracer}" : Main.ToString();

    /// <summary>Whether it is, or at a glance looks like, the colour kept for the protective earth: green and yellow together.</summary>
    public bool LooksLikeEarth => Main == ColourCode.GNYE
        || (Main, Tracer) is (ColourCode.GN, ColourCode.YE) or (ColourCode.YE, ColourCode.GN);

    /// <summary>Whether the other wire has the same two colours with body and tracer exchanged.</summary>
    public bool IsExchanged(WireColour other) => Tracer is { } tracer && Main == other.Tracer && tracer == other.Main && Main != tracer;
}
