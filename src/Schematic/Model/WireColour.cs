namespace Schematic.Model;

/// <summary>A wire's colour: one colour, or a body with a tracer. The code joins both in table order (IEC 60757:2021 clause 5).</summary>
public sealed record WireColour(ColourCode Main, ColourCode? Tracer = null)
{
    /// <summary>The IEC 60757 letters, such as <c>RD</c> or <c>BUWH</c>.</summary>
    public string Code => Tracer is not { } tracer ? Main.ToString()
        : Main <= tracer ? $"{Main}{tracer}" : $"{tracer}{Main}";
}
