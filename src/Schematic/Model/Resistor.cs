using Schematic.Text;

namespace Schematic.Model;

/// <summary>A resistor on terminals <c>1</c> and <c>2</c>.</summary>
public sealed record Resistor(string Designator, double Ohms, SourceSpan Span) : Part(Designator, Span)
{
    /// <summary>Rated dissipation in watts, or null when unknown.</summary>
    public double? RatedWatts { get; init; }
}
