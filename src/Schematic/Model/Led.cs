using Schematic.Text;

namespace Schematic.Model;

/// <summary>A light-emitting diode on terminals <c>A</c> (anode) and <c>K</c> (cathode).</summary>
public sealed record Led(string Designator, double ForwardVolts, double RatedAmps, SourceSpan Span) : Part(Designator, Span)
{
    /// <summary>Colour of the light, or null.</summary>
    public ColourCode? Colour { get; init; }
}
