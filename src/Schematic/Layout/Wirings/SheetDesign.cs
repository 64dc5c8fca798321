using System.Collections.Immutable;

namespace Schematic.Layout.Wirings;

/// <summary>A designed sheet: every shape in its place, every channel routed. It is the value that is drawn.</summary>
/// <param name="Arrangement">What stands where.</param>
/// <param name="Shapes">The shapes in their places.</param>
/// <param name="ColumnMm">The widths of the columns.</param>
/// <param name="Channels">The channels: before, between and behind the columns.</param>
internal sealed record SheetDesign(
    Arrangement Arrangement, ImmutableArray<PlacedShape> Shapes, ImmutableArray<double> ColumnMm, ImmutableArray<WiredChannel> Channels)
{
    /// <summary>The width of all columns and channels.</summary>
    public double WidthMm { get; } = ColumnMm.Sum() + Channels.Sum(c => c.Routes.WidthMm);

    /// <summary>How many links are lines.</summary>
    public int LineCount => Channels.Sum(c => c.Lines.Length);
}
