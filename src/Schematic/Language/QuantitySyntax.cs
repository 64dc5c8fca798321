using Schematic.Text;

namespace Schematic.Language;

/// <summary>A number with its unit.</summary>
/// <param name="Value">The value in the unit that <paramref name="Dimension"/> names.</param>
/// <param name="Dimension">What the unit measures; <see cref="Dimension.Unknown"/> where the unit is missing or not known.</param>
/// <param name="Number">The number as written.</param>
/// <param name="Unit">The unit as written; empty when missing.</param>
/// <param name="Span">Number and unit.</param>
public sealed record QuantitySyntax(double Value, Dimension Dimension, string Number, string Unit, TextSpan Span)
    : ValueSyntax(Span)
{
    /// <inheritdoc/>
    public override QuantitySyntax Moved(int by) => this with { Span = Span.Moved(by) };
}
