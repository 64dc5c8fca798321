using System.Collections.Immutable;
using Schematic.Analysis;
using Schematic.Model;

namespace Schematic.Layout.Circuits;

/// <summary>Where a link meets the line of its node.</summary>
/// <param name="Column">The column against which the place is given.</param>
/// <param name="Dx">How far from the column's line, in millimetres.</param>
/// <param name="IsAbove">Whether the link stands above the line.</param>
/// <param name="Mark">The terminal at which it meets the line.</param>
internal readonly record struct Meeting(int Column, double Dx, bool IsAbove, TerminalId Mark);

/// <summary>The line of a node in one band: where links meet it and where it goes on in other bands.</summary>
/// <param name="Node">The node.</param>
/// <param name="Meetings">Where links meet it, from left to right.</param>
/// <param name="First">The first column of the band that it meets.</param>
/// <param name="Last">The last column of the band that it meets.</param>
/// <param name="Before">The column of another band from which it comes, or -1.</param>
/// <param name="Behind">The column of another band to which it goes on, or -1.</param>
/// <param name="Rail">The supply line or return that it is, or null.</param>
internal sealed record NodeLine(int Node, ImmutableArray<Meeting> Meetings, int First, int Last, int Before, int Behind, Rail? Rail)
{
    /// <summary>The wires that the line is, by the column left of each piece.</summary>
    public ImmutableDictionary<int, ImmutableArray<Joint>> Along { get; init; } = ImmutableDictionary<int, ImmutableArray<Joint>>.Empty;

    /// <summary>Whether it is drawn as a line at all, and not only as the joint of two links above each other.</summary>
    public bool IsLine => Rail is not null || Before >= 0 || Behind >= 0 || Meetings.Select(m => (m.Column, m.Dx)).Distinct().Count() > 1;

    /// <summary>Its lettering stands below it: nothing else does.</summary>
    public bool WritesBelow => Rail is { IsReturn: true } || Meetings.All(m => m.IsAbove);
}
