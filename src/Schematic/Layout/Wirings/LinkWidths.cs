using System.Collections.Immutable;
using Schematic.Drawing;
using Schematic.Layout.Shapes;

namespace Schematic.Layout.Wirings;

/// <summary>
/// How wide what is written on the links is, in millimetres: measured once, because every arrangement that is tried asks for it.
/// </summary>
internal sealed class LinkWidths
{
    private readonly ImmutableArray<double> _lettering;
    private readonly ImmutableArray<double> _toA;
    private readonly ImmutableArray<double> _toB;

    /// <summary>Measures all links.</summary>
    public LinkWidths(ImmutableArray<Link> links, bool isBrief)
    {
        IsBrief = isBrief;
        _lettering = [.. links.Select(l => StubWords.Width(l, isBrief))];
        _toA = [.. links.Select(l => WidthOf(StubWords.FarOf(new LinkEnd(l, false))))];
        _toB = [.. links.Select(l => WidthOf(StubWords.FarOf(new LinkEnd(l, true))))];
    }

    /// <summary>Whether wires are lettered with their numbers alone.</summary>
    public bool IsBrief { get; }

    /// <summary>Width of name and data.</summary>
    public double Lettering(Link link) => _lettering[link.Index];

    /// <summary>Width of the words that say where a link goes from an end.</summary>
    public double Far(LinkEnd end) => end.IsA ? _toB[end.Link.Index] : _toA[end.Link.Index];

    private static double WidthOf(PlaceReference? reference) =>
        reference is null ? 0 : Fonts.Lettering.WidthMm(reference.WidestText, Metrics.NameHeight);
}
