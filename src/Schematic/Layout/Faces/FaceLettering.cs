namespace Schematic.Layout.Faces;

/// <summary>How a face is lettered inside its contacts; a height of zero leaves that line away.</summary>
internal sealed record FaceLettering(double NumberMm, double CodeMm)
{
    /// <summary>From the most readable to the least; the first that fits is taken.</summary>
    public static FaceLettering[] Choices { get; } = [new(3.5, 2.5), new(2.5, 1.8), new(2.5, 0), new(1.8, 0), new(0, 0)];

    /// <summary>The number alone, for a face that is not soldered from: as high as elsewhere, or lower where the sheet is full.</summary>
    public static FaceLettering[] NumbersOnly { get; } = [new(2.5, 0), new(1.8, 0)];

    /// <summary>Room between the two lines: some letters hang below the base line.</summary>
    public double GapBelow(string name) => NumberMm * (name.All(c => !"gjpqy_".Contains(c)) ? 0.34 : 0.6);
}
