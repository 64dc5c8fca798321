namespace Schematic.Layout.Circuits;

/// <summary>
/// Every length and weight that circuit sheets are laid out with, in one place. Lengths are millimetres. Lettering heights are of
/// the ISO 3098 row; all that is read at the bench has 2.5 mm, what is only described in grey. The others are our own choice.
/// </summary>
internal sealed record CircuitMeasures
{
    /// <summary>The measures that are used unless narrow ones save a sheet.</summary>
    public static CircuitMeasures Standard { get; } = new();

    /// <summary>Narrower and higher: a wire's colour and gauge stand below its number.</summary>
    public static CircuitMeasures Narrow { get; } = new() { WireInTwoLines = true, WireStep = 8.2 };

    /// <summary>Lettering of names, terminals, wires, positions.</summary>
    public double Name { get; init; } = 2.5;

    /// <summary>Lettering of ratings, descriptions, references: quieter where it is grey.</summary>
    public double Small { get; init; } = 2.5;

    /// <summary>Distance of base lines of names below each other.</summary>
    public double NameStep { get; init; } = 3.6;

    /// <summary>Distance of base lines of small lettering below each other.</summary>
    public double SmallStep { get; init; } = 3.6;

    /// <summary>From a vertical line to the lettering beside it.</summary>
    public double TextGap { get; init; } = 1.2;

    /// <summary>From a terminal's middle to its name.</summary>
    public double MarkGap { get; init; } = 1.7;

    /// <summary>Least length of plain line between a symbol and the line that it hangs on.</summary>
    public double Stub { get; init; } = 2.5;

    /// <summary>Piece of line that joins two terminals of a strip.</summary>
    public double Step { get; init; } = 5;

    /// <summary>Piece of line that carries a wire's number, colour and gauge.</summary>
    public double WireStep { get; init; } = 5;

    /// <summary>Whether colour and gauge stand below the number and not behind it.</summary>
    public bool WireInTwoLines { get; init; }

    /// <summary>Piece of line between a contact of a made unit and the device inside.</summary>
    public double InsideStep { get; init; } = 3.75;

    /// <summary>Piece of line that a plugged pair of contacts stands on.</summary>
    public double PairStep { get; init; } = 8.5;

    /// <summary>More room where a piece begins at a line on which a terminal is named.</summary>
    public double BesideMark { get; init; } = 1.5;

    /// <summary>More room for the words of a wire that comes down on a line from above, so that they are not read as those of the line.</summary>
    public double AboveLine { get; init; } = 2.2;

    /// <summary>Radius of a strip's terminal.</summary>
    public double TerminalRadius { get; init; } = 0.9;

    /// <summary>Least distance of what stands in neighbouring columns.</summary>
    public double ColumnGap { get; init; } = 3;

    /// <summary>Distance of two tracks by which throws open to their columns.</summary>
    public double TrackPitch { get; init; } = 2.5;

    /// <summary>Room under the tracks in which the position of a throw is named.</summary>
    public double ThrowLabel { get; init; } = 4.2;

    /// <summary>Room above a supply line and below a return: terminal names and the line's own name.</summary>
    public double RailRoom { get; init; } = 9.5;

    /// <summary>From a line to the base line of what stands above it.</summary>
    public double Rise { get; init; } = 1;

    /// <summary>Least distance of a free end from the line that it must not touch.</summary>
    public double FreeGap { get; init; } = 4;

    /// <summary>Least distance of two lines of different nodes over the same columns.</summary>
    public double LinePitch { get; init; } = 6;

    /// <summary>The same where the upper line is lettered below and the lower above.</summary>
    public double LinePitchBelowLettering { get; init; } = 10;

    /// <summary>Distance of two bands of columns on one sheet.</summary>
    public double BandGap { get; init; } = 6;

    /// <summary>Room at the side of a band for references of lines that go on.</summary>
    public double MarginForReferences { get; init; } = 16;

    /// <summary>So many wires that one piece of line is stand below each other before a second column of them begins.</summary>
    public int WireRows { get; init; } = 4;

    /// <summary>Columns of such wires at most; then there are more rows.</summary>
    public int WireColumns { get; init; } = 3;

    /// <summary>Least distance of two columns.</summary>
    public double LeastPitch { get; init; } = 7.5;

    /// <summary>Words beside a symbol are broken into lines of this width.</summary>
    public double WordsWidth { get; init; } = 24;

    /// <summary>So many lines of them at most: what is left out is told as a finding.</summary>
    public int MostWordLines { get; init; } = 6;
}
