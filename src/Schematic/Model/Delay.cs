namespace Schematic.Model;

/// <summary>How long delayed contacts of a relay wait after their coil.</summary>
/// <param name="LeastSeconds">The shortest time in seconds; zero where it is not known.</param>
/// <param name="MostSeconds">The longest time in seconds; the same unless it can be set.</param>
public sealed record Delay(double LeastSeconds, double MostSeconds)
{
    /// <summary>A delay that nobody has timed yet.</summary>
    public static readonly Delay Unknown = new(0, 0);

    /// <summary>Whether the time is known.</summary>
    public bool IsKnown => MostSeconds > 0;

    /// <summary>The time in words: <c>5 s</c>, <c>0.5 to 10 s</c>, <c>? s</c>.</summary>
    public string Text => !IsKnown ? "? s"
        : LeastSeconds == MostSeconds ? ValueText.Seconds(MostSeconds)
        : $"{ValueText.Number(LeastSeconds)} to {ValueText.Number(MostSeconds)} s";
}
