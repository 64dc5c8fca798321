using Schematic.Fonts;

namespace Schematic.Layout.Schematics;

/// <summary>One piece of lettering above a stub.</summary>
internal sealed record LabelPiece(string Text, double Height, bool IsBold = false)
{
    public double Width { get; } = Lettering.WidthMm(Text, Height, IsBold);
}
