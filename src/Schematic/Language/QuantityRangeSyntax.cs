using Schematic.Text;

namespace Schematic.Language;

/// <summary>Two quantities joined by two dots: <c>22..29 V</c>. The unit is written once.</summary>
public sealed record QuantityRangeSyntax(QuantitySyntax Low, QuantitySyntax High, TextSpan Span) : ValueSyntax(Span)
{
    /// <inheritdoc/>
    public override QuantityRangeSyntax Moved(int by) => new(Low.Moved(by), High.Moved(by), Span.Moved(by));
}
