namespace Schematic.Layout.Schematics;

/// <summary>Ports of one channel that lines join.</summary>
internal sealed class ChannelJoint(string owner)
{
    /// <summary>Whose the lines are: a net's or a wire's name.</summary>
    public string Owner { get; } = owner;

    /// <summary>Heights of its ports on the channel's left side.</summary>
    public List<double> Left { get; } = [];

    /// <summary>Heights of its ports on the channel's right side.</summary>
    public List<double> Right { get; } = [];

    /// <summary>The track of its trunk, or -1 when it runs straight across.</summary>
    public int Track { get; set; } = -1;

    public double Top => Math.Min(Left.Count == 0 ? double.MaxValue : Left.Min(), Right.Count == 0 ? double.MaxValue : Right.Min());

    public double Bottom => Math.Max(Left.Count == 0 ? double.MinValue : Left.Max(), Right.Count == 0 ? double.MinValue : Right.Max());

    public bool IsStraight => Left.Count == 1 && Right.Count == 1 && Left[0] == Right[0];
}
