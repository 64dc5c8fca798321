using System.Collections.Immutable;

namespace Schematic.Layout.Wirings;

/// <summary>
/// Every number that decides how a wiring sheet looks and is not a plain measure of lettering: found by looking at the examples and
/// at generated designs. Lengths in millimetres, heights in units of 2.5 mm.
/// </summary>
internal sealed record WiringWeights
{
    /// <summary>A part with fewer terminals than this is never drawn in pieces.</summary>
    public const int LeastDivided = 24;

    /// <summary>The usual weights.</summary>
    public static WiringWeights Usual { get; } = new();

    /// <summary>
    /// Whether a contact on a unit's frame is named by its number alone, the frame naming the connector: on sheets too narrow for more.
    /// </summary>
    public bool NamesContactsByNumber { get; init; }

    /// <summary>Whether a wire is lettered with its number alone: on the narrowest sheets; the wire list has colour and gauge.</summary>
    public bool NumbersWiresOnly { get; init; }

    /// <summary>From the fullest lettering to the briefest: a panel is drawn with the first with which everything fits.</summary>
    public static ImmutableArray<WiringWeights> Levels { get; } =
    [
        Usual,
        Usual with { NamesContactsByNumber = true },
        Usual with { NamesContactsByNumber = true, NumbersWiresOnly = true },
    ];

    /// <summary>A line that runs further up or down than this is a flag at both ends: the eye loses it.</summary>
    public int LongestSpan { get; init; } = 30;

    /// <summary>More vertical lines than this in one channel are flags instead.</summary>
    public int MostTracks { get; init; } = 8;

    /// <summary>Blank kept above and below things of a column, in units.</summary>
    public int Gap { get; init; } = 2;

    /// <summary>Least width of a channel.</summary>
    public double LeastChannelMm { get; init; } = 7.5;

    /// <summary>Blank between flags that point at each other from both edges of a channel.</summary>
    public double WhiteMm { get; init; } = 5;

    /// <summary>How far a channel may grow when the sheet has width left.</summary>
    public double MostSpareMm { get; init; } = 12;

    /// <summary>A sheet with more to spare stands at the left, the rest in one piece beside it; with less it stands in the middle.</summary>
    public double MostMarginMm { get; init; } = 50;

    /// <summary>Quiet words at the head of a thing are wrapped at this width.</summary>
    public double WordsMm { get; init; } = 24;

    /// <summary>A name longer than this is shortened, and a finding says so.</summary>
    public double LongestNameMm { get; init; } = 34;

    /// <summary>How many things, best first, are tried before a sheet counts as full of what belongs together.</summary>
    public int Tries { get; init; } = 5;

    /// <summary>Panels with more links than this are filled one way alone: the second would take too long.</summary>
    public int MostLinksTriedTwice { get; init; } = 80;

    /// <summary>How many unrelated things are tried to fill what is left of a sheet.</summary>
    public int FillTries { get; init; } = 40;
}
